package org.grovewright.formats.inp;

import java.util.Locale;

/**
 * Units of a network text. The flow unit decides the others: with a metric one lengths are in m and
 * bores in mm, with a US one in ft and in, and pressures in m or psi.
 *
 * <p>The factors are those of the format's engine, rounded as it rounds them, so that a text means
 * the same here.
 */
enum InpUnits {
  CFS(1, false),
  GPM(448.831, false),
  MGD(0.64632, false),
  IMGD(0.5382, false),
  AFD(1.9837, false),
  LPS(28.317, true),
  LPM(1699.0, true),
  MLD(2.4466, true),
  CMH(101.94, true),
  CMD(2446.6, true),
  CMS(0.028317, true);

  static final double FOOT = 0.3048;
  private static final double CUBIC_FOOT = FOOT * FOOT * FOOT;

  /** Pounds per square inch of one foot of water, as the format's engine has it. */
  private static final double PSI_PER_FOOT = 0.4333;

  /** Acceleration of gravity in m/s2 that the format's engine reckons with: 32.2 ft/s2. */
  static final double GRAVITY = 32.2 * FOOT;

  /** Viscosity in m2/s that a viscosity of 1 in the text stands for: 1.1e-5 ft2/s. */
  static final double VISCOSITY = 1.1e-5 * FOOT * FOOT;

  private final double flow;
  private final boolean metric;

  InpUnits(double perCubicFootPerSecond, boolean metric) {
    this.flow = CUBIC_FOOT / perCubicFootPerSecond;
    this.metric = metric;
  }

  /** The units by name in any case, or null. */
  static InpUnits named(String name) {
    for (InpUnits units : values()) {
      if (units.name().equals(name.toUpperCase(Locale.ROOT))) {
        return units;
      }
    }
    return null;
  }

  /** One unit of flow in m3/s. */
  double flow() {
    return flow;
  }

  /** One unit of length, elevation or head in m. */
  double length() {
    return metric ? 1 : FOOT;
  }

  /** One unit of bore in m. */
  double bore() {
    return metric ? 1e-3 : FOOT / 12;
  }

  /** One unit of roughness height in m. */
  double roughnessHeight() {
    return metric ? 1e-3 : 1e-3 * FOOT;
  }

  /** One unit of pressure in m of water. */
  double pressure() {
    return metric ? 1 : FOOT / PSI_PER_FOOT;
  }
}
