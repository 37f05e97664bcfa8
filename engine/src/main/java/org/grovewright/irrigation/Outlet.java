package org.grovewright.irrigation;

import org.grovewright.catalogue.EmitterType;
import org.grovewright.model.Point;

/**
 * One emitter at its place on a line of tubing.
 *
 * @param id name of the outlet, unique in the grove
 * @param plant index of the plant it waters, in the order of the grove's plantings
 * @param emitter its type
 * @param at where it drips
 * @param alongM distance from the start of its line, metres along the tubing
 * @param feederM distance on the plan from the line to an emitter on a thin feeder tube, metres; 0
 *     where the emitter sits in the line
 * @param fromYear year of the plan at whose start it is fitted, from 1
 * @param lastYear last year of the plan in which it is open; a number beyond any year where it is
 *     never closed
 */
public record Outlet(
    String id,
    int plant,
    EmitterType emitter,
    Point at,
    double alongM,
    double feederM,
    int fromYear,
    int lastYear) {
  /** An emitter that is there from the first day and stays. */
  Outlet(String id, int plant, EmitterType emitter, Point at, double alongM, double feederM) {
    this(id, plant, emitter, at, alongM, feederM, 1, StagedEmitter.STAYS);
  }

  /** Another emitter at the same place, in its years. */
  Outlet staged(String otherId, StagedEmitter other) {
    return new Outlet(
        otherId, plant, other.type(), at, alongM, feederM, other.fromYear(), other.lastYear());
  }

  /** Whether water drips from it in a year of the plan. */
  public boolean openIn(int year) {
    return fromYear <= year && year <= lastYear;
  }
}
