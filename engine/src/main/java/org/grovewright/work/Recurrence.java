package org.grovewright.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * How something comes back, in the terms of a recurrence rule of RFC 5545, section 3.3.10.
 *
 * @param frequency unit of the interval
 * @param interval units from one time to the next, at least 1
 * @param months months in which it falls due, 1 to 12; empty means all
 * @param until last day on which it can fall due
 */
public record Recurrence(
    Frequency frequency, int interval, SortedSet<Integer> months, LocalDate until) {
  /** Copies the months. */
  public Recurrence {
    months = Collections.unmodifiableSortedSet(new TreeSet<>(months));
  }

  /** Units of the interval. */
  public enum Frequency {
    WEEKLY,
    MONTHLY,
    YEARLY
  }

  /** All days from a first day on, the first included if its month is among the months. */
  public List<LocalDate> dates(LocalDate first) {
    List<LocalDate> dates = new ArrayList<>();
    for (int k = 0; ; k++) {
      long step = (long) k * interval;
      LocalDate date =
          switch (frequency) {
            case WEEKLY -> first.plusWeeks(step);
            case MONTHLY -> first.plusMonths(step);
            case YEARLY -> first.plusYears(step);
          };
      if (date.isAfter(until)) {
        return dates;
      }
      // A month without such a day is left out, as the standard has it.
      boolean whole =
          frequency == Frequency.WEEKLY || date.getDayOfMonth() == first.getDayOfMonth();
      if (whole && (months.isEmpty() || months.contains(date.getMonthValue()))) {
        dates.add(date);
      }
    }
  }
}
