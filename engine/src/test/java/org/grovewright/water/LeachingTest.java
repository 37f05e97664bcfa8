package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LeachingTest {
  /**
   * Ayers and Westcot, FAO 29 (1985) Example 2, from memory: maize under 1.2 dS/m wants 0.10 of the
   * water for 90 % of its yield (2.5 dS/m) and 0.16 for all of it (1.7 dS/m).
   */
  @Test
  void maizeUnderWaterOfARiver() {
    assertThat(Leaching.conventional(0.12, 0.25)).isCloseTo(0.10, within(0.01));
    assertThat(Leaching.conventional(0.12, 0.17)).isCloseTo(0.16, within(0.01));
    // 800 mm of evapotranspiration then ask for some 890 mm of water.
    assertThat(800 / (1 - 0.10)).isCloseTo(890, within(5.0));
  }

  /**
   * Tomato, which begins to suffer at 2.5 dS/m and gives nothing at 13: 1/11.5 after FAO 29
   * equation 9 and 1/26 under emitters; both as restated in the checks of a public crop water
   * repository.
   */
  @Test
  void tomatoUnderOneDecisiemens() {
    assertThat(Leaching.conventional(0.1, 0.25)).isCloseTo(1 / 11.5, within(1e-12));
    assertThat(Leaching.frequent(0.1, 1.3)).isCloseTo(1 / 26.0, within(1e-12));
  }

  /**
   * FAO-56 (1998) Example 39 and equation 93, pages 180 to 182, read in the paper: where 15 per
   * cent of a water of 1 dS/m run through, the soil comes to 1.5 dS/m.
   */
  @Test
  void soilOfExample39() {
    assertThat(Leaching.conventional(0.1, 0.15)).isCloseTo(0.15, within(0.005));
  }

  @Test
  void waterSaltierThanTheSoilMayBeCannotLeachIt() {
    assertThat(Leaching.conventional(1.3, 0.25)).isEqualTo(1);
    assertThat(Leaching.frequent(9, 0.5)).isEqualTo(1);
  }
}
