package org.grovewright.season;

import java.util.List;
import org.grovewright.water.DailyClimate;

/**
 * Minutes and days of one zone by month, as the replay needs them. A month without minutes is off;
 * the count of days since the last watering goes on through it.
 *
 * @param minutes minutes on a watering day, by month from January
 * @param gaps days from one watering to the next, by month
 */
record ZoneSchedule(int[] minutes, int[] gaps) {
  /** More days than any gap: the first day of a year waters. */
  static final int LONG_AGO = 1000;

  /** The same minutes on every so-many-th day all year. */
  static ZoneSchedule constant(int minutes, int gap) {
    int[] all = new int[12];
    int[] gaps = new int[12];
    java.util.Arrays.fill(all, minutes);
    java.util.Arrays.fill(gaps, gap);
    return new ZoneSchedule(all, gaps);
  }

  /** Minutes run in a mean year. */
  double minutesPerYear(DailyClimate weather, int[] monthOf, List<WeatherYears.Span> spans) {
    long sum = 0;
    for (WeatherYears.Span span : spans) {
      int since = LONG_AGO;
      for (int day = span.from(); day < span.until(); day++) {
        int month = monthOf[weather.slot(day)];
        since++;
        if (minutes[month] > 0 && since >= gaps[month]) {
          sum += minutes[month];
          since = 0;
        }
      }
    }
    return (double) sum / spans.size();
  }

  /** Month of the year, from 0, of each month of a series. */
  static int[] months(DailyClimate weather) {
    int[] months = new int[weather.months()];
    for (int slot = 0; slot < months.length; slot++) {
      months[slot] = weather.month(slot).getMonthValue() - 1;
    }
    return months;
  }
}
