package org.grovewright.model;

/**
 * Choices of the owner that change how the plan is made or shown, not what the land is.
 *
 * @param units units of the faces
 * @param friction formula of pipe friction
 * @param ground soil mix, mulch, fertiliser and holes
 */
public record Preferences(Units units, Friction friction, GroundChoices ground) {
  /** Preferences that leave the ground to the catalogue's usual choices. */
  public Preferences(Units units, Friction friction) {
    this(units, friction, GroundChoices.NONE);
  }

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
