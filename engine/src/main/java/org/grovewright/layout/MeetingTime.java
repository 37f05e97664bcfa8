package org.grovewright.layout;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** When growing crowns fill a gap. */
final class MeetingTime {
  private static final double STEP_YEARS = 1e-6;

  private MeetingTime() {}

  /**
   * The time at which a width that never shrinks first reaches a limit, by bisection.
   *
   * @param width width by years into the plan, not decreasing
   * @param limit the limit, in the unit of the width
   * @param horizonYears time at which the search ends
   * @return years into the plan, to a millionth; 0 if reached at the start, empty if not reached by
   *     the horizon
   */
  static OptionalDouble of(DoubleUnaryOperator width, double limit, double horizonYears) {
    if (width.applyAsDouble(0) >= limit) {
      return OptionalDouble.of(0);
    }
    if (width.applyAsDouble(horizonYears) < limit) {
      return OptionalDouble.empty();
    }
    double before = 0;
    double after = horizonYears;
    while (after - before > STEP_YEARS) {
      double middle = (before + after) / 2;
      if (width.applyAsDouble(middle) >= limit) {
        after = middle;
      } else {
        before = middle;
      }
    }
    return OptionalDouble.of(after);
  }
}
