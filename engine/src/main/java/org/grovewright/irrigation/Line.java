package org.grovewright.irrigation;

import java.util.List;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Point;
import org.grovewright.model.Row;

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

  /**
   * Length of an outlet's feeder tube along the slope, metres; 0 where it sits in the line.
   *
   * @param outlet one of this line's
   */
  double feederM(Outlet outlet, Terrain terrain) {
    return outlet.feederM() > 0
        ? terrain.lengthOver(List.of(new Row("", path).at(outlet.alongM()), outlet.at()))
        : 0;
  }

  /** Length of the tubing on the plan, metres. */
  public double lengthM() {
    return Paths.length(path);
  }
}
