package org.grovewright.web.views;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import org.grovewright.irrigation.Programme;
import org.grovewright.model.Grove;

/**
 * A month in the years of the plan.
 *
 * @param year year of the plan, from 1
 * @param month month, 1 to 12
 */
record PlanMonth(int year, int month) {
  /** Where a day lies; days before the start and after the years planned fall into the nearest. */
  static PlanMonth of(LocalDate day, Grove grove) {
    long months = ChronoUnit.MONTHS.between(YearMonth.from(grove.start()), YearMonth.from(day));
    int year = (int) Math.floorDiv(months, 12L) + 1;
    return new PlanMonth(Math.max(1, Math.min(Programme.YEARS, year)), day.getMonthValue());
  }

  /** The calendar month that month {@code month} of year {@code year} of the plan falls into. */
  static YearMonth calendar(int year, int month, Grove grove) {
    YearMonth start = YearMonth.from(grove.start());
    YearMonth same = YearMonth.of(start.getYear() + year - 1, month);
    return month < start.getMonthValue() ? same.plusYears(1) : same;
  }
}
