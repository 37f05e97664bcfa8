package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.grovewright.model.Preferences.Units;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.junit.jupiter.api.Test;

class WordsTest {
  private static final ReaderUnits METRIC = new ReaderUnits(Units.METRIC, "EUR");

  @Test
  void quantitiesTakeTheirPlaces() {
    String text =
        Words.message(
            "{1} of $1 and {0}\\ of {0}, not {7} or {x",
            List.of(new Quantity(2, Kind.LENGTH), new Quantity(3, Kind.COUNT)), METRIC);
    assertThat(ReaderUnits.plainSpaces(text))
        .isEqualTo("3 of $1 and 2.00 m\\ of 2.00 m, not {7} or {x");
  }

  @Test
  void zonesHaveNamesForSentences() {
    assertThat(Words.zone("zone-1")).isEqualTo("zone 1");
    assertThat(Words.zone("Zone A")).isEqualTo("zone A");
    assertThat(Words.zone("upper")).isEqualTo("zone upper");
    assertThat(Words.zone("zone")).isEqualTo("zone zone");
  }

  @Test
  void wordsAreJoinedAsInASentence() {
    assertThat(Words.and(List.of())).isEmpty();
    assertThat(Words.and(List.of("a"))).isEqualTo("a");
    assertThat(Words.and(List.of("a", "b", "c"))).isEqualTo("a, b and c");
  }
}
