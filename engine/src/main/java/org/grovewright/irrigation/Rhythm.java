package org.grovewright.irrigation;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.Month;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import org.grovewright.model.WateringDays;
import org.grovewright.model.WateringDays.Dates;

/**
 * On which days a timer waters: counted from one watering to the next, or by the calendar where
 * watering is allowed on some days only.
 *
 * @param everyDays days from one watering to the next, the most there are where the calendar says;
 *     0 where nothing is watered
 * @param firstDay day of the count on which it waters, 0 for the first; staggers the zones
 * @param days the days by the calendar; any where they are counted
 */
public record Rhythm(int everyDays, int firstDay, WateringDays days) {
  /** Never. */
  public static final Rhythm OFF = new Rhythm(0, 0, WateringDays.ANY);

  private static final int WEEK = 7;

  /** Every so many days. */
  public static Rhythm every(int days, int firstDay) {
    return new Rhythm(days, firstDay, WateringDays.ANY);
  }

  /** On days of the calendar; every day where all are among them. */
  public static Rhythm on(WateringDays days) {
    return days.any() ? every(1, 0) : new Rhythm(longestGap(days), 0, days);
  }

  /**
   * All rhythms that keep a rule, the rarest first; each entry holds those that are equally rare
   * and evenly spaced.
   *
   * @param longestGap most days from one watering to the next where the rule leaves the choice
   */
  public static List<List<Rhythm>> choices(WateringDays allowed, int longestGap) {
    List<List<Rhythm>> choices = new ArrayList<>();
    if (allowed.any()) {
      for (int gap = longestGap; gap >= 1; gap--) {
        List<Rhythm> shifted = new ArrayList<>();
        for (int first = 0; first < gap; first++) {
          shifted.add(every(gap, first));
        }
        choices.add(shifted);
      }
      return choices;
    }
    if (!allowed.byWeek()) {
      return List.of(List.of(on(allowed)));
    }
    for (int count = 1; count <= allowed.weekdays().size(); count++) {
      choices.add(evenest(allowed, count));
    }
    return choices;
  }

  /** The sets of so many of the allowed days of the week that are spread most evenly. */
  private static List<Rhythm> evenest(WateringDays allowed, int count) {
    List<DayOfWeek> days = List.copyOf(allowed.weekdays());
    List<Rhythm> best = new ArrayList<>();
    int shortest = WEEK + 1;
    for (int chosen = 1; chosen < 1 << days.size(); chosen++) {
      if (Integer.bitCount(chosen) != count) {
        continue;
      }
      EnumSet<DayOfWeek> some = EnumSet.noneOf(DayOfWeek.class);
      for (int i = 0; i < days.size(); i++) {
        if ((chosen >> i & 1) == 1) {
          some.add(days.get(i));
        }
      }
      Rhythm rhythm = on(WateringDays.on(some));
      if (rhythm.everyDays() < shortest) {
        shortest = rhythm.everyDays();
        best.clear();
      }
      if (rhythm.everyDays() == shortest) {
        best.add(rhythm);
      }
    }
    return best;
  }

  private static int longestGap(WateringDays days) {
    if (!days.byWeek()) {
      // From the 29th to the 1st of a month of 30 days; from the 30th to the 2nd of one of 31.
      return days.dates() == Dates.ODD ? 2 : 3;
    }
    int longest = 0;
    for (DayOfWeek from : days.weekdays()) {
      int gap = 1;
      while (!days.weekdays().contains(from.plus(gap))) {
        gap++;
      }
      longest = Math.max(longest, gap);
    }
    return longest;
  }

  /** Whether nothing is watered. */
  public boolean off() {
    return everyDays == 0;
  }

  /** Whether the calendar says the days, rather than a count from one to the next. */
  public boolean byCalendar() {
    return !days.any();
  }

  /**
   * Whether a day is one of watering.
   *
   * @param start day from which the count runs
   */
  public boolean waters(LocalDate date, LocalDate start) {
    if (off()) {
      return false;
    }
    return byCalendar()
        ? days.allows(date)
        : Math.floorMod(ChronoUnit.DAYS.between(start, date), everyDays) == firstDay;
  }

  /**
   * Whether watering is due on a day when it was last done on another, however the timer came to be
   * out of step.
   */
  public boolean isDue(LocalDate date, LocalDate last) {
    if (off()) {
      return false;
    }
    return byCalendar() ? days.allows(date) : ChronoUnit.DAYS.between(last, date) >= everyDays;
  }

  /** Waterings a day in a month from 1 to 12, as a mean. */
  public double perDay(int month) {
    if (off()) {
      return 0;
    }
    if (!byCalendar()) {
      return 1.0 / everyDays;
    }
    if (days.byWeek()) {
      return days.weekdays().size() / (double) WEEK;
    }
    int length = Month.of(month).length(false);
    int odd = (length + 1) / 2;
    return (days.dates() == Dates.ODD ? odd : length - odd) / (double) length;
  }

  /** Days from one watering to the next in a month from 1 to 12, as a mean; infinite when off. */
  public double meanGap(int month) {
    return byCalendar() || off() ? 1 / perDay(month) : everyDays;
  }

  /** Most waterings in so many days in a row, wherever they begin. */
  public int mostIn(int count) {
    if (off() || count <= 0) {
      return 0;
    }
    if (!byCalendar()) {
      return (count - 1) / everyDays + 1;
    }
    if (!days.byWeek()) {
      // The 31st and the 1st are both odd.
      return days.dates() == Dates.ODD ? count / 2 + 1 : (count + 1) / 2;
    }
    int most = 0;
    for (int from = 0; from < WEEK; from++) {
      int times = 0;
      for (int day = from; day < from + count; day++) {
        times += onDay(day) ? 1 : 0;
      }
      most = Math.max(most, times);
    }
    return most;
  }

  /** Whether two ever fall on the same day. */
  boolean meets(Rhythm other) {
    if (byCalendar() || other.byCalendar()) {
      return (days.bits() & other.days.bits()) != 0;
    }
    return Math.floorMod(firstDay - other.firstDay, gcd(everyDays, other.everyDays)) == 0;
  }

  /** Days after which it repeats; odd and even dates count as one day that always comes back. */
  int period() {
    return !byCalendar() ? everyDays : days.byWeek() ? WEEK : 1;
  }

  /** Whether it falls on a day of the period, counted from 0 and from Monday. */
  boolean onDay(int day) {
    if (!byCalendar()) {
      return Math.floorMod(day - firstDay, everyDays) == 0;
    }
    return !days.byWeek()
        || days.weekdays().contains(DayOfWeek.MONDAY.plus(Math.floorMod(day, WEEK)));
  }

  static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }
}
