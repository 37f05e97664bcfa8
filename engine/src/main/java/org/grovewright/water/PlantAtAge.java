package org.grovewright.water;

import org.grovewright.catalogue.Species;
import org.grovewright.growth.Growth;

/**
 * The sizes of a plant at one age that its use of water depends on.
 *
 * @param spreadM crown spread, metres
 * @param heightM height, metres
 * @param crownM2 ground under the crown, m2, at most the room that the usual spacing gives
 * @param groundM2 ground on which the plant would stand in a stand as dense as those that the crop
 *     coefficients were found for, m2
 * @param densityRatio transpiration on that ground over that of such a stand
 * @param soilM2 area of soil that the roots draw from, m2
 * @param rootDepthM depth of the roots, metres, within the depth of the soil
 * @param wettedM2 part of that area that emitters wet, m2
 */
record PlantAtAge(
    double spreadM,
    double heightM,
    double crownM2,
    double groundM2,
    double densityRatio,
    double soilM2,
    double rootDepthM,
    double wettedM2) {
  private static final double SHADE_ON_WETTED_SOIL = 2.0 / 3;

  /**
   * The plant at an age.
   *
   * @param noonElevationRad height of the sun at noon, radians
   */
  static PlantAtAge of(
      Growth growth,
      Species species,
      double years,
      double noonElevationRad,
      SoilWater soil,
      NeedSettings settings) {
    double heightM = growth.heightM(years);
    double room = species.spacingM() * species.spacingM();
    double crownM2 = Math.min(growth.crownAreaM2(years), room);
    double matureM2 =
        Math.min(Math.PI / 4 * species.matureSpreadM() * species.matureSpreadM(), room);
    double standCover = settings.standCover().value();
    double multiplier = settings.canopyMultiplier().value();
    double groundM2 = matureM2 / standCover;
    double density =
        Cover.density(Cover.effective(crownM2 / groundM2, noonElevationRad), heightM, multiplier);
    double standDensity =
        Cover.density(
            Cover.effective(standCover, noonElevationRad), species.matureHeightM(), multiplier);
    double reach = settings.capillaryReach().value();
    double ballM2 = disc(growth.ballRadiusM() + reach);
    double soilM2 = disc(growth.rootRadiusM(years) + reach);
    return new PlantAtAge(
        growth.spreadM(years),
        heightM,
        crownM2,
        groundM2,
        density / standDensity,
        soilM2,
        Math.min(soil.depthM(), growth.rootDepthM(years)),
        ballM2 + settings.wettedShare().value() * (soilM2 - ballM2));
  }

  private static double disc(double radiusM) {
    return Math.PI * radiusM * radiusM;
  }

  /** Wetted soil that the crown does not shade, m2; FAO-56 chapter 7 for drip irrigation. */
  double exposedM2() {
    return wettedM2 * (1 - SHADE_ON_WETTED_SOIL * Math.min(1, crownM2 / wettedM2));
  }
}
