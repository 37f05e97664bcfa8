package org.grovewright.advice;

import org.grovewright.quantity.Figure;

/**
 * The soil of one plant this morning.
 *
 * @param plantId the plant
 * @param zone id of its zone; empty text where no valve serves it
 * @param missing water missing from its root zone, m3
 * @param limit water that may be missing before it begins to suffer, m3
 * @param total water that its root zone holds for it when full, m3
 */
public record PlantState(String plantId, String zone, Figure missing, Figure limit, double total) {
  /** How far the plant has gone to its limit; 1 where it begins to suffer. */
  public double dryness() {
    return limit.value() > 0 ? missing.value() / limit.value() : 0;
  }

  /** Share of its water that is left, 0 to 1. */
  public double left() {
    return total > 0 ? Math.max(0, 1 - missing.value() / total) : 0;
  }
}
