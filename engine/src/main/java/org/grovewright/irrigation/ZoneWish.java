package org.grovewright.irrigation;

import java.util.List;

/**
 * A zone before its sizes are chosen.
 *
 * @param id name of the zone
 * @param laterals its laterals in the order in which the main reaches them
 */
record ZoneWish(String id, List<LateralWish> laterals) {
  ZoneWish {
    laterals = List.copyOf(laterals);
  }
}
