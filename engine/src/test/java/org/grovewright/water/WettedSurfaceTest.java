package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class WettedSurfaceTest {
  @Test
  void totalEvaporableWaterOfALoam() {
    // FAO-56 table 19: loam 0.25 and 0.12, Ze 0.10 m, TEW 16 to 22 mm.
    assertThat(WettedSurface.totalEvaporableMm(0.25, 0.12, 0.10)).isCloseTo(19, within(0.01));
  }

  @Test
  void frequentWettingsKeepTheSurfaceWet() {
    // FAO-56 figure 30: wetted daily under 5 mm/day, the coefficient is 1.15.
    assertThat(WettedSurface.meanCoefficient(5, 1, 9, 19)).isEqualTo(1.15);
  }

  @Test
  void agreesWithADailySumOfTheDecliningStage() {
    // FAO-56 equation 74 summed in small steps over the interval, an independent way to the closed
    // form of annex 7.
    double et0 = 6;
    double days = 10;
    double potential = 1.15 * et0;
    double depleted = 0;
    int steps = 1_000_000;
    for (int i = 0; i < steps; i++) {
      double kr = depleted <= 9 ? 1 : Math.max(0, (19 - depleted) / (19 - 9));
      depleted += kr * potential * days / steps;
    }
    // The closed form's factor (1 + REW/(TEW-REW))/TEW is 1/(TEW-REW).
    assertThat(WettedSurface.meanCoefficient(et0, days, 9, 19))
        .isCloseTo(depleted / days / et0, within(1e-4));
  }
}
