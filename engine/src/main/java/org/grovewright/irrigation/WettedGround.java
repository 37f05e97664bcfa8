package org.grovewright.irrigation;

import java.util.List;
import org.grovewright.model.Point;

/**
 * How much of the ground under a crown the emitters of a plant wet.
 *
 * <p>A tree that is watered on one side only roots on that side only, leans, and stands half dry
 * when a line fails. Tubing along one side is therefore enough only for a plant so small that it
 * wets the needed share of the ground under the crown from there; other trees are watered from both
 * sides.
 */
final class WettedGround {
  /** Places looked at across the crown; the share is right to about one in a hundred. */
  private static final int STEPS = 48;

  private WettedGround() {}

  /**
   * Share of the ground under a crown that is wet, each emitter wetting a disc of the diameter of
   * its type; where discs overlap the ground counts once.
   *
   * @param stem where the plant stands
   * @param radiusM radius of the crown, metres, above zero
   * @param outlets its emitters
   */
  static double share(Point stem, double radiusM, List<Outlet> outlets) {
    int under = 0;
    int wet = 0;
    for (int i = 0; i < STEPS; i++) {
      double dx = radiusM * ((2 * i + 1.0) / STEPS - 1);
      for (int j = 0; j < STEPS; j++) {
        double dy = radiusM * ((2 * j + 1.0) / STEPS - 1);
        if (dx * dx + dy * dy <= radiusM * radiusM) {
          under++;
          if (wets(outlets, stem.x() + dx, stem.y() + dy)) {
            wet++;
          }
        }
      }
    }
    return (double) wet / under;
  }

  private static boolean wets(List<Outlet> outlets, double x, double y) {
    for (Outlet o : outlets) {
      double dx = o.at().x() - x;
      double dy = o.at().y() - y;
      double reach = o.emitter().wettedDiameterM() / 2;
      if (dx * dx + dy * dy <= reach * reach) {
        return true;
      }
    }
    return false;
  }
}
