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
 * @param feederM length of thin feeder tube between the line and the emitter, metres; 0 where the
 *     emitter sits in the line
 */
public record Outlet(
    String id, int plant, EmitterType emitter, Point at, double alongM, double feederM) {}
