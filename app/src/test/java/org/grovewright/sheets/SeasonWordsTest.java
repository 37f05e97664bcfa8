package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.irrigation.EmitterChange;
import org.grovewright.season.TimerCard;
import org.grovewright.texts.Language;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is said of a card, in another language as well. */
class SeasonWordsTest {
  private static final Language SPANISH = Language.of("es");

  static Stream<String> emitters() {
    return CatalogueFiles.load().catalogue().emitters().values().stream()
        .map(emitter -> emitter.name());
  }

  private static List<String> said(
      String plants, Map<String, Integer> add, Map<String, Integer> close) {
    List<EmitterChange> changes =
        Stream.of(plants.split(",")).map(p -> new EmitterChange(p, "zone-1", add, close)).toList();
    return SeasonWords.changes(new TimerCard(2, changes, List.of())).stream()
        .map(SPANISH::say)
        .toList();
  }

  @ParameterizedTest
  @MethodSource("emitters")
  void emittersToAddOrTakeOutAreSaidInSpanish(String emitter) {
    // The names as the whole catalogue has them, one of them with the word that ends the sentence.
    String name = SPANISH.say(emitter);
    assertThat(name).isNotEqualTo(emitter);
    Map<String, Integer> two = Map.of(emitter, 2);
    Map<String, Integer> none = Map.of();
    assertThat(said("h1", two, none)).containsExactly("En h1 ponga 2 \u00d7 " + name + ".");
    assertThat(said("h1,h2", two, none))
        .containsExactly("En cada una de h1, h2 ponga 2 \u00d7 " + name + ".");
    assertThat(said("h1", none, two)).containsExactly("En h1 quite 2 \u00d7 " + name + ".");
    assertThat(said("h1", two, two))
        .containsExactly("En h1 ponga 2 \u00d7 " + name + " y quite 2 \u00d7 " + name + ".");
    assertThat(said("h1 at the gate", two, none))
        .containsExactly("En h1 at the gate ponga 2 \u00d7 " + name + ".");
  }
}
