package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.grovewright.catalogue.Species;
import org.junit.jupiter.api.Test;

class KcCurveTest {
  @Test
  void runsThroughTheFourStages() {
    // Stages of FAO-56 chapter 6: level, rising, level, falling.
    KcCurve curve = KcCurve.of(TestCatalogue.evergreen(), false);
    assertThat(curve.basal(1, 0, 0)).isCloseTo(0.60, within(1e-9));
    assertThat(curve.basal(4, 0, 0)).isBetween(0.65, 0.80);
    assertThat(curve.basal(7, 0, 0)).isCloseTo(0.85, within(1e-9));
    // The last day of the late season lies at the end of December, half a day before the end level.
    assertThat(curve.basal(12, 0, 0)).isBetween(0.75, 0.78);
    assertThat(curve.basal(7, 0, 0.05)).isCloseTo(0.80, within(1e-9));
  }

  @Test
  void middleOfDevelopmentIsHalfWay() {
    // FAO-56 equation 66: linear between the levels.
    Species species =
        TestCatalogue.species("s", false, 3, 3, new Species.Kc(0.4, 1.0, 0.7, 31, 28, 30, 30, 1));
    assertThat(KcCurve.of(species, false).basal(2, 0, 0)).isCloseTo(0.7, within(1e-9));
  }

  @Test
  void beansOfExample29And30() {
    // FAO-56 Example 30: Kcb 0.15, 1.14 and 0.25 with stages of 25, 25, 30 and 20 days have 0.15,
    // 0.63, 1.14 and 0.70 on days 12, 37, 65 and 90. The curve here gives the middle of a day, half
    // a day before its end.
    Species beans =
        TestCatalogue.species(
            "b", false, 1, 1, new Species.Kc(0.15, 1.14, 0.25, 25, 25, 30, 20, 1));
    KcCurve curve = KcCurve.of(beans, false);
    assertThat(curve.basalOnDay(12, 0, 0)).isCloseTo(0.15, within(0.005));
    assertThat(curve.basalOnDay(37, 0, 0)).isCloseTo(0.63, within(0.025));
    assertThat(curve.basalOnDay(65, 0, 0)).isCloseTo(1.14, within(0.005));
    assertThat(curve.basalOnDay(90, 0, 0)).isCloseTo(0.70, within(0.03));
  }

  @Test
  void beansOfExample28() {
    // FAO-56 Example 28, single coefficient: 0.15, 1.19 and 0.35 with the same stages have 0.15,
    // 0.77, 1.19 and 0.56 on days 20, 40, 70 and 95; half a day earlier here, as above.
    Species beans =
        TestCatalogue.species(
            "b", false, 1, 1, new Species.Kc(0.15, 1.19, 0.35, 25, 25, 30, 20, 1));
    KcCurve curve = KcCurve.of(beans, false);
    assertThat(curve.basalOnDay(20, 0, 0)).isCloseTo(0.15, within(0.005));
    assertThat(curve.basalOnDay(40, 0, 0)).isCloseTo(0.77, within(0.026));
    assertThat(curve.basalOnDay(70, 0, 0)).isCloseTo(1.19, within(0.005));
    assertThat(curve.basalOnDay(95, 0, 0)).isCloseTo(0.56, within(0.026));
  }

  @Test
  void seasonStartsSixMonthsLaterInTheSouth() {
    KcCurve north = KcCurve.of(TestCatalogue.evergreen(), false);
    KcCurve south = KcCurve.of(TestCatalogue.evergreen(), true);
    assertThat(south.basal(7, 0, 0)).isCloseTo(north.basal(1, 0, 0), within(0.01));
    assertThat(south.basal(1, 0, 0)).isCloseTo(north.basal(7, 0, 0), within(0.01));
  }

  @Test
  void bareTreesUseNothing() {
    KcCurve curve = KcCurve.of(TestCatalogue.deciduous(), false);
    assertThat(curve.basal(1, 0, 0.05)).isZero();
    assertThat(curve.inLeaf(1)).isZero();
    assertThat(curve.inLeaf(6)).isEqualTo(1);
  }

  @Test
  void dryWindRaisesTheLevels() {
    // FAO-56 box 15: beans of 0.4 m under 2.2 m/s and 30 %, 1.15 becomes 1.19.
    assertThat(1.15 + KcCurve.weatherShift(2.2, 0.30, 0.4)).isCloseTo(1.19, within(0.005));
    // FAO-56 Example 32: the same bracket with 1 m, 3 m/s and 20 %, 1.2 becomes 1.30.
    assertThat(1.20 + KcCurve.weatherShift(3, 0.20, 1)).isCloseTo(1.30, within(0.005));
    assertThat(KcCurve.weatherShift(2, 0.45, 3)).isCloseTo(0, within(1e-12));
  }

  /**
   * FAO-56 (1998) Example 27, page 125, read in the paper: maize, table value 1.20 and 2 m high.
   * Taipei has 1.3 m/s and 75 %, Mocha 4.6 m/s and 44 %; the coefficients of the middle of the
   * season are 1.07 and 1.30. The terms of equation 62 are worked here one by one.
   */
  @Test
  void maizeOfExample27() {
    double height = Math.pow(2.0 / 3, 0.3);
    assertThat(height).isCloseTo(0.885, within(0.001));
    // 0.04 (1.3 - 2) - 0.004 (75 - 45) and 0.04 (4.6 - 2) - 0.004 (44 - 45).
    assertThat(KcCurve.weatherBracket(1.3, 0.75)).isCloseTo(-0.148, within(1e-9));
    assertThat(KcCurve.weatherBracket(4.6, 0.44)).isCloseTo(0.108, within(1e-9));
    assertThat(KcCurve.weatherShift(1.3, 0.75, 2)).isCloseTo(-0.148 * height, within(1e-9));
    assertThat(KcCurve.weatherShift(4.6, 0.44, 2)).isCloseTo(0.108 * height, within(1e-9));
    assertThat(1.20 + KcCurve.weatherShift(1.3, 0.75, 2)).isCloseTo(1.07, within(0.005));
    assertThat(1.20 + KcCurve.weatherShift(4.6, 0.44, 2)).isCloseTo(1.30, within(0.005));
  }

  @Test
  void densityFollowsTheThreeBranches() {
    // Allen and Pereira (2009): few leaves, middling cover, full cover.
    assertThat(Cover.density(0.01, 2, 1.5)).isCloseTo(0.015, within(1e-12));
    assertThat(Cover.density(0.6, 0.1, 1.5)).isCloseTo(Math.pow(0.6, 1 / 1.1), within(1e-12));
    assertThat(Cover.density(1, 3, 1.5)).isEqualTo(1);
    assertThat(Cover.effective(0.3, Math.PI / 2)).isCloseTo(0.3, within(1e-12));
    assertThat(Cover.effective(0.3, Math.toRadians(30))).isCloseTo(0.6, within(1e-12));
  }
}
