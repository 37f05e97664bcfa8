package org.grovewright.irrigation;

/**
 * What a watering system costs over its life, in the money of the plan, and the part each thing has
 * in it.
 *
 * @param pipe money for pipe and tubing
 * @param fittings money for emitters, fittings and devices
 * @param workS person-seconds to build it
 * @param labour money for that work
 * @param wastedM3 water given in excess over the life, because one run time serves unlike plants
 *     through unlike emitters, m3
 * @param water money for that water
 */
public record LifeCost(
    double pipe, double fittings, double workS, double labour, double wastedM3, double water) {
  /** Money that is paid out for goods. */
  public double cash() {
    return pipe + fittings;
  }

  /** All money together. */
  public double total() {
    return pipe + fittings + labour + water;
  }
}
