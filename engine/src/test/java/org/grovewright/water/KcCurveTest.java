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
    // FAO-56 Example 28 has corn (2 m) under 2.2 m/s and 75 %: Kc mid 1.20 becomes 1.09 (from
    // memory), and in Phoenix-like weather of 4.6 m/s and 44 % it becomes 1.30.
    assertThat(1.20 + KcCurve.weatherShift(2.2, 0.75, 2)).isCloseTo(1.10, within(0.011));
    assertThat(1.20 + KcCurve.weatherShift(4.6, 0.44, 2)).isCloseTo(1.30, within(0.011));
    assertThat(KcCurve.weatherShift(2, 0.45, 3)).isCloseTo(0, within(1e-12));
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
