/**
 * From plants and supply to a watering system that can be built, and to the timer that runs it.
 *
 * <p>The way goes: {@link org.grovewright.irrigation.SupplyModel} turns bucket tests into a supply
 * curve; {@link org.grovewright.irrigation.LateralLayout} lays tubing along a row and puts emitters
 * at its plants; {@link org.grovewright.irrigation.ZoneNetwork} makes the hydraulic network of a
 * zone and solves it; {@link org.grovewright.irrigation.Designer} chooses what the owner left open
 * by trying the catalogue's sizes on the solved network; {@link
 * org.grovewright.irrigation.WateringSystem} is the result with its figures, goods and work; {@link
 * org.grovewright.irrigation.Programme} sets the timer month by month.
 */
package org.grovewright.irrigation;
