package org.grovewright.formats.description;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.grovewright.texts.Language;
import org.grovewright.texts.Sentence;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every mistake of a description that {@link BadDescriptionTest} knows is told in Spanish too. */
class SpanishDescriptionTest {
  private static final Language SPANISH = Language.of("es");

  private static final Pattern WORD = Pattern.compile("\\p{L}{3,}");

  private static List<Problem> problems(String find, String replacement) {
    return Descriptions.problems(
        Descriptions.starter()
            .replaceFirst(
                Pattern.quote(find), Matcher.quoteReplacement(replacement.replace("@@", ""))));
  }

  /** All words of ours in a sentence and its parts. */
  private static Stream<String> shapes(Sentence sentence) {
    return Stream.concat(
        Stream.of(sentence.shape()),
        sentence.arguments().stream()
            .filter(Sentence.class::isInstance)
            .flatMap(part -> shapes((Sentence) part)));
  }

  @ParameterizedTest(name = "{2}: {3}")
  @MethodSource("org.grovewright.formats.description.BadDescriptionTest#cases")
  void saysItInSpanish(String find, String replacement, String path, String words) {
    List<Problem> problems = problems(find, replacement);
    assertThat(problems).isNotEmpty();
    for (Problem problem : problems) {
      if (shapes(problem.sentence()).anyMatch(shape -> WORD.matcher(shape).find())) {
        assertThat(problem.sentence().in(SPANISH)).isNotEqualTo(problem.message());
      }
      assertThat(shapes(problem.sentence()).filter(shape -> !SPANISH.canSay(shape))).isEmpty();
    }
  }

  private static String spanish(String find, String replacement, String path) {
    return problems(find, replacement).stream()
        .filter(problem -> problem.path().equals(path))
        .map(problem -> problem.sentence().in(SPANISH))
        .findFirst()
        .orElseThrow();
  }

  /** Read by a person: what was typed and what is allowed stand in the sentence as they were. */
  @Test
  void theSpanishIsWhatASpanishGardenerWouldBeTold() {
    assertThat(
            spanish("static_pressure: 50 psi", "static_pressure: 45 pis", "supply.static_pressure"))
        .isEqualTo(
            "«45 pis» lleva la unidad desconocida «pis» (¿quiso decir psi?); dé una presión, por"
                + " ejemplo 45 psi, 2.5 bar o 250 kPa");
    assertThat(
            spanish(
                "static_pressure: 50 psi", "static_pressure: 4500 psi", "supply.static_pressure"))
        .isEqualTo("«4500 psi» está fuera de lo posible; se permite de 0.145 psi a 232 psi");
    assertThat(spanish("  latitude: 38.5", "  latitud: 38.5", "site.latitud"))
        .startsWith("no es una clave de aquí (¿quiso decir latitude?); se permite: name, ");
    assertThat(spanish("crew:\n", "krew:\n", "krew")).contains("¿quiso decir crew?");
    assertThat(
            spanish(
                "texture: loam",
                "texture: loam\n  field_capacity: 55 %\n  wilting_point: 14 %",
                "soil.field_capacity"))
        .isEqualTo(
            "contradice texture: Franco tiene alrededor de 28 %; corrija uno de los dos o quite la"
                + " textura");
  }
}
