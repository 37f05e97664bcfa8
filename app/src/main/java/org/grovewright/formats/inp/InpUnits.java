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
  CFS(1, false, "ft3/s"),
  GPM(448.831, false, "gal/min"),
  MGD(0.64632, false, "million gal/day"),
  IMGD(0.5382, false, "million imperial gal/day"),
  AFD(1.9837, false, "acre-ft/day"),
  LPS(28.317, true, "L/s"),
  LPM(1699.0, true, "L/min"),
  MLD(2.4466, true, "million L/day"),
  CMH(101.94, true, "m3/h"),
  CMD(2446.6, true, "m3/day"),
  CMS(0.028317, true, "m3/s");

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
  private final String flowName;

  InpUnits(double perCubicFootPerSecond, boolean metric, String flowName) {
    this.flowName = flowName;
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

  /** What the unit of flow is called in a sentence. */
  String flowName() {
    return flowName;
  }

  /** What the unit of length, elevation or head is called. */
  String lengthName() {
    return metric ? "m" : "ft";
  }

  /** What the unit of bore is called. */
  String boreName() {
    return metric ? "mm" : "in";
  }

  /** What the unit of roughness height is called. */
  String roughnessHeightName() {
    return metric ? "mm" : "thousandths of a foot";
  }

  /** What the unit of pressure is called. */
  String pressureName() {
    return metric ? "m" : "psi";
  }
}
