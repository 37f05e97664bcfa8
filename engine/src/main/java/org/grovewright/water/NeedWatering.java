package org.grovewright.water;

import java.time.LocalDate;
import java.time.YearMonth;
import org.grovewright.model.Grove;

/** Watering by the monthly needs of a plan, whatever the weather of the day. */
public final class NeedWatering {
  private static final double DAY_S = 86_400;

  private NeedWatering() {}

  /**
   * Water brought to a plant by day, m3: the month's mean need, gathered over as many whole days as
   * the plant can go between waterings.
   *
   * @param year the year of the plan whose needs are given in every year of the series, or 0 to go
   *     through the years of the plan with the series and stay with the last
   */
  public static double[] days(Grove grove, PlantNeed need, int year, DailyClimate weather) {
    double[] given = new double[weather.days()];
    YearMonth start = YearMonth.from(grove.start());
    int shift = start.getYear() - weather.date(0).getYear();
    int sinceLast = 0;
    for (int day = 0; day < given.length; day++) {
      LocalDate date = weather.date(day);
      int planYear = year > 0 ? year : planYear(start, YearMonth.from(date).plusYears(shift));
      MonthNeed month = need.at(planYear, date.getMonthValue());
      int every = Math.max(1, (int) (month.longestInterval().value() / DAY_S));
      sinceLast++;
      if (sinceLast >= every) {
        given[day] = month.need().value() * DAY_S * sinceLast;
        sinceLast = 0;
      }
    }
    return given;
  }

  /**
   * The year of the plan in which a month lies, from 1; the first and the last year for months
   * before and after the plan.
   */
  public static int planYear(YearMonth start, YearMonth month) {
    long months = start.until(month, java.time.temporal.ChronoUnit.MONTHS);
    return (int) Math.max(1, Math.min(WaterNeeds.YEARS, Math.floorDiv(months, 12) + 1));
  }
}
