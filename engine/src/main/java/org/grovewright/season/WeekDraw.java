package org.grovewright.season;

import java.util.List;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.model.WateringDays;

/** The most water that a timer draws in any seven days in a row, at the turn of a month too. */
final class WeekDraw {
  private static final int WEEK = 7;
  private static final int MONTHS = 12;
  private static final int[] SHORTEST = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  private static final int LEAP_FEBRUARY = 29;

  private WeekDraw() {}

  /**
   * A zone, or zones that water on the same days.
   *
   * @param m3 water of a watering day by month from January; 0 where it is off
   * @param rhythms its days by month
   */
  @SuppressWarnings("ArrayRecordComponent") // read in the inner loop of the search
  record Load(double[] m3, Rhythm[] rhythms) {
    /** The same with a share of the water. */
    Load times(double share) {
      double[] less = m3.clone();
      for (int month = 0; month < less.length; month++) {
        less[month] *= share;
      }
      return new Load(less, rhythms);
    }
  }

  /** The most water of any seven days, m3, whenever the counted days of each load begin. */
  static double most(List<Load> loads) {
    double most = 0;
    for (int month = 0; month < MONTHS; month++) {
      // The last week of a month begins on an odd or an even date; a day earlier it is the other.
      for (int before = 1; before <= WEEK + 1; before++) {
        most = Math.max(most, of(loads, month, before, SHORTEST[month]));
        if (month == 1) {
          most = Math.max(most, of(loads, month, before, LEAP_FEBRUARY));
        }
      }
    }
    return most;
  }

  /** Seven days that begin so many days before the end of a month from 0. */
  private static double of(List<Load> loads, int month, int before, int length) {
    double counted = 0;
    boolean calendar = false;
    for (Load load : loads) {
      boolean byCalendar =
          load.rhythms()[month].byCalendar() || load.rhythms()[(month + 1) % MONTHS].byCalendar();
      calendar |= byCalendar;
      counted += byCalendar ? 0 : counted(load, month, Math.min(WEEK, before));
    }
    if (!calendar) {
      return counted;
    }
    double most = 0;
    for (int weekday = 0; weekday < WEEK; weekday++) {
      double sum = 0;
      for (int day = 0; day < WEEK; day++) {
        boolean next = day >= before;
        int date = next ? day - before + 1 : length - before + day + 1;
        int bits = WateringDays.bitsOf((weekday + day) % WEEK, date);
        int of = next ? (month + 1) % MONTHS : month;
        for (Load load : loads) {
          Rhythm rhythm = load.rhythms()[of];
          sum += rhythm.byCalendar() && (rhythm.days().bits() & bits) != 0 ? load.m3()[of] : 0;
        }
      }
      most = Math.max(most, sum);
    }
    return counted + most;
  }

  /** The most of one load whose days are counted on from the last watering. */
  private static double counted(Load load, int month, int before) {
    int next = (month + 1) % MONTHS;
    double m3 = load.m3()[month];
    double m3Next = load.m3()[next];
    int gap = load.rhythms()[month].everyDays();
    int gapNext = load.rhythms()[next].everyDays();
    double most = 0;
    // Days from the last watering of the month to its end; long ago where it has none.
    int choices = m3 > 0 ? gap : 1;
    for (int choice = 0; choice < choices; choice++) {
      int last = m3 > 0 ? choice : ZoneSchedule.LONG_AGO;
      int times = last < before ? (before - 1 - last) / gap + 1 : 0;
      int first = Math.max(0, gapNext - last - 1);
      int left = WEEK - before;
      int timesNext = m3Next > 0 && first < left ? (left - 1 - first) / gapNext + 1 : 0;
      most = Math.max(most, times * m3 + timesNext * m3Next);
    }
    return most;
  }
}
