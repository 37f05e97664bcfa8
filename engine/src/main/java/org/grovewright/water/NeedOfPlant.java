package org.grovewright.water;

import org.grovewright.catalogue.Species;
import org.grovewright.growth.Growth;

/**
 * The water balance of one plant in the mean weather of a month; each instance holds the steps of
 * one month.
 */
final class NeedOfPlant {
  private static final double DAY_S = 86_400;
  private static final double SHADE_ON_WETTED_SOIL = 2.0 / 3;

  final double spreadM;
  final double heightM;
  final double basal;
  final double densityRatio;
  final double groundM2;
  final double evaporationCoefficient;
  final double exposedM2;
  final double soilM2;
  final double rootDepthM;
  final double depletion;
  final double rainMPerS;
  final double transpirationM3PerS;
  final double evaporationM3PerS;
  final double storeM3;
  final double intervalS;

  /**
   * Finds the month.
   *
   * @param rainM rain of the month, metres
   * @param years age of the plant in mid-month
   */
  NeedOfPlant(
      Growth growth,
      Species species,
      KcCurve curve,
      int month,
      double years,
      ReferenceEt et,
      double weatherShift,
      double rainM,
      SoilWater soil,
      NeedSettings settings) {
    spreadM = growth.spreadM(years);
    heightM = growth.heightM(years);
    double room = species.spacingM() * species.spacingM();
    double crownM2 = Math.min(growth.crownAreaM2(years), room);
    double matureM2 =
        Math.min(Math.PI / 4 * species.matureSpreadM() * species.matureSpreadM(), room);
    double standCover = settings.standCover().value();
    double multiplier = settings.canopyMultiplier().value();
    groundM2 = matureM2 / standCover;
    double noon = et.sun().noonElevationRad();
    double density = Cover.density(Cover.effective(crownM2 / groundM2, noon), heightM, multiplier);
    double fullDensity =
        Cover.density(Cover.effective(standCover, noon), species.matureHeightM(), multiplier);
    densityRatio = density / fullDensity;
    basal = curve.basal(month, weatherShift, settings.basalDifference().value());
    double et0 = et.et0MPerS();
    transpirationM3PerS = et0 * basal * densityRatio * groundM2;

    double reach = settings.capillaryReach().value();
    double ballM2 = disc(growth.ballRadiusM() + reach);
    soilM2 = disc(growth.rootRadiusM(years) + reach);
    rootDepthM = Math.min(soil.depthM(), growth.rootDepthM(years));
    double totalM = soil.totalAvailableM(rootDepthM);
    double transpirationMm = transpirationM3PerS * DAY_S * 1000 / soilM2;
    depletion = SoilWater.depletion(species.depletion(), transpirationMm);
    storeM3 = depletion * totalM * soilM2;

    double wettedM2 = ballM2 + settings.wettedShare().value() * (soilM2 - ballM2);
    exposedM2 = wettedM2 * (1 - SHADE_ON_WETTED_SOIL * Math.min(1, crownM2 / wettedM2));
    double daysBetween =
        transpirationM3PerS > 0 ? storeM3 / transpirationM3PerS / DAY_S : Double.POSITIVE_INFINITY;
    double wettingDays = Math.max(1, Math.min(settings.longestIntervalS() / DAY_S, daysBetween));
    evaporationCoefficient =
        et0 > 0 && curve.inLeaf(month) > 0
            ? WettedSurface.meanCoefficient(
                et.et0MmPerDay(),
                wettingDays,
                soil.readilyEvaporableM() * 1000,
                WettedSurface.totalEvaporableMm(
                    soil.fieldCapacity(), soil.wiltingPoint(), settings.evaporationDepthM()))
            : 0;
    evaporationM3PerS =
        et0
            * evaporationCoefficient
            * curve.inLeaf(month)
            * (1 - settings.mulchReduction())
            * exposedM2;

    double days = Months.meanDays(month);
    double use = transpirationM3PerS + evaporationM3PerS;
    double useMm = use * days * DAY_S / soilM2 * 1000;
    double effectiveMm = EffectiveRain.monthlyMm(rainM * 1000, useMm, depletion * totalM * 1000);
    rainMPerS = effectiveMm / 1000 / (days * DAY_S);

    double longest =
        years < settings.establishmentYears()
            ? Math.min(settings.longestIntervalS(), settings.establishmentIntervalS())
            : settings.longestIntervalS();
    intervalS = use > 0 ? Math.min(longest, storeM3 / use) : longest;
  }

  private static double disc(double radiusM) {
    return Math.PI * radiusM * radiusM;
  }

  double useM3PerS() {
    return transpirationM3PerS + evaporationM3PerS;
  }

  double rainM3PerS() {
    return rainMPerS * soilM2;
  }

  double needM3PerS() {
    return Math.max(0, useM3PerS() - rainM3PerS());
  }
}
