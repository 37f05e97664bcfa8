package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.grovewright.hydraulics.Calibration.Estimate;
import org.grovewright.hydraulics.Calibration.Fit;
import org.grovewright.hydraulics.Calibration.Parameter;
import org.grovewright.hydraulics.Reading.Quantity;
import org.junit.jupiter.api.Test;

class CalibrationTest {
  private static final List<Parameter> ALL = List.of(Parameter.values());

  /** Readings at the tap, the ends of the laterals and the cans, good to 1 %. */
  private static List<Reading> exact(Solution truth) {
    List<Reading> readings = new ArrayList<>();
    for (Reading reading : FaultSearchTest.readings(truth, new Random(3))) {
      readings.add(
          new Reading(reading.quantity(), reading.id(), reading.in(truth), reading.deviation()));
    }
    double tap = truth.pressure("tap");
    readings.add(new Reading(Quantity.PRESSURE, "tap", tap, 0.01 * tap));
    return readings;
  }

  @Test
  void exactReadingsGiveTheTruth() {
    Solution truth = Solver.solve(FaultSearchTest.orchard(145 * 0.8, 1.3, 0.85, 0.6));
    Fit fit = Calibration.fit(FaultSearchTest.orchard(145, 1, 1, 0.6), ALL, exact(truth));
    assertThat(fit.misfit()).isCloseTo(0, within(1e-6));
    assertThat(fit.estimates().get(Parameter.ROUGHNESS).factor()).isCloseTo(0.8, within(1e-3));
    assertThat(fit.estimates().get(Parameter.SUPPLY).factor()).isCloseTo(1.3, within(1e-3));
    assertThat(fit.estimates().get(Parameter.EMITTERS).factor()).isCloseTo(0.85, within(1e-3));
  }

  /**
   * Bounds of 95 % hold the truth in about 95 of 100 cases. Of 200 draws the share within scatters
   * by 1.5 %; three times that is allowed.
   */
  @Test
  void boundsHoldTheTruthAsOftenAsTheySay() {
    Network assumed = FaultSearchTest.orchard(145, 1, 1, 0.6);
    Solution truth = Solver.solve(FaultSearchTest.orchard(145 * 0.9, 1.15, 0.9, 0.6));
    List<Reading> exact = exact(truth);
    double[] factors = {0.9, 1.15, 0.9};
    int[] held = new int[3];
    Random random = new Random(11);
    int draws = 200;
    for (int draw = 0; draw < draws; draw++) {
      List<Reading> noisy = new ArrayList<>();
      for (Reading r : exact) {
        double value = r.value() + r.deviation() * random.nextGaussian();
        noisy.add(new Reading(r.quantity(), r.id(), value, r.deviation()));
      }
      Fit fit = Calibration.fit(assumed, ALL, noisy);
      for (int i = 0; i < 3; i++) {
        Estimate estimate = fit.estimates().get(ALL.get(i));
        if (estimate.low() <= factors[i] && factors[i] <= estimate.high()) {
          held[i]++;
        }
      }
    }
    for (int count : held) {
      assertThat(count / (double) draws).isBetween(0.905, 0.995);
    }
  }

  @Test
  void tooFewReadingsAreRefused() {
    Network network = FaultSearchTest.orchard(145, 1, 1, 0.6);
    assertThatThrownBy(() -> Calibration.fit(network, ALL, List.of()))
        .hasMessageContaining("at least as many readings");
  }
}
