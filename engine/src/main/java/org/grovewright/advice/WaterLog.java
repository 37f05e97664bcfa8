package org.grovewright.advice;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What the owner noted of watering and rain. Days without a note are no proof that nothing was
 * done; see {@link AssumedRuns}.
 *
 * @param runs waterings and skipped waterings, in any order
 * @param gaugeM rain of a day by the owner's own gauge, metres, by date
 */
public record WaterLog(List<Run> runs, NavigableMap<LocalDate, Double> gaugeM) {
  /** A log in which nothing was noted. */
  public static final WaterLog EMPTY = new WaterLog(List.of(), new TreeMap<>());

  /** Copies the notes. */
  public WaterLog {
    runs = List.copyOf(runs);
    gaugeM = Collections.unmodifiableNavigableMap(new TreeMap<>(gaugeM));
  }

  /**
   * One note of watering: how long a valve was open or how much water went through it.
   *
   * @param date the day
   * @param zone id of the zone; empty text for every zone
   * @param seconds time the valve was open; 0 for a watering that was skipped
   * @param volumeM3 water that a meter or tank showed, m3; goes before the time where both are
   *     there
   */
  public record Run(LocalDate date, String zone, OptionalDouble seconds, OptionalDouble volumeM3) {
    /** A watering by the clock. */
    public static Run timed(LocalDate date, String zone, double seconds) {
      return new Run(date, zone, OptionalDouble.of(seconds), OptionalDouble.empty());
    }

    /** A watering by the meter. */
    public static Run metered(LocalDate date, String zone, double volumeM3) {
      return new Run(date, zone, OptionalDouble.empty(), OptionalDouble.of(volumeM3));
    }

    /** A day on which the valve stayed shut. */
    public static Run skipped(LocalDate date, String zone) {
      return timed(date, zone, 0);
    }

    boolean isOf(String id) {
      return zone.isEmpty() || zone.equals(id);
    }

    /** Time the valve of a zone was open, seconds, at the flow of that zone. */
    double secondsAt(double flowM3PerS) {
      return volumeM3.isPresent() && flowM3PerS > 0
          ? volumeM3.getAsDouble() / flowM3PerS
          : seconds.orElse(0);
    }
  }
}
