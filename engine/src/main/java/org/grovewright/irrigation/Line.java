package org.grovewright.irrigation;

import java.util.List;
import org.grovewright.model.Point;

/**
 * One unbranched run of tubing with its outlets.
 *
 * @param id name of the line, unique in the grove
 * @param path the points it runs through, from the feed on
 * @param closed whether its end joins the feed again, so that water comes from both ends
 * @param outlets its outlets in order along the line
 */
public record Line(String id, List<Point> path, boolean closed, List<Outlet> outlets) {
  /** Copies the lists. */
  public Line {
    path = List.copyOf(path);
    outlets = List.copyOf(outlets);
  }

  /** The same line with the outlets that are open in a year of the plan only. */
  public Line inYear(int year) {
    return new Line(
        id, path, closed, outlets.stream().filter(outlet -> outlet.openIn(year)).toList());
  }

  /** Length of the tubing, metres. */
  public double lengthM() {
    return Paths.length(path);
  }
}
