package org.grovewright.texts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class SentenceTest {
  private static final Pattern WORD = Pattern.compile("\\p{L}{3,}");

  /** Whatever can be told of bad input or a refusal, by the source of the program itself. */
  @Test
  void everySentenceThatCanBeToldHasItsLineInEveryLanguage() {
    Shapes shapes = Shapes.read();
    assertThat(shapes.unreadable()).as("words put together while running").isEmpty();
    assertThat(shapes.found()).hasSizeGreaterThan(100);
    for (String tag : Language.tags()) {
      Language language = Language.of(tag);
      List<String> untold = new ArrayList<>();
      List<String> otherPlaces = new ArrayList<>();
      shapes
          .found()
          .forEach(
              (shape, place) -> {
                if (WORD.matcher(shape).find() && !language.canSay(shape)) {
                  untold.add(shape + "   " + place);
                } else if (!Shapes.places(language.say(shape)).equals(Shapes.places(shape))) {
                  otherPlaces.add(shape + " -> " + language.say(shape));
                }
              });
      assertThat(String.join("\n", untold)).as("sentences without a line in " + tag).isEmpty();
      assertThat(otherPlaces).as("lines in " + tag + " with other places").isEmpty();
    }
  }

  @Test
  void partsAreSaidInTheLanguageAndTypedWordsAsTheyAre() {
    Sentence sentence =
        Sentence.of(
            "'{0}' has no unit; give {1}",
            "4{1}5", Sentence.of("{0} such as {1}", Sentence.of("a share"), Sentence.of("7 %")));
    assertThat(sentence.english()).isEqualTo("'4{1}5' has no unit; give a share such as 7 %");
    assertThat(sentence.toString()).isEqualTo(sentence.english());
    assertThat(sentence.in(Language.ENGLISH)).isEqualTo(sentence.english());
    assertThat(sentence.in(Language.of("es")))
        .isEqualTo("«4{1}5» no lleva unidad; dé una proporción, por ejemplo 7 %");
    assertThat(Sentence.of("the polygon has no coordinates").whole().in(Language.of("es")))
        .isEqualTo("El polígono no tiene coordenadas.");
    assertThat(Sentence.of("the polygon has no coordinates").whole().english())
        .isEqualTo("The polygon has no coordinates.");
    assertThat(Sentence.NOTHING.in(Language.of("es"))).isEmpty();
  }
}
