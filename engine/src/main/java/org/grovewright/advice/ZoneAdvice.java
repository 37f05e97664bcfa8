package org.grovewright.advice;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.grovewright.quantity.Figure;

/**
 * What to do with one zone today.
 *
 * @param zone id of the zone
 * @param action whether to water
 * @param wantedMinutes whole minutes that its plants want today; 0 to skip
 * @param minutes whole minutes to water in all, which may be less where the day has no room for
 *     more
 * @param runs runs that the minutes are cut into so that the soil can drink them; 0 to skip
 * @param minutesPerRun whole minutes of each run
 * @param volume water that goes through the valve, m3
 * @param driestPlantId the plant that is nearest to its limit or farthest beyond it; empty text
 *     where none stands yet
 * @param servedPlantId the plant whose want sets the minutes; empty text to skip
 * @param nextDay first day on which the zone will want water if no rain comes; empty where that is
 *     beyond the days looked at
 * @param trace soil water of the driest plant from some weeks ago until a few days ahead, the
 *     advice of today being followed
 */
public record ZoneAdvice(
    String zone,
    Action action,
    int wantedMinutes,
    int minutes,
    int runs,
    int minutesPerRun,
    Figure volume,
    String driestPlantId,
    String servedPlantId,
    Optional<LocalDate> nextDay,
    List<TraceDay> trace) {
  /** Copies the trace. */
  public ZoneAdvice {
    trace = List.copyOf(trace);
  }

  /** What to do. */
  public enum Action {
    /** Open the valve. */
    WATER,
    /** Leave it shut today. */
    SKIP,
    /** Water is wanted, but today's hours, rules or volume have no room for it. */
    WAIT,
    /** None of its plants stands yet. */
    NOTHING_PLANTED
  }

  /**
   * A day of a plant's soil; depths in metres over the area of its root zone.
   *
   * @param date the day
   * @param leftM water left for the plant at the end of the day
   * @param stressM what is left where the plant begins to suffer
   * @param fullM what a full root zone holds for it
   * @param rainM rain less runoff
   * @param irrigationM watering
   */
  public record TraceDay(
      LocalDate date,
      double leftM,
      double stressM,
      double fullM,
      double rainM,
      double irrigationM) {}
}
