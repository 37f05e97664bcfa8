package org.grovewright.hydraulics;

/** Properties of water that the hydraulics needs. */
public final class Water {
  /** Standard acceleration of gravity, in m/s2 (CGPM 1901). */
  public static final double STANDARD_GRAVITY = 9.80665;

  private Water() {}

  /**
   * Kinematic viscosity of liquid water at atmospheric pressure, in m2/s.
   *
   * <p>Dynamic viscosity by the exponential fit {@code mu = 2.414e-5 * 10^(247.8 / (T - 140))} Pa s
   * with T in kelvin, density by {@code 1000 (1 - (t + 288.9414)(t - 3.9863)^2 / (508929.2 (t +
   * 68.12963)))} kg/m3 with t in degrees Celsius; both are common textbook fits, from memory, good
   * to about 1 % between 0 and 60 degrees.
   *
   * @param celsius water temperature, 0 to 100 degrees Celsius
   */
  public static double kinematicViscosity(double celsius) {
    double dynamic = 2.414e-5 * Math.pow(10, 247.8 / (celsius + 273.15 - 140));
    double off = celsius - 3.9863;
    double density =
        1000 * (1 - (celsius + 288.9414) * off * off / (508929.2 * (celsius + 68.12963)));
    return dynamic / density;
  }
}
