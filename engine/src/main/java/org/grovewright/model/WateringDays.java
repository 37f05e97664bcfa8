package org.grovewright.model;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/**
 * Days on which watering is allowed or on which a timer waters: some days of the week, or the odd
 * or even days of the month, or any day.
 *
 * @param weekdays days of the week, Monday first; all seven unless the rule goes by them
 * @param dates dates of the month; all unless the rule goes by them
 */
public record WateringDays(Set<DayOfWeek> weekdays, Dates dates) {
  /** Every day. */
  public static final WateringDays ANY =
      new WateringDays(EnumSet.allOf(DayOfWeek.class), Dates.ALL);

  private static final int WEEK = 7;
  private static final int ODD_BIT = 1 << WEEK;
  private static final int EVEN_BIT = 1 << WEEK + 1;
  private static final int ALL_BITS = (1 << WEEK + 2) - 1;

  /** Dates of the month. */
  public enum Dates {
    ALL,
    ODD,
    EVEN
  }

  /**
   * Copies the days.
   *
   * @throws IllegalArgumentException if no day is left, or the rule goes by the week and by dates
   */
  public WateringDays {
    if (weekdays.isEmpty() || weekdays.size() < WEEK && dates != Dates.ALL) {
      throw new IllegalArgumentException("give days of the week, or odd or even dates");
    }
    weekdays = Collections.unmodifiableSet(EnumSet.copyOf(weekdays));
  }

  /** Some days of the week. */
  public static WateringDays on(Set<DayOfWeek> weekdays) {
    return new WateringDays(weekdays, Dates.ALL);
  }

  /** The odd or the even days of the month. */
  public static WateringDays on(Dates dates) {
    return new WateringDays(EnumSet.allOf(DayOfWeek.class), dates);
  }

  /** Whether every day is among them. */
  public boolean any() {
    return dates == Dates.ALL && weekdays.size() == WEEK;
  }

  /** Whether they go by the day of the week. */
  public boolean byWeek() {
    return weekdays.size() < WEEK;
  }

  /** Whether a day is among them. */
  public boolean allows(LocalDate date) {
    return (bits() & bitsOf(date)) != 0;
  }

  /** Share of all days in the long run, of odd or even dates taken as one in two. */
  public double share() {
    return dates == Dates.ALL ? weekdays.size() / (double) WEEK : 0.5;
  }

  /** The days as bits, of which {@link #bitsOf} has one for each day among them. */
  public int bits() {
    if (any()) {
      return ALL_BITS;
    }
    return switch (dates) {
      case ODD -> ODD_BIT;
      case EVEN -> EVEN_BIT;
      case ALL -> weekdays.stream().mapToInt(day -> 1 << day.ordinal()).sum();
    };
  }

  /** A date as bits: its day of the week, and whether it is odd or even. */
  public static int bitsOf(LocalDate date) {
    return bitsOf(date.getDayOfWeek().ordinal(), date.getDayOfMonth());
  }

  /** A day of the week, from 0 for Monday, and of the month as bits. */
  public static int bitsOf(int weekday, int dayOfMonth) {
    return 1 << weekday | (dayOfMonth % 2 == 1 ? ODD_BIT : EVEN_BIT);
  }
}
