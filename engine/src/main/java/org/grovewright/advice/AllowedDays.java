package org.grovewright.advice;

import java.time.LocalDate;
import java.util.Optional;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.WateringDays;

/** The days on which a rule lets water run, counted as the days of the advice are. */
final class AllowedDays {
  private final WateringDays days;
  private final LocalDate first;
  private final int usual;

  /**
   * The allowed days of a zone.
   *
   * @param first day 0
   * @param usual days to the timer's next usual turn, where any day is allowed
   */
  AllowedDays(WateringDays days, LocalDate first, int usual) {
    this.days = days;
    this.first = first;
    this.usual = usual;
  }

  /** Whether a rule names the days. */
  boolean ruled() {
    return !days.any();
  }

  /** Whether water may run on a day. */
  boolean may(int day) {
    return days.allows(first.plusDays(day));
  }

  /** Days from a day until the next on which the plants can be given water. */
  int untilNext(int day) {
    if (!ruled()) {
      return usual;
    }
    int ahead = 1;
    while (!may(day + ahead)) {
      ahead++;
    }
    return ahead;
  }

  /** A remark where water may not run on a day. */
  Optional<Finding> remark(int day) {
    return may(day)
        ? Optional.empty()
        : Optional.of(
            Finding.of(
                "advice.not-allowed-today",
                Severity.NOTE,
                "",
                "Water may not run today. The next day on which it may is "
                    + first.plusDays(day + untilNext(day))
                    + "; what looks too dry before then needs a can of water."));
  }
}
