package org.grovewright.hydraulics;

/**
 * Head lost in a filter, meter, injector or fitting, by its published curve: {@code h = a Q^n + m
 * Q^2}, the same in both directions.
 *
 * @param a coefficient for metres and m3/s, not negative
 * @param n exponent, at least 1
 * @param m coefficient of the squared flow for metres and m3/s, not negative
 */
public record LossCurve(double a, double n, double m) {
  /** Loss by a power law through the origin. */
  public static LossCurve power(double a, double n) {
    return new LossCurve(a, n, 0);
  }

  /** The power law that loses {@code headM} at {@code flow}. */
  public static LossCurve through(double flow, double headM, double n) {
    return new LossCurve(headM / Math.pow(flow, n), n, 0);
  }

  /** Loss by a minor-loss coefficient K on the velocity head in a bore: {@code h = K v^2 / 2g}. */
  public static LossCurve minor(double k, double insideDiameterM) {
    double area = Friction.area(insideDiameterM);
    return new LossCurve(0, 2, k / (2 * Water.STANDARD_GRAVITY * area * area));
  }

  /** Head lost at a flow, in m; negative for a negative flow. */
  public double headAt(double flow) {
    double size = Math.abs(flow);
    return Math.signum(flow) * (a * Math.pow(size, n) + m * size * size);
  }
}
