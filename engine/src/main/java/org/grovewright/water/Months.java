package org.grovewright.water;

import java.time.Month;

/** Lengths of the months. */
final class Months {
  private static final double[] DAYS = new double[13];

  static {
    for (int month = 1; month <= 12; month++) {
      DAYS[month] = Month.of(month).length(false);
    }
    DAYS[2] = 28.25;
  }

  private Months() {}

  /** Mean length of a month, 1 to 12, in days. */
  static double meanDays(int month) {
    return DAYS[month];
  }
}
