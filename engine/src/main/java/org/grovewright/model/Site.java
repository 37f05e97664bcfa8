package org.grovewright.model;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The land.
 *
 * @param name what the owner calls it
 * @param latitudeDeg latitude, degrees, south negative
 * @param longitudeDeg longitude, degrees, west negative
 * @param elevationM height above sea level, metres
 * @param boundary corners of the land in order
 * @param northBearingDeg compass bearing of the frame's y axis, degrees clockwise from true north
 * @param fixtures things that stay where they are
 * @param spotHeights measured heights of the ground; empty means level
 * @param frostDepthM how deep frost goes into the ground, metres; empty where the owner does not
 *     know
 */
public record Site(
    String name,
    double latitudeDeg,
    double longitudeDeg,
    double elevationM,
    List<Point> boundary,
    double northBearingDeg,
    List<Fixture> fixtures,
    List<SpotHeight> spotHeights,
    OptionalDouble frostDepthM) {
  /** Copies the lists. */
  public Site {
    boundary = List.copyOf(boundary);
    fixtures = List.copyOf(fixtures);
    spotHeights = List.copyOf(spotHeights);
  }

  /** A site whose frost depth is not known. */
  public Site(
      String name,
      double latitudeDeg,
      double longitudeDeg,
      double elevationM,
      List<Point> boundary,
      double northBearingDeg,
      List<Fixture> fixtures,
      List<SpotHeight> spotHeights) {
    this(
        name,
        latitudeDeg,
        longitudeDeg,
        elevationM,
        boundary,
        northBearingDeg,
        fixtures,
        spotHeights,
        OptionalDouble.empty());
  }

  /** Whether the site lies south of the equator, where the seasons are turned round. */
  public boolean southern() {
    return latitudeDeg < 0;
  }
}
