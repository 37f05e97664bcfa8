package org.grovewright.ground;

/**
 * A round body that narrows evenly from top to bottom: a root ball, a hole or, upside down, a
 * mound.
 *
 * @param topM diameter at the top, metres
 * @param bottomM diameter at the bottom, metres
 * @param heightM height, metres
 */
public record Frustum(double topM, double bottomM, double heightM) {
  /** Volume, m3: {@code pi h / 12 (D^2 + D d + d^2)}. */
  public double volumeM3() {
    return Math.PI * heightM / 12 * (topM * topM + topM * bottomM + bottomM * bottomM);
  }

  /**
   * The frustum of a volume and proportions.
   *
   * @param volumeM3 volume, m3
   * @param heightRatio height over top diameter
   * @param taper bottom diameter over top diameter
   */
  public static Frustum of(double volumeM3, double heightRatio, double taper) {
    double top = Math.cbrt(12 * volumeM3 / (Math.PI * heightRatio * (1 + taper + taper * taper)));
    return new Frustum(top, taper * top, heightRatio * top);
  }
}
