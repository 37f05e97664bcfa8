package org.grovewright.irrigation;

import org.grovewright.catalogue.EmitterType;

/**
 * One emitter at a plant and the years in which it drips.
 *
 * @param type its type
 * @param fromYear year of the plan at whose start it is fitted, from 1
 * @param lastYear last year of the plan in which it is open; {@link #STAYS} where it is never
 *     closed
 */
record StagedEmitter(EmitterType type, int fromYear, int lastYear) {
  /** Last year of an emitter that is never closed. */
  static final int STAYS = Integer.MAX_VALUE;

  /** An emitter that is there from the first day and stays. */
  static StagedEmitter always(EmitterType type) {
    return new StagedEmitter(type, 1, STAYS);
  }

  boolean openIn(int year) {
    return fromYear <= year && year <= lastYear;
  }
}
