package org.grovewright.water;

import org.grovewright.catalogue.Catalogue;
import org.grovewright.growth.Growth;
import org.grovewright.model.Planting;

/**
 * The mix that came with a plant from its container, while the plant still lives mostly in it.
 *
 * @param areaM2 its area seen from above, m2; 0 for a bare-rooted plant
 * @param depthM its depth, metres
 * @param availableShare available water of the mix, volume share
 * @param exchange share of the difference in dryness to the native soil that evens out in a day
 * @param compensation what roots in the moister soil take up beyond their own share, over that
 *     share
 */
record RootBall(
    double areaM2, double depthM, double availableShare, double exchange, double compensation) {
  /** Below this share of the roots the plant has grown out of its ball. */
  private static final double GROWN_OUT = 0.05;

  static RootBall of(Planting planting, Growth growth, Catalogue catalogue) {
    double radius = planting.containerM3() > 0 ? growth.ballRadiusM() : 0;
    return new RootBall(
        Math.PI * radius * radius,
        growth.ballDepthM(),
        value(catalogue, "ball-field-capacity") - value(catalogue, "ball-wilting-point"),
        value(catalogue, "ball-exchange"),
        value(catalogue, "root-compensation"));
  }

  private static double value(Catalogue catalogue, String key) {
    return catalogue.constant("water." + key).value();
  }

  /** Share of the roots that are still in the ball, by volume; 0 once the plant has grown out. */
  double rootShare(double rootRadiusM, double rootDepthM) {
    double roots = Math.PI * rootRadiusM * rootRadiusM * rootDepthM;
    double share = Math.min(1, areaM2 * Math.min(depthM, rootDepthM) / roots);
    return share < GROWN_OUT ? 0 : share;
  }
}
