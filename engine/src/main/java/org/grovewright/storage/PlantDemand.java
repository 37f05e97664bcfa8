package org.grovewright.storage;

import java.time.LocalDate;
import java.time.YearMonth;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.DualBalance;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.PlantSoil;
import org.grovewright.water.WaterNeeds;

/**
 * What one plant asks of its zone on a day: enough to have its root zone full by the evening where
 * it would begin to suffer before the zone's next turn, and nothing where the rain will do until
 * then.
 */
final class PlantDemand {
  /** Share of the readily available water that must be missing; common practice, no source. */
  private static final double WORTH_FILLING = 0.25;

  private final DailyClimate weather;
  private final PlantSeries series;
  private final PlantSoil soil;
  private final PlantSoil trial;
  private final PlantSoil ahead;
  private final double usableM3PerMinute;
  private final boolean[] stands;
  private int stressedDays;

  /**
   * A plant, moist as after watering in.
   *
   * @param year year of the plan, which gives its size
   * @param weather the days
   * @param rainless the same days without their rain: what the owner counts on for days to come
   * @param usableM3PerMinute what reaches its roots to stay while the zone runs, m3 a minute
   */
  PlantDemand(
      Grove grove,
      Planting planting,
      int year,
      DailyClimate weather,
      DailyClimate rainless,
      PlantSeries series,
      double usableM3PerMinute) {
    this.weather = weather;
    this.series = series;
    this.usableM3PerMinute = usableM3PerMinute;
    soil = new PlantSoil(weather, series);
    trial = new PlantSoil(weather, series);
    ahead = new PlantSoil(rainless, series);
    YearMonth planted = YearMonth.from(planting.plantedOn());
    stands = new boolean[13];
    LocalDate start = grove.start();
    for (int month = 1; month <= 12; month++) {
      YearMonth now = YearMonth.of(WaterNeeds.calendarYear(start, year, month), month);
      stands[month] = !now.isBefore(planted);
    }
  }

  /** Goes back to the first day, moist as after watering in. */
  void beginAnew() {
    soil.fill();
    stressedDays = 0;
  }

  private boolean stands(int day) {
    return stands[weather.month(weather.slot(day)).getMonthValue()];
  }

  /**
   * Minutes it asks for on a day, when the rain of that day is known and no more is counted on.
   *
   * @param day day of the weather, counted from 0
   * @param until the day of the next turn
   */
  double minutes(int day, int until) {
    if (!stands(day)) {
      return 0;
    }
    double before = soil.balance().uptakeMissingMm();
    trial.takeOver(soil);
    trial.day(day, 0);
    DualBalance today = trial.balance();
    // A root ball may be drier than the whole of the root zone.
    double start = Math.max(today.rootStartMm(), before - trial.rainMm());
    if (start <= WORTH_FILLING * today.readilyAvailableMm()) {
      return 0;
    }
    // The day's own use is drawn while the zone runs, so there is room for it as well.
    double missing = Math.max(today.rootMissingMm(), today.uptakeMissingMm());
    boolean dry = isDry(today);
    ahead.takeOver(trial);
    for (int next = day + 1; !dry && next < until && next < weather.days(); next++) {
      ahead.day(next, 0);
      dry = isDry(ahead.balance());
    }
    return dry ? missing / 1000 * series.soilM2(weather.slot(day)) / usableM3PerMinute : 0;
  }

  private static boolean isDry(DualBalance balance) {
    return balance.uptakeMissingMm() > balance.readilyAvailableMm();
  }

  /** Moves on by a day on which the zone ran so many minutes. */
  void water(int day, int minutes) {
    if (!stands(day)) {
      soil.fill();
      return;
    }
    soil.day(day, minutes * usableM3PerMinute * 1000 / series.soilM2(weather.slot(day)));
    stressedDays += soil.stressed() ? 1 : 0;
  }

  /** Days until now on which it could not take up all it wanted. */
  int stressedDays() {
    return stressedDays;
  }
}
