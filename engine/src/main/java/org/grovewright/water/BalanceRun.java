package org.grovewright.water;

/**
 * Runs the water balance of one plant along a daily weather series.
 *
 * <p>The root zone grows with the plant: deeper and wider soil joins it at field capacity in depth
 * and as dry as the rest in width.
 */
public final class BalanceRun {
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
    PlantSoil soil = new PlantSoil(weather, plant);
    DualBalance balance = soil.balance();
    int stressedDays = 0;
    double rainM3 = 0;
    double givenM3 = 0;
    double transpiredM3 = 0;
    double wantedM3 = 0;
    double evaporatedM3 = 0;
    double lostM3 = 0;
    double readily = Double.POSITIVE_INFINITY;
    for (int day = 0; day < weather.days(); day++) {
      double soilM2 = plant.soilM2(weather.slot(day));
      double irrigation =
          switch (watering) {
            case NONE -> 0;
            case GIVEN -> irrigationM3[day] * 1000 / soilM2;
            case WHEN_DRY -> balance.uptakeMissingMm() >= readily ? balance.rootMissingMm() : 0;
          };
      soil.day(day, irrigation);
      readily = balance.readilyAvailableMm();
      double litres = soilM2 / 1000;
      if (soil.stressed()) {
        stressedDays++;
      }
      rainM3 += soil.rainMm() * litres;
      givenM3 += irrigation * litres;
      transpiredM3 += balance.transpirationMm() * litres;
      wantedM3 += soil.basal() * weather.et0Mm(day) * litres;
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
