package org.grovewright.hydraulics;

import java.util.List;

/**
 * What a supply still gives at a flow: {@code p = ps - a Q^n}, with p and ps in metres of water at
 * the source and Q in m3/s.
 *
 * <p>A main behind a meter and service pipe, a pump and a tank all fit this form: the main with n
 * of 1.85 (Hazen-Williams) or 2, the tank with a of zero, the pump by its curve.
 *
 * @param staticHead pressure with no flow, in m
 * @param a coefficient for m3/s, not negative
 * @param n exponent, at least 1
 */
public record SupplyCurve(double staticHead, double a, double n) {
  /**
   * A bucket test: a vessel filled by the stop watch while a gauge is read.
   *
   * @param volume volume caught in m3
   * @param seconds time it took
   * @param residualHead pressure at the source meanwhile in m; 0 for a free outlet
   */
  public record FlowTest(double volume, double seconds, double residualHead) {
    /** Flow in m3/s. */
    public double flow() {
      return volume / seconds;
    }
  }

  /** A supply whose pressure does not fall, such as an open tank with the given head over it. */
  public static SupplyCurve constant(double headM) {
    return new SupplyCurve(headM, 0, 2);
  }

  /** A pump with a power law drawing from open water at the source's elevation. */
  public static SupplyCurve pump(PumpCurve.PowerLaw curve) {
    return new SupplyCurve(curve.shutoffHead(), curve.b(), curve.c());
  }

  /**
   * The curve through the static pressure that fits flow tests best in least squares of pressure.
   *
   * @param staticHeadM pressure without flow in m
   * @param tests one or more tests, each with less pressure than the static one
   * @param n exponent, 1.85 or 2 by custom
   * @throws IllegalArgumentException if there is no test or one has no flow, or if the tests show
   *     no fall of pressure
   */
  public static SupplyCurve fromTests(double staticHeadM, List<FlowTest> tests, double n) {
    double upper = 0;
    double lower = 0;
    for (FlowTest test : tests) {
      if (!(test.volume() > 0 && test.seconds() > 0)) {
        throw new IllegalArgumentException(
            "a flow test needs a volume and a time above zero, but has "
                + test.volume()
                + " m3 in "
                + test.seconds()
                + " s");
      }
      double power = Math.pow(test.flow(), n);
      upper += (staticHeadM - test.residualHead()) * power;
      lower += power * power;
    }
    if (tests.isEmpty()) {
      throw new IllegalArgumentException("at least one flow test is needed");
    }
    if (!(upper > 0)) {
      throw new IllegalArgumentException(
          "the pressure while water runs must be below the static pressure of "
              + staticHeadM
              + " m");
    }
    return new SupplyCurve(staticHeadM, upper / lower, n);
  }

  /** Pressure left at a flow, in m; below zero where the supply cannot give that flow. */
  public double headAt(double flow) {
    return staticHead - a * Math.pow(flow, n);
  }

  /**
   * Flow that the supply gives at a pressure, in m3/s; 0 at or above the static pressure, infinite
   * for a supply whose pressure does not fall.
   */
  public double flowAt(double head) {
    if (head >= staticHead) {
      return 0;
    }
    return a == 0 ? Double.POSITIVE_INFINITY : Math.pow((staticHead - head) / a, 1 / n);
  }
}
