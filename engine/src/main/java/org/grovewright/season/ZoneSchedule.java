package org.grovewright.season;

import java.util.Arrays;
import java.util.List;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.water.DailyClimate;

/**
 * Minutes and days of one zone by month, as the replay needs them. A month without minutes is off;
 * the count of days since the last watering goes on through it.
 */
final class ZoneSchedule {
  /** More days than any gap: the first day of a year waters. */
  static final int LONG_AGO = 1000;

  private final int[] minutes;
  private final Rhythm[] rhythms;
  private final int[] gaps;
  private final int[] days;

  /**
   * A schedule.
   *
   * @param minutes minutes on a watering day, by month from January
   * @param rhythms the days, by month; off where there are no minutes
   */
  ZoneSchedule(int[] minutes, Rhythm[] rhythms) {
    this.minutes = minutes.clone();
    this.rhythms = rhythms.clone();
    gaps = new int[rhythms.length];
    days = new int[rhythms.length];
    for (int month = 0; month < gaps.length; month++) {
      // Where the calendar says the days, nothing is counted.
      gaps[month] = rhythms[month].byCalendar() ? 1 : Math.max(1, rhythms[month].everyDays());
      days[month] = rhythms[month].days().bits();
    }
  }

  /** The same minutes on the same days all year. */
  static ZoneSchedule constant(int minutes, Rhythm rhythm) {
    int[] all = new int[12];
    Rhythm[] rhythms = new Rhythm[12];
    Arrays.fill(all, minutes);
    Arrays.fill(rhythms, rhythm);
    return new ZoneSchedule(all, rhythms);
  }

  /**
   * Minutes to run on a day.
   *
   * @param month month of the day, from 0
   * @param calendar the day as {@link DailyClimate#calendarBits}
   * @param since days since the last watering
   */
  int minutes(int month, int calendar, int since) {
    return since >= gaps[month] && (days[month] & calendar) != 0 ? minutes[month] : 0;
  }

  /** The same with a share of the minutes, cut to whole ones. */
  ZoneSchedule times(double share) {
    int[] less = new int[minutes.length];
    for (int month = 0; month < less.length; month++) {
      less[month] = (int) Math.floor(minutes[month] * share + 1e-9);
    }
    return new ZoneSchedule(less, rhythms);
  }

  /**
   * What it draws.
   *
   * @param m3PerMinute flow of the zone, m3 a minute
   */
  WeekDraw.Load load(double m3PerMinute) {
    double[] m3 = new double[minutes.length];
    Rhythm[] on = rhythms.clone();
    for (int month = 0; month < m3.length; month++) {
      m3[month] = minutes[month] * m3PerMinute;
      on[month] = on[month].off() ? Rhythm.every(1, 0) : on[month];
    }
    return new WeekDraw.Load(m3, on);
  }

  /** Minutes run in a mean year. */
  double minutesPerYear(DailyClimate weather, int[] monthOf, List<WeatherYears.Span> spans) {
    long sum = 0;
    for (WeatherYears.Span span : spans) {
      int since = LONG_AGO;
      for (int day = span.from(); day < span.until(); day++) {
        since++;
        int run = minutes(monthOf[weather.slot(day)], weather.calendarBits(day), since);
        if (run > 0) {
          sum += run;
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
