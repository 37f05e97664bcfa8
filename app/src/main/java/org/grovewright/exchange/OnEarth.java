package org.grovewright.exchange;

import org.grovewright.formats.geo.LocalPlane;
import org.grovewright.model.Point;
import org.grovewright.model.Site;

/**
 * The sketch of a site laid out on the earth: its point 0, 0 lies at the site's latitude and
 * longitude, and its y axis points to the site's bearing of north.
 *
 * @param plane plane that touches the earth at the sketch's point 0, 0
 * @param bearingDeg compass bearing of the y axis, degrees clockwise from true north
 */
public record OnEarth(LocalPlane plane, double bearingDeg) {
  /** The sketch of a site. */
  public static OnEarth of(Site site) {
    return new OnEarth(
        new LocalPlane(site.latitudeDeg(), site.longitudeDeg()), site.northBearingDeg());
  }

  /** Latitude and longitude of a place of the sketch, degrees. */
  public double[] toEarth(Point place) {
    return plane.unproject(turned(place, Math.toRadians(bearingDeg)));
  }

  /** The place of the sketch that lies at a latitude and longitude in degrees. */
  public Point toSketch(double latitude, double longitude) {
    return turned(plane.project(latitude, longitude), -Math.toRadians(bearingDeg));
  }

  /** A vector turned clockwise. */
  private static Point turned(Point place, double angle) {
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    return new Point(
        place.x() * cos + place.y() * sin + 0.0, place.y() * cos - place.x() * sin + 0.0);
  }
}
