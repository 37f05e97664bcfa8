package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Water in excess, worked by hand from volume = flow x time. */
class OverwateringTest {
  private static final double YEAR_S = 365.25 * 86_400;
  private static final double NEED = 1e-7;

  private static double[] all(double value) {
    double[] months = new double[12];
    Arrays.fill(months, value);
    return months;
  }

  private static Overwatering.Flow flow(int plant, double flow, double spread) {
    return new Overwatering.Flow(plant, flow, spread);
  }

  @Test
  void nothingIsWastedWhereFlowsFollowNeeds() {
    Overwatering water = new Overwatering(new double[][] {all(NEED), all(2 * NEED)}, 1);

    assertThat(water.perYearM3(List.of(flow(0, 1e-6, 1), flow(1, 2e-6, 1))))
        .isCloseTo(0, within(1e-9));
  }

  @Test
  void theWorstServedPlantSetsTheTimeOfAll() {
    Overwatering water = new Overwatering(new double[][] {all(NEED), all(NEED)}, 0.8);

    // Plant 1 gets half the flow, so both run until it has its need and plant 0 gets it twice.
    assertThat(water.perYearM3(List.of(flow(0, 2e-6, 1), flow(1, 1e-6, 1))))
        .isCloseTo(NEED / 0.8 * YEAR_S, within(1e-9));
  }

  /** Of equal plants the excess is the need times 1/EU - 1, EU of Keller and Karmeli (1974). */
  @Test
  void ofEqualPlantsTheExcessFollowsFromTheEmissionUniformity() {
    Overwatering water = new Overwatering(new double[][] {all(NEED), all(NEED)}, 1);
    double spread = 1 - 1.27 * 0.05 / Math.sqrt(4);
    double uniformity = spread * 0.9 / 0.95;

    assertThat(water.perYearM3(List.of(flow(0, 1e-6, spread), flow(1, 0.9e-6, spread))))
        .isCloseTo(2 * NEED * (1 / uniformity - 1) * YEAR_S, within(1e-9));
  }

  @Test
  void aPlantThatNoWaterReachesDoesNotLengthenTheRun() {
    Overwatering water = new Overwatering(new double[][] {all(NEED), all(NEED)}, 1);

    assertThat(water.runShare(List.of(flow(0, 1e-6, 1), flow(1, 0, 1)), 1))
        .isCloseTo(0.1, within(1e-12));
  }
}
