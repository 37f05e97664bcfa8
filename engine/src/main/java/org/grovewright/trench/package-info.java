/**
 * Where the mains of a watering system lie in the ground: the way of their trench, its depth, and
 * what it meets.
 *
 * <p>A trench costs more where paving must be lifted or roots spared than in bare soil, and nothing
 * more where another pipe's trench is open already. {@link org.grovewright.trench.GroundMap} says
 * what lies where; {@link org.grovewright.trench.WayFinder} leads one pipe from place to place by
 * the least cost, keeping a distance from walls; {@link org.grovewright.trench.MainWays} leads the
 * mains of all zones so that they share trenches; {@link org.grovewright.trench.Burial} says how
 * deep a pipe must lie under traffic and against frost; {@link org.grovewright.trench.Trench} is
 * the result, as numbered segments with the pipes in each, and the services it crosses.
 */
package org.grovewright.trench;
