package org.grovewright.trouble;

import java.util.List;
import java.util.Objects;

/**
 * Something read in the garden while one zone ran, as the owner wrote it down.
 *
 * @param line number of the line it was written on
 * @param zoneId the zone that ran; empty text where the grove has only one
 * @param kind what was read
 * @param place where: a plant or emitter; for a pressure also {@code tap} or a row with {@code
 *     start}, {@code end} or a distance in metres along its tubing; empty for the meter
 * @param folded places behind which tubing was folded shut meanwhile
 * @param value the reading, Pa or m3/s
 */
public record FieldReading(
    int line, String zoneId, Kind kind, String place, List<String> folded, double value) {
  /** What was read. */
  public enum Kind {
    /** Flow past the meter, m3/s. */
    METER,
    /** Pressure by a gauge, Pa. */
    PRESSURE,
    /** Flow of one emitter by a can and a watch, m3/s. */
    CATCH
  }

  /** Copies the list. */
  public FieldReading {
    Objects.requireNonNull(kind, "kind");
    folded = List.copyOf(folded);
  }
}
