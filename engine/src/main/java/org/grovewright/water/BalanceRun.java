package org.grovewright.water;

/**
 * Runs the water balance of one plant along a daily weather series.
 *
 * <p>The root zone grows with the plant: deeper and wider soil joins it at field capacity in depth
 * and as dry as the rest in width.
 */
public final class BalanceRun {
  /** Rain above this wets the whole surface; FAO-56 chapter 7: 3 to 4 mm. */
  private static final double WETTING_RAIN_MM = 3;

  private static final double LIMIT = 1.2;

  private BalanceRun() {}

  /** Sees each day of a run after it was moved on. */
  @FunctionalInterface
  public interface Sink {
    /**
     * Called once a day.
     *
     * @param day day of the series, counted from 0
     * @param irrigationMm irrigation as a depth over the root zone, mm
     * @param balance the day's terms
     */
    void day(int day, double irrigationMm, DualBalance balance);
  }

  /** How a plant is watered. */
  public enum Watering {
    /** Not at all. */
    NONE,
    /** As given, by day. */
    GIVEN,
    /** Filled up whenever the readily available water is used up. */
    WHEN_DRY
  }

  /**
   * Runs a plant through the series from full soil.
   *
   * @param irrigationM3 water brought to the plant by day, m3; read only if the watering is given
   * @param sink sees each day, or null
   */
  public static BalanceTotals run(
      DailyClimate weather,
      PlantSeries plant,
      Watering watering,
      double[] irrigationM3,
      Sink sink) {
    DualBalance balance = plant.fullSoil();
    int stressedDays = 0;
    double rainM3 = 0;
    double givenM3 = 0;
    double transpiredM3 = 0;
    double wantedM3 = 0;
    double evaporatedM3 = 0;
    double lostM3 = 0;
    double readily = Double.POSITIVE_INFINITY;
    boolean drip = false;
    for (int day = 0; day < weather.days(); day++) {
      int slot = weather.slot(day);
      double soilM2 = plant.soilM2(slot);
      double irrigation =
          switch (watering) {
            case NONE -> 0;
            case GIVEN -> irrigationM3[day] * 1000 / soilM2;
            case WHEN_DRY -> balance.rootMissingMm() >= readily ? balance.rootMissingMm() : 0;
          };
      double rain = weather.rainMm(day) - weather.runoffMm(day);
      if (irrigation > 0) {
        drip = true;
      } else if (rain > WETTING_RAIN_MM) {
        drip = false;
      }
      double stand = plant.basal(weather.dayOfYear(day));
      double basal = stand * plant.perSoil(slot);
      double shading = stand * plant.shade(slot);
      double greatest =
          Math.max(LIMIT + weather.limitShift(day) * plant.heightFactor(slot), shading + 0.05);
      balance.day(
          weather.et0Mm(day),
          rain,
          irrigation,
          basal,
          shading,
          greatest,
          drip ? plant.wetted(slot) : 1,
          drip ? plant.exposedDrip(slot) : plant.exposedRain(slot),
          plant.rootDepthM(slot));
      readily = balance.readilyAvailableMm();
      double litres = soilM2 / 1000;
      if (balance.stress() < 1 && basal > 0) {
        stressedDays++;
      }
      rainM3 += rain * litres;
      givenM3 += irrigation * litres;
      transpiredM3 += balance.transpirationMm() * litres;
      wantedM3 += basal * weather.et0Mm(day) * litres;
      evaporatedM3 += balance.evaporationMm() * litres;
      lostM3 += balance.percolationMm() * litres;
      if (sink != null) {
        sink.day(day, irrigation, balance);
      }
    }
    return new BalanceTotals(
        weather.days(),
        stressedDays,
        rainM3,
        givenM3,
        transpiredM3,
        wantedM3,
        evaporatedM3,
        lostM3);
  }
}
