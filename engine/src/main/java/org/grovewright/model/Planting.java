package org.grovewright.model;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One plant.
 *
 * @param id its name in the description, unique
 * @param speciesKey catalogue key of its species
 * @param cultivar its cultivar, if the owner says
 * @param at where it stands
 * @param rowId the row it belongs to, if any
 * @param plantedOn the day it was or will be planted
 * @param containerM3 volume of the container it comes in, m3
 * @param measured its size as last measured by the owner
 * @param keptSpreadM spread to which the owner prunes it, metres, if kept smaller than it would
 *     grow
 * @param keptHeightM height to which the owner prunes it, metres, if kept lower
 */
public record Planting(
    String id,
    String speciesKey,
    Optional<String> cultivar,
    Point at,
    Optional<String> rowId,
    LocalDate plantedOn,
    double containerM3,
    Measured measured,
    OptionalDouble keptSpreadM,
    OptionalDouble keptHeightM) {
  /**
   * What the owner has measured of a plant.
   *
   * @param spreadM spread of its crown, metres, if measured
   * @param heightM height, metres, if measured
   * @param on the day of measuring; the start of the plan where it is not said
   */
  public record Measured(OptionalDouble spreadM, OptionalDouble heightM, Optional<LocalDate> on) {
    /** Nothing. */
    public static final Measured NOTHING =
        new Measured(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());

    /** Whether there is anything. */
    public boolean any() {
      return spreadM.isPresent() || heightM.isPresent();
    }
  }
}
