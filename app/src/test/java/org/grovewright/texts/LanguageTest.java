package org.grovewright.texts;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class LanguageTest {
  private static final Pattern ARGUMENT = Pattern.compile("\\{[0-9]+\\}");

  private static TreeSet<String> arguments(String text) {
    return ARGUMENT
        .matcher(text)
        .results()
        .map(m -> m.group())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void everyLanguageHasTheSameTextsWithTheSameArguments() {
    for (String tag : Language.tags()) {
      Language other = Language.of(tag);
      assertThat(other.texts().keySet()).isEqualTo(Language.ENGLISH.texts().keySet());
      Language.ENGLISH
          .texts()
          .forEach(
              (key, text) -> {
                assertThat(arguments(other.text(key)))
                    .as(tag + " " + key)
                    .isEqualTo(arguments(text));
                assertThat(other.text(key)).as(tag + " " + key).isNotBlank();
              });
    }
  }

  @Test
  void datesFollowTheLanguageAndNotTheMachine() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      LocalDate day = LocalDate.of(2027, 3, 6);
      assertThat(Language.ENGLISH.date(day)).isEqualTo("Saturday 6 March 2027");
      assertThat(Language.of("es").date(day)).isEqualTo("sábado 6 de marzo de 2027");
      assertThat(Language.of("es").month(YearMonth.of(2027, 12))).isEqualTo("diciembre de 2027");
      assertThat(Language.of("es").decimals("12.5")).isEqualTo("12,5");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void anUnknownLanguageIsEnglish() {
    assertThat(Language.of("xx")).isSameAs(Language.ENGLISH);
  }

  private static Phrases phrases(String... pairs) {
    Map<String, String> entries = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      entries.put(pairs[i], pairs[i + 1]);
    }
    return Phrases.of(entries, Language.of("es"));
  }

  @Test
  void aPhraseWithGapsTranslatesTermsAndKeepsNames() {
    Phrases phrases =
        phrases(
            "Fig", "Higuera",
            "Tee for <pipe:term>", "T para <pipe>",
            "Pipe <size> mm", "Tubo de <size> mm",
            "Roots of <species:term> reach {0} at <plant>.",
                "En <plant> las raíces de <species> llegan a {0}.");
    assertThat(phrases.translate("Roots of Fig reach {0} at Row 1."))
        .contains("En Row 1 las raíces de Higuera llegan a {0}.");
    assertThat(phrases.translate("Tee for Pipe 16 mm")).contains("T para Tubo de 16 mm");
    assertThat(phrases.translate("Tee for Pump")).isEmpty();
  }

  @Test
  void sentencesListsAndDatesAreTakenApart() {
    Phrases phrases =
        phrases(
            "Water it.", "Riéguelo.",
            "Ready on <day:date>.", "Listo el <day>.",
            "Needed for: <things:terms>.", "Hace falta para: <things>.",
            "Fig", "Higuera",
            "Tie, soft", "Atadura blanda");
    assertThat(phrases.translate("Water it. Ready on 2027-03-06."))
        .contains("Riéguelo. Listo el 6 de marzo de 2027.");
    assertThat(phrases.translate("Needed for: Fig, Tie, soft, Fig."))
        .contains("Hace falta para: Higuera, Atadura blanda, Higuera.");
    assertThat(phrases.translate("Water it. Unknown words.")).isEmpty();
  }

  /** A gap is named alone in a translation; with its sort it would be printed as it stands. */
  @Test
  void translationsNameTheGapsOfTheirPhrase() throws java.io.IOException {
    java.util.regex.Pattern gap = java.util.regex.Pattern.compile("<([a-z]+)(:[a-z]+)?>");
    try (java.io.InputStream in = Phrases.class.getResourceAsStream("phrases_es.po")) {
      String text = new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
      PhraseFile.read(text, "phrases_es.po")
          .forEach(
              (english, other) ->
                  gap.matcher(other)
                      .results()
                      .forEach(
                          found -> {
                            assertThat(found.group(2)).as(other).isNull();
                            assertThat(english).contains("<" + found.group(1));
                          }));
    }
  }

  @Test
  void thePhraseFileSaysWhereItIsWrong() {
    assertThat(PhraseFile.read("msgid \"a \"\n\"b\"\nmsgstr \"c\"\n", "f"))
        .containsExactly(Map.entry("a b", "c"));
    org.assertj.core.api.Assertions.assertThatThrownBy(
            () -> PhraseFile.read("msgid \"a\"\nmsgstr b\n", "f.po"))
        .hasMessageContaining("f.po, line 2");
  }
}
