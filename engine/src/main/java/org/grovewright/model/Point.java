package org.grovewright.model;

/**
 * A place in the site's frame.
 *
 * @param x metres to the right on the sketch
 * @param y metres up on the sketch
 */
public record Point(double x, double y) {
  /** Distance to another place, metres. */
  public double distanceTo(Point other) {
    return Math.hypot(other.x - x, other.y - y);
  }
}
