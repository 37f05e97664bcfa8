package org.grovewright.trouble;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A thing that may happen to a watering system. Where it is to happen may be left open; the most
 * telling place is then taken.
 */
public sealed interface Mishap {
  /**
   * More trees at the end of a row, each with the emitters of the last main plant there.
   *
   * @param rowId the row; the one with the longest tubing if empty
   * @param count how many, at least 1
   */
  record MoreTrees(Optional<String> rowId, int count) implements Mishap {}

  /**
   * A tank at half its level, or a tap or pump that gives half its pressure.
   *
   * <p>The level of a tank is what stands above its outlet.
   */
  record HalfPressure() implements Mishap {}

  /**
   * A cut or hole in a lateral.
   *
   * @param place where
   * @param diameterM diameter of a round hole as large, metres
   */
  record Cut(Place place, double diameterM) implements Mishap {}

  /**
   * The valve of a zone that does not open or does not close.
   *
   * @param zoneId the zone; the first if empty
   * @param open whether it is stuck open
   */
  record StuckValve(Optional<String> zoneId, boolean open) implements Mishap {}

  /**
   * Half of all emitters, every second one, clogged.
   *
   * @param left what those still give, as a share
   */
  record HalfClogged(double left) implements Mishap {}

  /**
   * A line of tubing cut through, both ends folded shut.
   *
   * @param place where
   */
  record Severed(Place place) implements Mishap {}

  /**
   * A place in the tubing of a row.
   *
   * @param rowId the row; the one with the longest tubing if empty
   * @param alongM distance from the feed along the tubing, metres; the middle if empty
   */
  record Place(Optional<String> rowId, OptionalDouble alongM) {
    /** The middle of the longest line. */
    static final Place ANY = new Place(Optional.empty(), OptionalDouble.empty());
  }
}
