package org.grovewright.season;

import java.time.LocalDate;
import java.util.List;

/**
 * The soil of one plant through one year, as depths over its root zone.
 *
 * @param plantId the plant
 * @param zone its zone
 * @param days the days in order
 */
public record SoilTrace(String plantId, String zone, List<Day> days) {
  /** Copies the days. */
  public SoilTrace {
    days = List.copyOf(days);
  }

  /**
   * One day.
   *
   * @param date the day
   * @param missingMm water missing from the root zone in the evening, mm; where a ball of another
   *     mix is part of it, as dry as the roots find it
   * @param readilyMm water the plant can take up with ease from a full root zone, mm
   * @param totalMm all water it can take up from a full root zone, mm
   * @param rainMm rain less runoff, mm
   * @param irrigationMm irrigation, mm
   * @param stressed whether the plant could not take up all it wanted
   */
  public record Day(
      LocalDate date,
      double missingMm,
      double readilyMm,
      double totalMm,
      double rainMm,
      double irrigationMm,
      boolean stressed) {}
}
