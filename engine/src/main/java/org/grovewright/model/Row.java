package org.grovewright.model;

import java.util.List;

/**
 * A planting row.
 *
 * @param id its name in the description
 * @param line the points the row runs through, at least two
 */
public record Row(String id, List<Point> line) {
  /** Copies the points. */
  public Row {
    line = List.copyOf(line);
  }

  /** Length along the row, metres. */
  public double lengthM() {
    double sum = 0;
    for (int i = 1; i < line.size(); i++) {
      sum += line.get(i - 1).distanceTo(line.get(i));
    }
    return sum;
  }

  /** The place a distance along the row; before the start and past the end the ends hold. */
  public Point at(double distanceM) {
    double left = Math.max(0, distanceM);
    for (int i = 1; i < line.size(); i++) {
      Point a = line.get(i - 1);
      Point b = line.get(i);
      double step = a.distanceTo(b);
      if (left <= step && step > 0) {
        double t = left / step;
        return new Point(a.x() + t * (b.x() - a.x()), a.y() + t * (b.y() - a.y()));
      }
      left -= step;
    }
    return line.get(line.size() - 1);
  }

  /** Distance along the row of the point of the row nearest to a place, metres. */
  public double stationOf(Point place) {
    double best = Double.POSITIVE_INFINITY;
    double station = 0;
    double run = 0;
    for (int i = 1; i < line.size(); i++) {
      Point a = line.get(i - 1);
      Point b = line.get(i);
      double dx = b.x() - a.x();
      double dy = b.y() - a.y();
      double step2 = dx * dx + dy * dy;
      double t =
          step2 == 0
              ? 0
              : Math.max(
                  0, Math.min(1, ((place.x() - a.x()) * dx + (place.y() - a.y()) * dy) / step2));
      double distance = Math.hypot(a.x() + t * dx - place.x(), a.y() + t * dy - place.y());
      double step = Math.sqrt(step2);
      if (distance < best) {
        best = distance;
        station = run + t * step;
      }
      run += step;
    }
    return station;
  }

  /** Distance of a place from the row, metres. */
  public double distanceTo(Point place) {
    return at(stationOf(place)).distanceTo(place);
  }
}
