package org.grovewright.model;

import java.util.List;

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
 */
public record Site(
    String name,
    double latitudeDeg,
    double longitudeDeg,
    double elevationM,
    List<Point> boundary,
    double northBearingDeg,
    List<Fixture> fixtures,
    List<SpotHeight> spotHeights) {
  /** Copies the lists. */
  public Site {
    boundary = List.copyOf(boundary);
    fixtures = List.copyOf(fixtures);
    spotHeights = List.copyOf(spotHeights);
  }

  /** Whether the site lies south of the equator, where the seasons are turned round. */
  public boolean southern() {
    return latitudeDeg < 0;
  }
}
