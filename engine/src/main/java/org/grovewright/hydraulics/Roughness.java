package org.grovewright.hydraulics;

/**
 * How rough a pipe's wall is, in the terms of one friction formula.
 *
 * @param formula the formula the value belongs to
 * @param value the C of Hazen and Williams (dimensionless), or the roughness height in metres
 */
public record Roughness(FrictionFormula formula, double value) {
  /** Roughness by the C of Hazen and Williams; smooth plastic has about 140 to 150. */
  public static Roughness hazenWilliams(double c) {
    return new Roughness(FrictionFormula.HAZEN_WILLIAMS, c);
  }

  /** Roughness by the height of the wall's unevenness, in metres; 0 is a smooth wall. */
  public static Roughness darcyWeisbach(double epsilonM) {
    return new Roughness(FrictionFormula.DARCY_WEISBACH, epsilonM);
  }
}
