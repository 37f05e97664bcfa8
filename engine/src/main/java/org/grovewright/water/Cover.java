package org.grovewright.water;

/** How much of its ground a crown covers, and what that means for transpiration. */
public final class Cover {
  private Cover() {}

  /**
   * Share of ground shaded at noon by crowns that cover a share of it seen from above; FAO-56
   * equation 97 as used for trees by Allen and Pereira (2009).
   *
   * @param share crown area over ground area
   * @param noonElevationRad height of the sun at noon, radians
   */
  public static double effective(double share, double noonElevationRad) {
    // Below ten degrees the shadow outruns the geometry the relation was made for.
    double sine = Math.max(Math.sin(Math.toRadians(10)), Math.sin(noonElevationRad));
    return Math.max(0, Math.min(1, share / sine));
  }

  /**
   * Density coefficient, {@code K_d = min(1, M_L f, f^(1/(1+h)))}: transpiration of a stand over
   * that of one with full cover; Allen and Pereira (2009), Irrigation Science 28, equation 10.
   *
   * @param effectiveShare share of ground shaded at noon
   * @param heightM mean plant height, metres
   * @param multiplier greatest transpiration of a lone crown over that of the same area in a stand
   */
  public static double density(double effectiveShare, double heightM, double multiplier) {
    return Math.min(
        1, Math.min(multiplier * effectiveShare, Math.pow(effectiveShare, 1 / (1 + heightM))));
  }
}
