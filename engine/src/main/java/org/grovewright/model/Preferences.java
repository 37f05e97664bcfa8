package org.grovewright.model;

/**
 * Choices of the owner that change how the plan is made or shown, not what the land is.
 *
 * @param units units of the faces
 * @param friction formula of pipe friction
 */
public record Preferences(Units units, Friction friction) {
  /** Systems of units. */
  public enum Units {
    METRIC,
    US
  }

  /** Formulas of pipe friction. */
  public enum Friction {
    HAZEN_WILLIAMS,
    DARCY_WEISBACH
  }
}
