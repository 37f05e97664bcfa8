package org.grovewright.hydraulics;

/** Head lost to friction in a full round pipe. */
public final class Friction {
  /** Exponent of the flow in the formula of Hazen and Williams. */
  public static final double HW_EXPONENT = 1.852;

  /**
   * Coefficient of Hazen and Williams for metres and m3/s. The formula is published with 4.727 for
   * feet and cubic feet per second; carrying the foot through it leaves 10.667.
   */
  static final double HW_COEFFICIENT = 4.727 * Math.pow(0.3048, 4.871 - 3 * 1.852);

  /** Speed below which Hazen-Williams is replaced by a smooth odd cubic, in m/s. */
  static final double HW_SMOOTH_SPEED = 1e-4;

  /** Below this Reynolds number flow is taken as laminar. */
  public static final double LAMINAR_REYNOLDS = 2000;

  /** Above this Reynolds number flow is taken as fully turbulent. */
  public static final double TURBULENT_REYNOLDS = 4000;

  /** 2 / ln 10: turns a natural logarithm into the doubled common one of the friction formulas. */
  static final double TWO_OVER_LN_10 = 2 / Math.log(10);

  /** The Reynolds term of Swamee and Jain at the start of turbulent flow. */
  private static final double SJ_TERM_AT_4000 = 5.74 / Math.pow(TURBULENT_REYNOLDS, 0.9);

  private Friction() {}

  /**
   * Head lost by the formula of Hazen and Williams, {@code h = 10.667 L Q^1.852 / (C^1.852
   * D^4.871)}, in metres.
   *
   * @param flow flow in m3/s, not negative
   * @param length pipe length in m
   * @param diameter inside diameter in m
   * @param c the C of the pipe
   */
  public static double hazenWilliamsLoss(double flow, double length, double diameter, double c) {
    return hazenWilliamsResistance(length, diameter, c) * Math.pow(flow, HW_EXPONENT);
  }

  /** The r of {@code h = r Q^1.852}. */
  static double hazenWilliamsResistance(double length, double diameter, double c) {
    return HW_COEFFICIENT * length / (Math.pow(c, HW_EXPONENT) * Math.pow(diameter, 4.871));
  }

  /**
   * Head lost by the formula of Darcy and Weisbach, {@code h = f (L / D) v^2 / 2g}, in metres.
   *
   * @param flow flow in m3/s, not negative
   * @param length pipe length in m
   * @param diameter inside diameter in m
   * @param roughness height of the wall's roughness in m
   * @param viscosity kinematic viscosity in m2/s
   */
  public static double darcyWeisbachLoss(
      double flow, double length, double diameter, double roughness, double viscosity) {
    if (flow == 0) {
      return 0;
    }
    double speed = flow / area(diameter);
    double factor = darcyFactor(speed * diameter / viscosity, roughness / diameter);
    return factor * length / diameter * speed * speed / (2 * Water.STANDARD_GRAVITY);
  }

  /**
   * Darcy's friction factor over laminar, transitional and turbulent flow, without a jump in value
   * or slope.
   *
   * <p>Laminar: {@code 64 / Re} (Hagen-Poiseuille). Turbulent: the explicit formula of Swamee and
   * Jain (1976, from memory), {@code 0.25 / log10(e/3.7 + 5.74 / Re^0.9)^2}. Between Reynolds 2000
   * and 4000: the cubic of Dunlop (1991, from memory), which is the one cubic that meets value and
   * slope of both neighbours.
   *
   * @param reynolds Reynolds number, positive
   * @param relativeRoughness roughness height over inside diameter
   */
  public static double darcyFactor(double reynolds, double relativeRoughness) {
    if (reynolds <= LAMINAR_REYNOLDS) {
      return 64 / reynolds;
    }
    if (reynolds >= TURBULENT_REYNOLDS) {
      double root =
          TWO_OVER_LN_10 * Math.log(relativeRoughness / 3.7 + 5.74 / Math.pow(reynolds, 0.9));
      return 1 / (root * root);
    }
    double[] cubic = new double[4];
    transitionCubic(relativeRoughness, cubic, 0);
    double s = reynolds / LAMINAR_REYNOLDS - 1;
    return cubic[0] + s * (cubic[1] + s * (cubic[2] + s * cubic[3]));
  }

  /**
   * Coefficients of the cubic for transitional flow, in powers of {@code s = Re / 2000 - 1} which
   * runs from 0 to 1.
   */
  static void transitionCubic(double relativeRoughness, double[] into, int at) {
    double startValue = 64 / LAMINAR_REYNOLDS;
    double startSlope = -startValue;
    double y = relativeRoughness / 3.7 + SJ_TERM_AT_4000;
    double root = TWO_OVER_LN_10 * Math.log(y);
    double endValue = 1 / (root * root);
    // d f / d s of Swamee and Jain at Re = 4000, where d s = d Re / 2000
    double endSlope = 0.9 * TWO_OVER_LN_10 * SJ_TERM_AT_4000 * endValue / (y * root);
    double rise = endValue - startValue;
    into[at] = startValue;
    into[at + 1] = startSlope;
    into[at + 2] = 3 * rise - 2 * startSlope - endSlope;
    into[at + 3] = startSlope + endSlope - 2 * rise;
  }

  /** Cross-section of a round bore, in m2. */
  static double area(double diameter) {
    return Math.PI / 4 * diameter * diameter;
  }
}
