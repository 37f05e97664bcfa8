package org.grovewright.water;

import org.grovewright.catalogue.Species;
import org.grovewright.growth.Growth;

/**
 * The water balance of one plant in the mean weather of a month; each instance holds the steps of
 * one month.
 */
final class NeedOfPlant {
  private static final double DAY_S = 86_400;

  /** Greatest crop coefficient of a surface, FAO-56 equation 72 without its weather term. */
  private static final double FULL_COVER = 1.2;

  /** Share of the use below which a difference of use and rain is rounding. */
  private static final double ROUNDING = 1e-9;

  final PlantAtAge plant;
  final double basal;
  final double evaporationCoefficient;
  final double depletion;
  final double rainMPerS;
  final double transpirationM3PerS;
  final double evaporationM3PerS;
  final double storeM3;
  final double totalM3;
  final double intervalS;
  final Leaching leaching;

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
      NeedSettings settings,
      Leaching leaching) {
    this.leaching = leaching;
    plant = PlantAtAge.of(growth, species, years, et.sun().noonElevationRad(), soil, settings);
    basal = curve.basal(month, weatherShift, settings.basalDifference().value());
    double et0 = et.et0MPerS();
    transpirationM3PerS = et0 * basal * plant.densityRatio() * plant.groundM2();

    double soilM2 = plant.soilM2();
    double totalM = soil.totalAvailableM(plant.rootDepthM());
    // Roots narrower than their crown draw more from their own soil than full cover would use; the
    // published relation of depletion to evapotranspiration ends there.
    double transpirationMm = transpirationM3PerS * DAY_S * 1000 / soilM2;
    double demandMm = Math.min(transpirationMm, FULL_COVER * et.et0MmPerDay());
    depletion = SoilWater.depletion(species.depletion(), demandMm);
    totalM3 = totalM * soilM2;
    storeM3 = depletion * totalM3;

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
            * plant.exposedM2();

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

  double useM3PerS() {
    return transpirationM3PerS + evaporationM3PerS;
  }

  double rainM3PerS() {
    return rainMPerS * plant.soilM2();
  }

  double needM3PerS() {
    double missing = useM3PerS() - rainM3PerS();
    // Where rain covers the use, the difference is rounding and no need. FAO 29 equation 7: what is
    // brought is what is used, over the share that is not for leaching.
    return missing > ROUNDING * useM3PerS() ? missing / (1 - leaching.share()) : 0;
  }
}
