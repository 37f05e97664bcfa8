package org.grovewright.hydraulics;

import java.util.Objects;

/**
 * Something measured in the field.
 *
 * @param quantity what was measured
 * @param id id of the node, link or group of emitters it was measured at
 * @param value the reading in m of water or m3/s
 * @param deviation standard deviation of the reading in the same unit, positive
 */
public record Reading(Quantity quantity, String id, double value, double deviation) {
  /** What can be measured. */
  public enum Quantity {
    /** Pressure at a node by a gauge, in m of water. */
    PRESSURE,
    /** Flow out of a reservoir or source by the meter, in m3/s. */
    SUPPLIED,
    /** Flow through a link by a meter in it, in m3/s. */
    FLOW,
    /** Flow of one emitter by a catch can and a watch, in m3/s. */
    EMITTER
  }

  /**
   * Checks the parts.
   *
   * @throws IllegalArgumentException if the deviation is not positive
   */
  public Reading {
    Objects.requireNonNull(quantity, "quantity");
    Objects.requireNonNull(id, "id");
    if (!(deviation > 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException(
          "the reading at " + id + " needs a number and a deviation above 0");
    }
  }

  /** What a solution has where this was read. */
  public double in(Solution solution) {
    return switch (quantity) {
      case PRESSURE -> solution.pressure(id);
      case SUPPLIED -> solution.supplied(id);
      case FLOW -> solution.flow(id);
      case EMITTER -> solution.emitterFlow(id);
    };
  }

  /** How far the reading lies from a solution, in standard deviations. */
  double residual(Solution solution) {
    return (value - in(solution)) / deviation;
  }
}
