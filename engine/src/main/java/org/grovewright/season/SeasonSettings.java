package org.grovewright.season;

import org.grovewright.catalogue.Catalogue;

/**
 * What is asked of a card.
 *
 * @param planYear year of the plan whose plants are watered, from 1
 * @param weatherYears years of weather, 0 for all there are
 * @param steps how often a year the owner will turn the timer's percentage: 1, 2, 4, 6 or 12
 * @param keptShare share of the years in which every plant is to stay above its limit
 */
public record SeasonSettings(int planYear, int weatherYears, int steps, double keptShare) {
  /** Steps that divide the year into seasons. */
  private static final int[][] ALLOWED_STEPS = {{1, 0}, {2, 9}, {4, 11}, {6, 0}, {12, 0}};

  /**
   * Checks what is asked.
   *
   * @throws IllegalArgumentException if a number is out of its range
   */
  public SeasonSettings {
    if (planYear < 1 || weatherYears < 0 || !(keptShare >= 0 && keptShare <= 1)) {
      throw new IllegalArgumentException("plan year, weather years or share out of range");
    }
    firstMonth(steps);
  }

  /** A card for a year of the plan that is changed monthly and kept as the catalogue says. */
  public static SeasonSettings usual(int planYear, Catalogue catalogue) {
    return new SeasonSettings(planYear, 0, 12, catalogue.constant("season.kept-share").value());
  }

  /** Most of so many years in which a plant may pass its limit. */
  int mostFailures(int years) {
    return failures(1 - keptShare, years);
  }

  static int failures(double share, int years) {
    return (int) Math.floor(share * years + 1e-9);
  }

  /** The months, from 0, of each season step. */
  int[][] months() {
    int first = firstMonth(steps);
    int length = 12 / steps;
    int[][] months = new int[steps][length];
    for (int i = 0; i < 12; i++) {
      months[i / length][i % length] = (first + i) % 12;
    }
    return months;
  }

  private static int firstMonth(int steps) {
    for (int[] allowed : ALLOWED_STEPS) {
      if (allowed[0] == steps) {
        return allowed[1];
      }
    }
    throw new IllegalArgumentException("season steps must be 1, 2, 4, 6 or 12, got " + steps);
  }
}
