package org.grovewright.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.grovewright.model.WateringDays;

/**
 * How something comes back, in the terms of a recurrence rule of RFC 5545, section 3.3.10.
 *
 * @param frequency unit of the interval
 * @param interval units from one time to the next, at least 1
 * @param months months in which it falls due, 1 to 12; empty means all
 * @param days days of the calendar on which it falls; any where the interval says
 * @param until last day on which it can fall due
 */
public record Recurrence(
    Frequency frequency,
    int interval,
    SortedSet<Integer> months,
    WateringDays days,
    LocalDate until) {
  /** Copies the months. */
  public Recurrence {
    months = Collections.unmodifiableSortedSet(new TreeSet<>(months));
  }

  /** What comes back after an interval. */
  public Recurrence(Frequency frequency, int interval, SortedSet<Integer> months, LocalDate until) {
    this(frequency, interval, months, WateringDays.ANY, until);
  }

  /**
   * What falls on certain days of the week, or on odd or even dates: every day that months and days
   * let through, which no reader of a calendar can take in two ways.
   */
  public static Recurrence on(WateringDays days, SortedSet<Integer> months, LocalDate until) {
    return new Recurrence(Frequency.DAILY, 1, months, days, until);
  }

  /** Units of the interval. */
  public enum Frequency {
    DAILY,
    WEEKLY,
    MONTHLY,
    YEARLY
  }

  /** All days from a first day on, the first included if its month is among the months. */
  public List<LocalDate> dates(LocalDate first) {
    List<LocalDate> dates = new ArrayList<>();
    if (!days.any()) {
      for (LocalDate date = first; !date.isAfter(until); date = date.plusDays(1)) {
        if (days.allows(date) && (months.isEmpty() || months.contains(date.getMonthValue()))) {
          dates.add(date);
        }
      }
      return dates;
    }
    for (int k = 0; ; k++) {
      long step = (long) k * interval;
      LocalDate date =
          switch (frequency) {
            case DAILY -> first.plusDays(step);
            case WEEKLY -> first.plusWeeks(step);
            case MONTHLY -> first.plusMonths(step);
            case YEARLY -> first.plusYears(step);
          };
      if (date.isAfter(until)) {
        return dates;
      }
      // A month without such a day is left out, as the standard has it.
      boolean whole =
          frequency == Frequency.DAILY
              || frequency == Frequency.WEEKLY
              || date.getDayOfMonth() == first.getDayOfMonth();
      if (whole && (months.isEmpty() || months.contains(date.getMonthValue()))) {
        dates.add(date);
      }
    }
  }
}
