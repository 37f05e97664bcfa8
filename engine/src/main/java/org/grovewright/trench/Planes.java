package org.grovewright.trench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.operation.overlayng.UnaryUnionNG;

/** Points and paths in the plane. */
final class Planes {
  /** Places nearer than this are one, metres. */
  static final double SAME_PLACE_M = 1e-6;

  /** Grid to which paths are rounded to find where they share a way, metres. */
  static final double TOGETHER_M = 1e-4;

  private Planes() {}

  /** The place between two others at a share of the way. */
  static Point between(Point a, Point b, double share) {
    return new Point(a.x() + share * (b.x() - a.x()), a.y() + share * (b.y() - a.y()));
  }

  /** Share of a stretch at which it is nearest to a place, from 0 to 1. */
  static double shareNear(Point place, Point a, Point b) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double size2 = dx * dx + dy * dy;
    if (size2 == 0) {
      return 0;
    }
    return Math.max(0, Math.min(1, ((place.x() - a.x()) * dx + (place.y() - a.y()) * dy) / size2));
  }

  /** The point of a stretch nearest to a place. */
  static Point foot(Point place, Point a, Point b) {
    return between(a, b, shareNear(place, a, b));
  }

  /** Distance of a place from a path, metres; infinite where the path has no stretch. */
  static double distance(Point place, List<Point> path) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 1; i < path.size(); i++) {
      least = Math.min(least, foot(place, path.get(i - 1), path.get(i)).distanceTo(place));
    }
    return least;
  }

  static boolean same(Point a, Point b) {
    return Math.abs(a.x() - b.x()) <= SAME_PLACE_M && Math.abs(a.y() - b.y()) <= SAME_PLACE_M;
  }

  /** The place shifted at right angles to a direction, to its left where the shift is positive. */
  static Point aside(Point place, Point from, Point to, double leftM) {
    double length = from.distanceTo(to);
    return new Point(
        place.x() - leftM * (to.y() - from.y()) / length,
        place.y() + leftM * (to.x() - from.x()) / length);
  }

  /** Share of a stretch at which it crosses another; not a number where they do not cross. */
  static double crossing(Point a, Point b, Point c, Point d) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double ex = d.x() - c.x();
    double ey = d.y() - c.y();
    double cross = dx * ey - dy * ex;
    if (Math.abs(cross) < 1e-12) {
      return Double.NaN;
    }
    double wx = c.x() - a.x();
    double wy = c.y() - a.y();
    double t = (wx * ey - wy * ex) / cross;
    double s = (wx * dy - wy * dx) / cross;
    return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? t : Double.NaN;
  }

  /**
   * Paths as one set of lines without overlaps, which meet only at their ends. Places are rounded
   * to a tenth of a millimetre, so that paths along each other become one.
   */
  static List<List<Point>> together(List<List<Point>> paths) {
    List<Geometry> lines = new ArrayList<>();
    for (List<Point> path : paths) {
      if (length(path) > 0) {
        lines.add(Shapes.of(new Shape.Line(path)));
      }
    }
    if (lines.isEmpty()) {
      return List.of();
    }
    Geometry all =
        UnaryUnionNG.union(lines, lines.get(0).getFactory(), new PrecisionModel(1 / TOGETHER_M));
    List<List<Point>> parts = new ArrayList<>();
    for (int i = 0; i < all.getNumGeometries(); i++) {
      parts.add(
          Arrays.stream(all.getGeometryN(i).getCoordinates())
              .map(c -> new Point(c.x, c.y))
              .toList());
    }
    return parts;
  }

  static double length(List<Point> path) {
    double sum = 0;
    for (int i = 1; i < path.size(); i++) {
      sum += path.get(i - 1).distanceTo(path.get(i));
    }
    return sum;
  }

  /** A path without repeated places and without bends that do not bend. */
  static List<Point> plain(List<Point> path) {
    List<Point> plain = new ArrayList<>();
    for (Point point : path) {
      int n = plain.size();
      if (n > 0 && same(plain.get(n - 1), point)) {
        continue;
      }
      if (n > 1 && straight(plain.get(n - 2), plain.get(n - 1), point)) {
        plain.remove(n - 1);
      }
      plain.add(point);
    }
    return plain;
  }

  private static boolean straight(Point a, Point b, Point c) {
    double ux = b.x() - a.x();
    double uy = b.y() - a.y();
    double vx = c.x() - b.x();
    double vy = c.y() - b.y();
    double chord = a.distanceTo(c);
    // The height of the triangle over its chord; rounding bends a line by less than this.
    return ux * vx + uy * vy > 0 && Math.abs(ux * vy - uy * vx) <= 2 * TOGETHER_M * chord;
  }
}
