package org.grovewright.storage;

import java.time.LocalDate;
import java.time.YearMonth;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.DualBalance;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.PlantSoil;
import org.grovewright.water.RefillRule;
import org.grovewright.water.WaterNeeds;

/**
 * What one plant asks of its zone on a day on which the timer would run: whether the watering can
 * be done without, and how long it takes until its root zone is full.
 */
final class PlantDemand {
  private final DailyClimate weather;
  private final PlantSeries series;
  private final PlantSoil soil;
  private final PlantSoil trial;
  private final PlantSoil watered;
  private final PlantSoil ahead;
  private final double usableM3PerMinute;
  private final double worthFilling;
  private final boolean[] stands;
  private int stressedDays;

  /**
   * A plant, moist as after watering in.
   *
   * @param year year of the plan, which gives its size
   * @param weather the days
   * @param rainless the same days without their rain: what the owner counts on for days to come
   * @param usableM3PerMinute what reaches its roots to stay while the zone runs, m3 a minute
   * @param worthFilling share of its readily available water that must be missing for a watering to
   *     be worth it
   */
  PlantDemand(
      Grove grove,
      Planting planting,
      int year,
      DailyClimate weather,
      DailyClimate rainless,
      PlantSeries series,
      double usableM3PerMinute,
      double worthFilling) {
    this.weather = weather;
    this.series = series;
    this.usableM3PerMinute = usableM3PerMinute;
    this.worthFilling = worthFilling;
    soil = new PlantSoil(weather, series);
    trial = new PlantSoil(weather, series);
    watered = new PlantSoil(weather, series);
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
   * What it asks for.
   *
   * @param wanted whether it would be too dry before the zone's next turn without the watering
   * @param minutes how long the zone runs until its root zone is full by the evening
   */
  record Ask(boolean wanted, double minutes) {}

  /**
   * What it asks for on a day, when the rain of that day is known and no more is counted on. A
   * watering can be done without where the next one, which is no longer than the card says, finds a
   * soil that it can fill: a soil that is left to dry to the limit stays near it, for the card has
   * no more than the use of the days between two turns. No minutes are asked for water that would
   * run through: a root ball that the day's rain has filled holds no more, though it misses by the
   * evening what the plant draws from it.
   *
   * @param day day of the weather, counted from 0
   * @param until the day of the next turn
   */
  Ask ask(int day, int until) {
    if (!stands(day)) {
      return new Ask(false, 0);
    }
    trial.takeOver(soil);
    trial.day(day, 0);
    DualBalance today = trial.balance();
    // The day's own use is drawn while the zone runs, so there is room for it as well. A root ball
    // may be drier than the whole of the root zone.
    double missing = Math.max(today.rootMissingMm(), today.uptakeMissingMm());
    double minutes = missing / 1000 * series.soilM2(weather.slot(day)) / usableM3PerMinute;
    boolean wanted = isTooDry(trial);
    ahead.takeOver(trial);
    for (int next = day + 1; !wanted && next < until && next < weather.days(); next++) {
      ahead.day(next, 0);
      wanted = isTooDry(ahead);
    }
    return new Ask(wanted, stays(day, missing) ? minutes : 0);
  }

  /**
   * Whether any of a watering of the day is in the soil by its evening, after the trial of none.
   */
  private boolean stays(int day, double mm) {
    watered.takeOver(soil);
    watered.day(day, mm);
    return watered.balance().uptakeMissingMm() < trial.balance().uptakeMissingMm() - 1e-9;
  }

  private boolean isTooDry(PlantSoil some) {
    DualBalance balance = some.balance();
    return some.stressed()
        || RefillRule.isWorthIt(
            balance.uptakeMissingMm(), balance.readilyAvailableMm(), worthFilling);
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
