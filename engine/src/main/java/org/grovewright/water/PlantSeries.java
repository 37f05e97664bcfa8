package org.grovewright.water;

import java.time.LocalDate;
import java.time.YearMonth;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.growth.Growth;
import org.grovewright.model.Climate.MonthNormal;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;

/**
 * A plant along a daily weather series: its season by day of the year and its size by month, as
 * plain numbers for the water balance.
 */
public final class PlantSeries {
  private static final double LEAST_EXPOSED = 0.01;

  private final double[] basal = new double[366];
  private final double[] perSoil;
  private final double[] shade;
  private final double[] heightFactor;
  private final double[] wetted;
  private final double[] exposedDrip;
  private final double[] exposedRain;
  private final double[] rootDepthM;
  private final double[] soilM2;
  private final double[] ballMm;
  private final double[] ballRoots;
  private final double[] ballArea;
  private final double[] nativeShare;
  private final RootBall ball;
  private final double tableDepletion;
  private final double mulchReduction;
  private final SoilWater soil;
  private final double evaporationDepthM;

  private PlantSeries(
      int months, Species species, SoilWater soil, NeedSettings settings, RootBall ball) {
    this.ball = ball;
    ballMm = new double[months];
    ballRoots = new double[months];
    ballArea = new double[months];
    nativeShare = new double[months];
    perSoil = new double[months];
    shade = new double[months];
    heightFactor = new double[months];
    wetted = new double[months];
    exposedDrip = new double[months];
    exposedRain = new double[months];
    rootDepthM = new double[months];
    soilM2 = new double[months];
    tableDepletion = species.depletion();
    mulchReduction = settings.mulchReduction();
    evaporationDepthM = settings.evaporationDepthM();
    this.soil = soil;
  }

  /**
   * A plant that grows along the series, whose first year is taken for that of the grove's start.
   *
   * @throws IllegalArgumentException if the species or the mulch is not in the catalogue
   */
  public static PlantSeries growing(
      Grove grove, Planting planting, WaterNeeds needs, DailyClimate weather, Catalogue catalogue) {
    int shift = grove.start().getYear() - weather.date(0).getYear();
    return of(grove, planting, needs, weather, catalogue, month -> month.plusYears(shift));
  }

  /**
   * A plant along a series of its own dates, as large on each as its age then makes it.
   *
   * @throws IllegalArgumentException if the species or the mulch is not in the catalogue
   */
  public static PlantSeries dated(
      Grove grove, Planting planting, WaterNeeds needs, DailyClimate weather, Catalogue catalogue) {
    return of(grove, planting, needs, weather, catalogue, month -> month);
  }

  /**
   * A plant that keeps the size it has in one year of the plan through the whole series, to see
   * what many years of weather would do to it.
   *
   * @param year year of the plan, from 1
   * @throws IllegalArgumentException if the species or the mulch is not in the catalogue
   */
  public static PlantSeries inYear(
      Grove grove,
      Planting planting,
      int year,
      WaterNeeds needs,
      DailyClimate weather,
      Catalogue catalogue) {
    LocalDate start = grove.start();
    return of(
        grove,
        planting,
        needs,
        weather,
        catalogue,
        month ->
            YearMonth.of(
                WaterNeeds.calendarYear(start, year, month.getMonthValue()),
                month.getMonthValue()));
  }

  private static PlantSeries of(
      Grove grove,
      Planting planting,
      WaterNeeds needs,
      DailyClimate weather,
      Catalogue catalogue,
      java.util.function.UnaryOperator<YearMonth> when) {
    Species species = WaterNeeds.speciesOf(planting, catalogue);
    NeedSettings settings = WaterNeeds.settingsOf(grove, catalogue);
    Growth growth = Growth.of(planting, species, grove.start(), catalogue.constants());
    RootBall ball = RootBall.of(planting, growth, catalogue);
    PlantSeries series = new PlantSeries(weather.months(), species, needs.soil(), settings, ball);
    series.season(grove, needs, species, settings);
    for (int at = 0; at < weather.months(); at++) {
      YearMonth month = weather.month(at);
      double years = growth.yearsAt(when.apply(month).atDay(15));
      double noon = needs.climate().month(month.getMonthValue()).sun().noonElevationRad();
      PlantAtAge plant = PlantAtAge.of(growth, species, years, noon, needs.soil(), settings);
      series.size(at, plant);
      series.ball(at, plant, growth.rootRadiusM(years));
    }
    return series;
  }

  private void season(Grove grove, WaterNeeds needs, Species species, NeedSettings settings) {
    KcCurve curve = KcCurve.of(species, grove.site().southern());
    for (int day = 1; day <= 365; day++) {
      int month = LocalDate.ofYearDay(2001, day).getMonthValue();
      MonthNormal normal = grove.climate().normals().get(month - 1);
      ReferenceEt et = needs.climate().month(month);
      double shift =
          KcCurve.weatherShift(
              et.u2MPerS(), et.relativeMin(normal.tmaxC()), species.matureHeightM());
      basal[day] = curve.basalOnDay(day, shift, settings.basalDifference().value());
    }
  }

  private void size(int at, PlantAtAge plant) {
    soilM2[at] = plant.soilM2();
    rootDepthM[at] = plant.rootDepthM();
    perSoil[at] = plant.densityRatio() * plant.groundM2() / plant.soilM2();
    shade[at] = Math.min(1, plant.crownM2() / plant.soilM2());
    heightFactor[at] = KcCurve.heightFactor(plant.heightM());
    wetted[at] = plant.wettedM2() / plant.soilM2();
    exposedDrip[at] = Math.max(LEAST_EXPOSED, plant.exposedM2() / plant.soilM2());
    exposedRain[at] = Math.max(LEAST_EXPOSED, 1 - shade[at]);
  }

  private void ball(int at, PlantAtAge plant, double rootRadiusM) {
    double roots = ball.rootShare(rootRadiusM, plant.rootDepthM());
    if (roots > 0) {
      ballRoots[at] = roots;
      double depth = Math.min(ball.depthM(), plant.rootDepthM());
      double volume = ball.areaM2() * depth / (plant.soilM2() * plant.rootDepthM());
      nativeShare[at] = 1 - volume;
      ballMm[at] = volume * plant.rootDepthM() * ball.availableShare() * 1000;
      ballArea[at] = ball.areaM2() / plant.soilM2();
    }
  }

  /**
   * Hands the ball of a month of the series to a balance; nothing where the plant has none left.
   */
  void layers(int slot, DualBalance balance) {
    balance.ball(
        ballMm[slot],
        nativeShare[slot],
        ballRoots[slot],
        ballArea[slot],
        ball.exchange(),
        ball.compensation());
  }

  /** The plant's soil with its stores full. */
  public DualBalance fullSoil() {
    return new DualBalance(
        soil.readilyEvaporableM() * 1000,
        WettedSurface.totalEvaporableMm(
            soil.fieldCapacity(), soil.wiltingPoint(), evaporationDepthM),
        soil.totalAvailableM(1) * 1000,
        tableDepletion,
        true,
        mulchReduction);
  }

  /** Basal crop coefficient of a mature stand on a day of the year, 1 to 365. */
  public double basal(int dayOfYear) {
    return basal[dayOfYear];
  }

  /** Area of the root zone in a month of the series, m2. */
  public double soilM2(int slot) {
    return soilM2[slot];
  }

  /** Depth of the root zone in a month of the series, metres. */
  public double rootDepthM(int slot) {
    return rootDepthM[slot];
  }

  /** What turns the coefficient of a stand into one over the root zone. */
  public double perSoil(int slot) {
    return perSoil[slot];
  }

  /** Share of the root zone that lies under the crown. */
  public double shade(int slot) {
    return shade[slot];
  }

  /** Factor of the plant's height in FAO-56 equation 72. */
  public double heightFactor(int slot) {
    return heightFactor[slot];
  }

  /** Share of the root zone that irrigation wets. */
  public double wetted(int slot) {
    return wetted[slot];
  }

  /** Share of the root zone that is wet and exposed after irrigation. */
  public double exposedDrip(int slot) {
    return exposedDrip[slot];
  }

  /** Share of the root zone that is wet and exposed after rain. */
  public double exposedRain(int slot) {
    return exposedRain[slot];
  }
}
