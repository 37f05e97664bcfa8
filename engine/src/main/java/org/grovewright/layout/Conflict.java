package org.grovewright.layout;

import java.util.OptionalDouble;
import org.grovewright.finding.Finding;

/**
 * Two things that come too near each other.
 *
 * @param kind in what way
 * @param plantId the plant
 * @param otherId the other plant or the fixed thing; empty text for the boundary
 * @param distanceM the distance there is, metres: between stems, or from the stem to the edge of
 *     the fixed thing or to the boundary
 * @param neededM the distance there should be, metres
 * @param years years into the plan at which it begins; 0 for from planting
 * @param moveM how much further apart they would have to be, metres
 * @param keepSpreadM crown spread to which the plant would have to be kept so that nothing need
 *     move, metres; empty where pruning is no remedy
 * @param keepOtherSpreadM the same for the other plant
 * @param finding the conflict in words, with its advice
 */
public record Conflict(
    Kind kind,
    String plantId,
    String otherId,
    double distanceM,
    double neededM,
    double years,
    double moveM,
    OptionalDouble keepSpreadM,
    OptionalDouble keepOtherSpreadM,
    Finding finding) {
  /** Year of growth in which it begins; 0 is the planting year. */
  public int year() {
    return (int) Math.floor(years);
  }

  /** Ways of being too near. */
  public enum Kind {
    /** Two plants on one spot. */
    SAME_PLACE,
    /** A companion or ground cover in the bare collar round a main plant's trunk. */
    IN_COLLAR,
    /** Crowns of two main plants grow into each other. */
    CROWNS_MEET,
    /** Companions nearer each other than their usual spacing. */
    CROWDED,
    /** A trunk nearer a fixed thing than it should be. */
    TRUNK_NEAR_FIXTURE,
    /** A crown grows into the space a fixed thing should have. */
    CROWN_NEAR_FIXTURE,
    /** A plant stands outside the boundary. */
    OUTSIDE,
    /** A crown grows over the boundary. */
    OVER_BOUNDARY
  }
}
