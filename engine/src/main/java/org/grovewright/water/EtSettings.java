package org.grovewright.water;

import org.grovewright.catalogue.Catalogue;

/**
 * The place and the coefficients that reference evapotranspiration is found with.
 *
 * @param latitudeDeg latitude, degrees, south negative
 * @param elevationM height above sea level, metres
 * @param windHeightM height of the wind measurements above ground, metres
 * @param angstromA share of radiation that reaches the ground on an overcast day
 * @param angstromB further share that reaches it on a clear day
 * @param temperatureRangeKrs coefficient of radiation from the range of temperature
 * @param windDefaultMPerS wind speed at 2 m where none was measured, m/s
 * @param windFloorMPerS least wind speed at 2 m that the combination equation is used with, m/s
 * @param dewPointBelowTminC how far the dew point lies below the minimum temperature where no
 *     humidity was measured, degrees
 */
public record EtSettings(
    double latitudeDeg,
    double elevationM,
    double windHeightM,
    double angstromA,
    double angstromB,
    double temperatureRangeKrs,
    double windDefaultMPerS,
    double windFloorMPerS,
    double dewPointBelowTminC) {
  /**
   * Checks the place.
   *
   * @throws IllegalArgumentException if the latitude, the elevation or the height of the wind
   *     measurements is out of range
   */
  public EtSettings {
    if (!(Math.abs(latitudeDeg) <= 90)) {
      throw new IllegalArgumentException(
          "latitude must lie between -90 and 90 degrees, got " + latitudeDeg);
    }
    if (!(elevationM >= -500 && elevationM <= 9000)) {
      throw new IllegalArgumentException(
          "elevation must lie between -500 and 9000 m, got " + elevationM);
    }
    if (!(windHeightM >= 0.5 && windHeightM <= 200)) {
      throw new IllegalArgumentException(
          "the height of the wind measurements must lie between 0.5 and 200 m, got " + windHeightM);
    }
  }

  /** Settings of an inland place with a humid climate and the catalogue's coefficients. */
  public static EtSettings of(
      double latitudeDeg, double elevationM, double windHeightM, Catalogue catalogue) {
    return new EtSettings(
        latitudeDeg,
        elevationM,
        windHeightM,
        catalogue.constant("water.angstrom-a").value(),
        catalogue.constant("water.angstrom-b").value(),
        catalogue.constant("water.krs-interior").value(),
        catalogue.constant("water.wind-default").value(),
        catalogue.constant("water.wind-floor").value(),
        0);
  }

  /** The same with the coefficient of a coast. */
  public EtSettings coastal(Catalogue catalogue) {
    return new EtSettings(
        latitudeDeg,
        elevationM,
        windHeightM,
        angstromA,
        angstromB,
        catalogue.constant("water.krs-coastal").value(),
        windDefaultMPerS,
        windFloorMPerS,
        dewPointBelowTminC);
  }

  /** The same for a dry climate, where the air is not saturated even at its coolest. */
  public EtSettings arid(Catalogue catalogue) {
    return new EtSettings(
        latitudeDeg,
        elevationM,
        windHeightM,
        angstromA,
        angstromB,
        temperatureRangeKrs,
        windDefaultMPerS,
        windFloorMPerS,
        catalogue.constant("water.dewpoint-arid-offset").value());
  }
}
