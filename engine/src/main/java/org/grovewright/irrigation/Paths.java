package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.model.Point;
import org.grovewright.model.Row;

/**
 * Open paths of points in the plane: length, a place along, the part up to a distance, a parallel.
 */
final class Paths {
  private Paths() {}

  /** Length of a path, metres. */
  static double length(List<Point> path) {
    return new Row("", path).lengthM();
  }

  /** The same path walked from its end. */
  static List<Point> reversed(List<Point> path) {
    List<Point> back = new ArrayList<>(path);
    java.util.Collections.reverse(back);
    return back;
  }

  /** The first part of a path, up to a distance from its start; the whole where it is shorter. */
  static List<Point> upTo(List<Point> path, double distanceM) {
    Row walk = new Row("", path);
    if (distanceM >= walk.lengthM()) {
      return path;
    }
    List<Point> part = new ArrayList<>();
    part.add(path.get(0));
    double run = 0;
    for (int i = 1; i < path.size(); i++) {
      run += path.get(i - 1).distanceTo(path.get(i));
      if (run >= distanceM) {
        break;
      }
      part.add(path.get(i));
    }
    part.add(walk.at(distanceM));
    return part;
  }

  /** The rest of a path, from a distance from its start on. */
  static List<Point> from(List<Point> path, double distanceM) {
    List<Point> back = reversed(path);
    return upTo(back, Math.max(0, length(path) - distanceM));
  }

  /**
   * The path that keeps a distance to the left of another (to the right where it is negative).
   * Corners are mitred; a path that doubles back on itself keeps a plain corner.
   */
  static List<Point> parallel(List<Point> path, double leftM) {
    List<Point> moved = new ArrayList<>();
    int last = path.size() - 1;
    for (int i = 0; i <= last; i++) {
      double[] before = i > 0 ? normal(path.get(i - 1), path.get(i)) : null;
      double[] after = i < last ? normal(path.get(i), path.get(i + 1)) : null;
      double[] n = before == null ? after : before;
      double scale = 1;
      if (before != null && after != null) {
        n = new double[] {before[0] + after[0], before[1] + after[1]};
        double size2 = n[0] * n[0] + n[1] * n[1];
        if (size2 < 0.25) {
          n = before;
        } else {
          scale = 2 / size2;
        }
      }
      moved.add(
          new Point(
              path.get(i).x() + leftM * scale * n[0], path.get(i).y() + leftM * scale * n[1]));
    }
    return moved;
  }

  private static double[] normal(Point a, Point b) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double size = Math.hypot(dx, dy);
    return size == 0 ? new double[] {0, 0} : new double[] {-dy / size, dx / size};
  }
}
