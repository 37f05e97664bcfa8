package org.grovewright.trench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.grovewright.model.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** A polygon, perhaps with holes, that is cut with many straight lines. */
final class Region {
  /** Crossings closer together than this share of the line count as one. */
  private static final double SAME = 1e-9;

  private final double[][] xs;
  private final double[][] ys;
  private final double minX;
  private final double minY;
  private final double maxX;
  private final double maxY;

  private Region(Polygon polygon) {
    int rings = 1 + polygon.getNumInteriorRing();
    xs = new double[rings][];
    ys = new double[rings][];
    for (int r = 0; r < rings; r++) {
      LinearRing ring = r == 0 ? polygon.getExteriorRing() : polygon.getInteriorRingN(r - 1);
      Coordinate[] corners = ring.getCoordinates();
      xs[r] = Arrays.stream(corners).mapToDouble(c -> c.x).toArray();
      ys[r] = Arrays.stream(corners).mapToDouble(c -> c.y).toArray();
    }
    minX = Arrays.stream(xs[0]).min().orElse(0);
    minY = Arrays.stream(ys[0]).min().orElse(0);
    maxX = Arrays.stream(xs[0]).max().orElse(0);
    maxY = Arrays.stream(ys[0]).max().orElse(0);
  }

  /** The polygons of a geometry; lines and points have none. */
  static List<Region> of(Geometry geometry) {
    List<Region> regions = new ArrayList<>();
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      if (geometry.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
        regions.add(new Region(polygon));
      }
    }
    return regions;
  }

  /** Whether a place lies inside. */
  boolean contains(double x, double y) {
    if (x < minX || x > maxX || y < minY || y > maxY) {
      return false;
    }
    boolean inside = false;
    for (int r = 0; r < xs.length; r++) {
      double[] rx = xs[r];
      double[] ry = ys[r];
      for (int i = 1; i < rx.length; i++) {
        if (ry[i - 1] > y != ry[i] > y
            && x < rx[i - 1] + (y - ry[i - 1]) / (ry[i] - ry[i - 1]) * (rx[i] - rx[i - 1])) {
          inside = !inside;
        }
      }
    }
    return inside;
  }

  /**
   * The parts of a straight line that lie inside.
   *
   * @return start and end of each part in turn, as shares of the line
   */
  double[] inside(Point a, Point b) {
    if (Math.max(a.x(), b.x()) <= minX
        || Math.min(a.x(), b.x()) >= maxX
        || Math.max(a.y(), b.y()) <= minY
        || Math.min(a.y(), b.y()) >= maxY) {
      return new double[0];
    }
    double[] cuts = cuts(a, b);
    double[] parts = new double[2 * cuts.length];
    int n = 0;
    double from = 0;
    for (int i = 0; i <= cuts.length; i++) {
      double to = i < cuts.length ? cuts[i] : 1;
      if (to - from > SAME) {
        double middle = (from + to) / 2;
        if (contains(a.x() + middle * (b.x() - a.x()), a.y() + middle * (b.y() - a.y()))) {
          if (n > 0 && from - parts[n - 1] <= SAME) {
            parts[n - 1] = to;
          } else {
            if (n + 2 > parts.length) {
              parts = Arrays.copyOf(parts, n + 2);
            }
            parts[n++] = from;
            parts[n++] = to;
          }
        }
        from = to;
      }
    }
    return Arrays.copyOf(parts, n);
  }

  /** Where a line meets the edges, as shares of it in order. */
  private double[] cuts(Point a, Point b) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double[] cuts = new double[8];
    int n = 0;
    for (int r = 0; r < xs.length; r++) {
      double[] rx = xs[r];
      double[] ry = ys[r];
      for (int i = 1; i < rx.length; i++) {
        double ex = rx[i] - rx[i - 1];
        double ey = ry[i] - ry[i - 1];
        double cross = dx * ey - dy * ex;
        if (cross == 0) {
          continue;
        }
        double wx = rx[i - 1] - a.x();
        double wy = ry[i - 1] - a.y();
        double t = (wx * ey - wy * ex) / cross;
        double s = (wx * dy - wy * dx) / cross;
        if (t > 0 && t < 1 && s >= -SAME && s <= 1 + SAME) {
          if (n == cuts.length) {
            cuts = Arrays.copyOf(cuts, 2 * n);
          }
          cuts[n++] = t;
        }
      }
    }
    double[] all = Arrays.copyOf(cuts, n);
    Arrays.sort(all);
    return all;
  }

  /** The place on its edge that is nearest to a place. */
  Point edgeNear(Point place) {
    Point best = new Point(xs[0][0], ys[0][0]);
    double least = Double.POSITIVE_INFINITY;
    for (int r = 0; r < xs.length; r++) {
      for (int i = 1; i < xs[r].length; i++) {
        Point foot =
            Planes.foot(
                place, new Point(xs[r][i - 1], ys[r][i - 1]), new Point(xs[r][i], ys[r][i]));
        double distance = foot.distanceTo(place);
        if (distance < least) {
          least = distance;
          best = foot;
        }
      }
    }
    return best;
  }
}
