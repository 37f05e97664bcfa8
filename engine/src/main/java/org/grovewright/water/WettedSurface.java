package org.grovewright.water;

/** Evaporation from bare soil that is wetted again and again; FAO-56 annex 7. */
public final class WettedSurface {
  private static final double WET_SOIL_COEFFICIENT = 1.15;

  private WettedSurface() {}

  /**
   * Total evaporable water of the surface layer, mm; FAO-56 equation 73.
   *
   * @param fieldCapacity water content at field capacity, volume share
   * @param wiltingPoint water content at wilting point, volume share
   * @param depthM depth of the layer that dries by evaporation, metres
   */
  public static double totalEvaporableMm(double fieldCapacity, double wiltingPoint, double depthM) {
    return 1000 * (fieldCapacity - 0.5 * wiltingPoint) * depthM;
  }

  /**
   * Mean evaporation over reference evapotranspiration between wettings; FAO-56 equations 7-3 and
   * 7-4 of annex 7.
   *
   * @param et0MmPerDay reference evapotranspiration, mm per day
   * @param daysBetween mean time between wettings, days
   * @param readilyMm readily evaporable water, mm
   * @param totalMm total evaporable water, mm
   */
  public static double meanCoefficient(
      double et0MmPerDay, double daysBetween, double readilyMm, double totalMm) {
    double potential = WET_SOIL_COEFFICIENT * et0MmPerDay;
    double firstStageDays = readilyMm / potential;
    if (!(daysBetween > firstStageDays)) {
      return WET_SOIL_COEFFICIENT;
    }
    double slowMm = totalMm - readilyMm;
    double fall = -(daysBetween - firstStageDays) * potential * (1 + readilyMm / slowMm) / totalMm;
    double evaporated = totalMm - slowMm * Math.exp(fall);
    return Math.min(WET_SOIL_COEFFICIENT, evaporated / (daysBetween * et0MmPerDay));
  }
}
