package org.grovewright.formats.geo;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.grovewright.model.Point;

/**
 * A plane that touches the WGS 84 ellipsoid at an origin, by the azimuthal equidistant projection:
 * x east and y north, metres.
 *
 * @param latitudeDeg latitude of the origin, degrees
 * @param longitudeDeg longitude of the origin, degrees
 */
public record LocalPlane(double latitudeDeg, double longitudeDeg) {
  /** The place in the plane of a place on the earth. */
  public Point project(double latitude, double longitude) {
    GeodesicData line = Geodesic.WGS84.Inverse(latitudeDeg, longitudeDeg, latitude, longitude);
    double bearing = Math.toRadians(line.azi1);
    // Adding zero turns the negative zero of the origin itself into a plain one.
    return new Point(line.s12 * Math.sin(bearing) + 0.0, line.s12 * Math.cos(bearing) + 0.0);
  }

  /** The place on the earth of a place in the plane: latitude and longitude, degrees. */
  public double[] unproject(Point point) {
    double bearing = Math.toDegrees(Math.atan2(point.x(), point.y()));
    double distance = Math.hypot(point.x(), point.y());
    GeodesicData end = Geodesic.WGS84.Direct(latitudeDeg, longitudeDeg, bearing, distance);
    return new double[] {end.lat2, end.lon2};
  }
}
