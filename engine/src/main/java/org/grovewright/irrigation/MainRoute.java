package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * Leads a main round what no trench may cross, by the shortest way over the corners of the
 * obstacles (Dijkstra on the visibility graph, from memory).
 */
final class MainRoute {
  private final double clearM;
  private final List<Geometry> obstacles = new ArrayList<>();

  /**
   * Ways about some things.
   *
   * @param clearM room between the trench and what it is led round, metres
   */
  MainRoute(List<Fixture> fixtures, double clearM) {
    this.clearM = clearM;
    for (Fixture fixture : fixtures) {
      if (blocks(fixture.kind())) {
        obstacles.add(Shapes.of(fixture.shape()));
      }
    }
  }

  /** Whether a trench may not cross a thing of this kind. */
  static boolean blocks(FixtureKind kind) {
    return kind == FixtureKind.BUILDING
        || kind == FixtureKind.SEPTIC_FIELD
        || kind == FixtureKind.PAVING
        || kind == FixtureKind.TANK;
  }

  /**
   * Bends strictly between two points, in order; none where the straight way is free, or where no
   * free way is found.
   */
  List<Point> bends(Point from, Point to) {
    if (free(from, to)) {
      return List.of();
    }
    List<Point> nodes = new ArrayList<>(List.of(from, to));
    for (Geometry obstacle : obstacles) {
      for (Coordinate corner : obstacle.buffer(clearM, 1).convexHull().getCoordinates()) {
        nodes.add(new Point(corner.x, corner.y));
      }
    }
    int n = nodes.size();
    double[] length = new double[n];
    int[] before = new int[n];
    boolean[] done = new boolean[n];
    Arrays.fill(length, Double.POSITIVE_INFINITY);
    Arrays.fill(before, -1);
    length[0] = 0;
    while (true) {
      int at = -1;
      for (int i = 0; i < n; i++) {
        if (!done[i]
            && length[i] < Double.POSITIVE_INFINITY
            && (at < 0 || length[i] < length[at])) {
          at = i;
        }
      }
      if (at < 0) {
        return List.of();
      }
      if (at == 1) {
        break;
      }
      done[at] = true;
      for (int i = 0; i < n; i++) {
        double way = length[at] + nodes.get(at).distanceTo(nodes.get(i));
        if (!done[i] && way < length[i] && free(nodes.get(at), nodes.get(i))) {
          length[i] = way;
          before[i] = at;
        }
      }
    }
    List<Point> bends = new ArrayList<>();
    for (int i = before[1]; i > 0; i = before[i]) {
      bends.add(nodes.get(i));
    }
    Collections.reverse(bends);
    return bends;
  }

  private boolean free(Point a, Point b) {
    if (a.distanceTo(b) == 0) {
      return true;
    }
    Geometry way = Shapes.of(new Shape.Line(List.of(a, b)));
    return obstacles.stream().allMatch(o -> way.intersection(o).getLength() < 0.01);
  }
}
