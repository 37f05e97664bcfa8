package org.grovewright.water;

/** Pressures of air and of the water vapour in it, after FAO-56 chapter 3. */
public final class Air {
  private Air() {}

  /** Mean air pressure at an elevation, kPa; FAO-56 equation 7. */
  public static double pressureKPa(double elevationM) {
    return 101.3 * Math.pow((293 - 0.0065 * elevationM) / 293, 5.26);
  }

  /** Psychrometric constant, kPa per degree; FAO-56 equation 8. */
  public static double psychrometricKPaPerC(double pressureKPa) {
    return 0.665e-3 * pressureKPa;
  }

  /** Saturation vapour pressure, kPa; FAO-56 equation 11. */
  public static double saturationKPa(double celsius) {
    return 0.6108 * Math.exp(17.27 * celsius / (celsius + 237.3));
  }

  /** Slope of the saturation vapour pressure curve, kPa per degree; FAO-56 equation 13. */
  public static double slopeKPaPerC(double celsius) {
    double below = celsius + 237.3;
    return 4098 * saturationKPa(celsius) / (below * below);
  }

  /** Dew point of a vapour pressure, degrees Celsius; FAO-56 equation 11 turned round. */
  public static double dewPointC(double vapourKPa) {
    double log = Math.log(vapourKPa / 0.6108);
    return 237.3 * log / (17.27 - log);
  }

  /** Wind speed 2 m above ground from that at another height, m/s; FAO-56 equation 47. */
  public static double windAt2m(double speedMPerS, double heightM) {
    // The equation returns 1.0002 at 2 m itself, where nothing is to be converted.
    return heightM == 2 ? speedMPerS : speedMPerS * 4.87 / Math.log(67.8 * heightM - 5.42);
  }
}
