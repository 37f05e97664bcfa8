package org.grovewright.season;

import java.util.function.DoubleUnaryOperator;

/**
 * What so many cases in so many years say of any other year, the years taken as independent draws
 * from the same weather.
 *
 * <p>The likeliest chance is the share of the years. The true one may be another, since the years
 * are few: {@link #low} and {@link #high} hold it nine times of ten, by the exact method of Clopper
 * and Pearson (1934), Biometrika 26, which asks for which chances the count would be a rare one.
 *
 * @param times years in which it happened
 * @param years years looked at, at least one
 */
public record Chance(int times, int years) {
  /** Share of such bounds that hold the true chance. */
  public static final double LEVEL = 0.9;

  private static final int HALVINGS = 60;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if there are no years or more cases than years
   */
  public Chance {
    if (years < 1 || times < 0 || times > years) {
      throw new IllegalArgumentException(times + " of " + years + " years");
    }
  }

  /** The likeliest chance in a year. */
  public double share() {
    return (double) times / years;
  }

  /** Lower bound of the chance in a year. */
  public double low() {
    return low(LEVEL);
  }

  /** Upper bound of the chance in a year. */
  public double high() {
    return high(LEVEL);
  }

  /** Chance that it happens at least once in so many years, at a chance in each. */
  public static double atLeastOnce(double inYear, int among) {
    return 1 - Math.pow(1 - inYear, among);
  }

  /** The least chance at which so many cases or more are no rarer than the level allows. */
  double low(double level) {
    return times == 0 ? 0 : root(p -> 1 - atMost(times - 1, p) - (1 - level) / 2);
  }

  /** The greatest chance at which so many cases or fewer are no rarer than the level allows. */
  double high(double level) {
    return times == years ? 1 : root(p -> (1 - level) / 2 - atMost(times, p));
  }

  /** Where a rising function of the chance passes zero. */
  private static double root(DoubleUnaryOperator rising) {
    double low = 0;
    double high = 1;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (rising.applyAsDouble(middle) < 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /**
   * Probability of at most so many cases in the years at a chance in each, strictly inside 0..1.
   */
  private double atMost(int most, double p) {
    double term = years * Math.log1p(-p);
    double sum = Math.exp(term);
    for (int k = 1; k <= most; k++) {
      term += Math.log((years - k + 1.0) / k) + Math.log(p) - Math.log1p(-p);
      sum += Math.exp(term);
    }
    return sum;
  }
}
