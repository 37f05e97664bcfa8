package org.grovewright.water;

/**
 * The sun over one day at one latitude, after FAO-56 equations 21 to 34.
 *
 * @param dayOfYear 1 to 366
 * @param inverseDistance inverse relative distance between earth and sun, d_r
 * @param declinationRad solar declination, radians
 * @param sunsetHourAngleRad sunset hour angle, radians; 0 in polar night, pi in polar day
 * @param raMjPerM2Day radiation above the atmosphere on a level surface, MJ per m2 and day
 * @param daylightHours longest possible sunshine, hours
 * @param noonElevationRad height of the sun at noon, radians; 0 if it stays below the horizon
 */
public record SolarDay(
    int dayOfYear,
    double inverseDistance,
    double declinationRad,
    double sunsetHourAngleRad,
    double raMjPerM2Day,
    double daylightHours,
    double noonElevationRad) {
  private static final double SOLAR_CONSTANT_MJ_PER_M2_MIN = 0.0820;

  /**
   * The sun at a place on a day.
   *
   * @param latitudeDeg latitude, degrees, south negative, from -90 to 90
   * @param dayOfYear 1 to 366
   */
  public static SolarDay of(double latitudeDeg, int dayOfYear) {
    double phi = Math.toRadians(latitudeDeg);
    double turn = 2 * Math.PI * dayOfYear / 365;
    double dr = 1 + 0.033 * Math.cos(turn);
    double delta = 0.409 * Math.sin(turn - 1.39);
    // Beyond the polar circles the cosine leaves its range: the sun stays up or down all day.
    double cosine = -Math.tan(phi) * Math.tan(delta);
    double ws = Math.acos(Math.max(-1, Math.min(1, cosine)));
    double sines = Math.sin(phi) * Math.sin(delta);
    double cosines = Math.cos(phi) * Math.cos(delta);
    double ra =
        24
            * 60
            / Math.PI
            * SOLAR_CONSTANT_MJ_PER_M2_MIN
            * dr
            * (ws * sines + cosines * Math.sin(ws));
    double noon = Math.asin(Math.max(0, Math.min(1, sines + cosines)));
    return new SolarDay(dayOfYear, dr, delta, ws, Math.max(0, ra), 24 / Math.PI * ws, noon);
  }
}
