package org.grovewright.model;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * Everything the owner says about the grove, and the only input of a plan besides the catalogue.
 *
 * @param site the land
 * @param soil its soil
 * @param climate its weather
 * @param supply where the water comes from
 * @param rows planting rows
 * @param plantings every plant, main plants and companions
 * @param watering the watering system as wished for, or the wish to have it proposed
 * @param stock what lies in the shed and what things cost
 * @param crew who works and when
 * @param start first day on which work may be done
 * @param preferences units and choices of presentation and method
 */
public record Grove(
    Site site,
    Soil soil,
    Climate climate,
    Supply supply,
    List<Row> rows,
    List<Planting> plantings,
    Watering watering,
    Stock stock,
    Crew crew,
    LocalDate start,
    Preferences preferences) {
  /** Copies the lists. */
  public Grove {
    rows = List.copyOf(rows);
    plantings = List.copyOf(plantings);
  }

  /** The year of the plan that a day falls in, counted from 1; days before the start are in it. */
  public int yearAt(LocalDate day) {
    return Math.max(1, (int) ChronoUnit.YEARS.between(start.withDayOfMonth(1), day) + 1);
  }
}
