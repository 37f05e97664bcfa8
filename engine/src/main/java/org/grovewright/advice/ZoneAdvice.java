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
 * @param held what keeps the zone from all the water it wants today
 * @param times minutes that it wants and gets
 * @param volume water that goes through the valve, m3
 * @param driestPlantId the plant that is nearest to its limit or farthest beyond it; empty text
 *     where none stands yet
 * @param servedPlantId the plant whose want sets the minutes; empty text to skip
 * @param next when the zone will want water next or, where it is held back, may have more
 * @param assumed waterings that are counted though nobody noted them
 * @param trace soil water of the driest plant from some weeks ago until a few days ahead, the
 *     advice of today being followed
 */
public record ZoneAdvice(
    String zone,
    Action action,
    Held held,
    Times times,
    Figure volume,
    String driestPlantId,
    String servedPlantId,
    Next next,
    Assumed assumed,
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

  /** What keeps a zone from more water. */
  public enum Held {
    /** Nothing. */
    FREE,
    /** Today is not among the allowed days. */
    NOT_ALLOWED,
    /** The allowed hours are used up. */
    HOURS,
    /** The limit of a day is used up. */
    DAY_LIMIT,
    /** The limit of any seven days is used up. */
    WEEK_LIMIT,
    /** More than twice the longest watering of its timer card would drown its other plants. */
    CARD
  }

  /**
   * The minutes; all of whole minutes.
   *
   * @param wanted what the plants want today; nothing to skip
   * @param time what is given in all, which may be less where the day has no room for more
   * @param runs runs that it is cut into so that the soil can drink it; 0 to skip
   * @param perRun length of each run
   */
  public record Times(Figure wanted, Figure time, Figure runs, Figure perRun) {}

  /**
   * The next turn.
   *
   * @param wants first day on which the zone will want water if no rain comes, today's advice
   *     followed; empty where that is beyond the days looked at
   * @param daysUntil days until then
   * @param askAgain where it is held back, the first day on which it may have more
   */
  public record Next(
      Optional<LocalDate> wants, Optional<Figure> daysUntil, Optional<LocalDate> askAgain) {}

  /**
   * Waterings that the log does not tell of and that are taken to have run as the timer card says.
   *
   * @param count how many since the weather begins
   * @param days their days
   * @param ifShut minutes that the zone would want today had those of the past seven days not run;
   *     empty where there is none among them
   */
  public record Assumed(Figure count, List<LocalDate> days, Optional<Figure> ifShut) {
    /** Copies the days. */
    public Assumed {
      days = List.copyOf(days);
    }
  }

  /** Whole minutes that its plants want today; 0 to skip. */
  public int wantedMinutes() {
    return minutesOf(times.wanted());
  }

  /** Whole minutes to water in all. */
  public int minutes() {
    return minutesOf(times.time());
  }

  /** Runs that the minutes are cut into. */
  public int runs() {
    return (int) Math.round(times.runs().value());
  }

  /** Whole minutes of each run. */
  public int minutesPerRun() {
    return minutesOf(times.perRun());
  }

  private static int minutesOf(Figure time) {
    return (int) Math.round(time.value() / 60);
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
   * @param assumed whether that watering was not noted but taken from the timer card
   */
  public record TraceDay(
      LocalDate date,
      double leftM,
      double stressM,
      double fullM,
      double rainM,
      double irrigationM,
      boolean assumed) {}
}
