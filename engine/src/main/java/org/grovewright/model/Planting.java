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
 * @param measuredSpreadM spread as last measured by the owner, metres, if measured
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
    OptionalDouble measuredSpreadM,
    OptionalDouble keptSpreadM,
    OptionalDouble keptHeightM) {}
