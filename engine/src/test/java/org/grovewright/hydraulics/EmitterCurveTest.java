package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class EmitterCurveTest {
  private static final double LPH = 1e-3 / 3600;

  @Test
  void powerLawGivesItsPoint() {
    EmitterCurve curve = EmitterCurve.through(4 * LPH, 10, 0.5);
    assertThat(curve.flow(10)).isCloseTo(4 * LPH, within(1e-15));
    assertThat(curve.flow(2.5)).isCloseTo(2 * LPH, within(1e-15));
    assertThat(curve.flow(0)).isZero();
    assertThat(curve.flow(-3)).isZero();
  }

  @Test
  void compensatingEmitterIsFlatInItsRangeOnly() {
    EmitterCurve curve = EmitterCurve.pressureCompensating(2 * LPH, 5, 40, 0.02);
    assertThat(curve.flow(5)).isCloseTo(2 * LPH, within(1e-15));
    assertThat(curve.flow(1.25)).isCloseTo(1 * LPH, within(1e-15));
    assertThat(curve.flow(40) / curve.flow(5)).isCloseTo(Math.pow(8, 0.02), within(1e-9));
    assertThat(curve.flow(160) / curve.flow(40)).isCloseTo(2, within(1e-9));
  }

  @Test
  void antiDrainEmitterShutsBelowItsPressure() {
    EmitterCurve curve = EmitterCurve.pressureCompensating(2 * LPH, 5, 40, 0.02).shuttingBelow(1.4);
    assertThat(curve.flow(1.4)).isZero();
    assertThat(curve.flow(1.3)).isZero();
    assertThat(curve.flow(10)).isGreaterThan(2 * LPH);
  }

  /** Torricelli: a 3 mm hole under 10 m, Cd 0.6, gives 0.6 A sqrt(2 g h). */
  @Test
  void orificeFollowsTorricelli() {
    double area = Math.PI / 4 * 0.003 * 0.003;
    assertThat(EmitterCurve.orifice(0.003, 0.6).flow(10))
        .isCloseTo(0.6 * area * Math.sqrt(2 * 9.80665 * 10), within(1e-12));
  }

  @Property
  void flowNeverFallsAndSlopeIsItsDerivative(
      @ForAll @DoubleRange(min = -1, max = 80) double head,
      @ForAll @DoubleRange(min = 0, max = 1) double x,
      @ForAll @DoubleRange(min = 0, max = 3) double shut) {
    EmitterCurve[] curves = {
      EmitterCurve.power(1e-6, x),
      EmitterCurve.power(1e-6, x).shuttingBelow(shut),
      EmitterCurve.pressureCompensating(1e-6, 5, 40, x / 10),
      EmitterCurve.pressureCompensating(1e-6, 5, 40, x / 10).shuttingBelow(shut)
    };
    double step = 1e-7;
    for (EmitterCurve curve : curves) {
      double low = curve.flow(head - step);
      double high = curve.flow(head + step);
      assertThat(high).isGreaterThanOrEqualTo(low);
      double kink = 2 * curve.slope(head + step) + 2 * curve.slope(head - step);
      assertThat(curve.slope(head))
          .isCloseTo(
              (high - low) / (2 * step),
              within(
                  1e-12
                      + 0.01 * kink
                      + Math.abs(curve.slope(head + step) - curve.slope(head - step))));
    }
  }

  @Property
  void headForInvertsFlow(@ForAll @DoubleRange(min = 0.1, max = 100) double head) {
    EmitterCurve curve = EmitterCurve.pressureCompensating(1e-6, 5, 40, 0.05);
    assertThat(curve.headFor(curve.flow(head))).isCloseTo(head, within(1e-9 * head));
  }
}
