package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.model.Fixture;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences.Units;
import org.grovewright.model.Shape;

/**
 * How the site's metres lie on the drawing: one scale for both axes, y turned to point down.
 *
 * @param scale drawing units to a metre
 * @param minX x of the drawing's left edge, metres
 * @param maxY y of the drawing's top edge, metres
 * @param width width of the drawing, drawing units
 * @param height height of the drawing, drawing units
 */
record MapFrame(double scale, double minX, double maxY, double width, double height) {
  private static final double WIDTH = 1000;
  private static final double TALLEST = 1100;
  private static final double FOOT = 0.3048;

  /** The frame that holds everything of a scene with a margin for labels. */
  static MapFrame of(MapScene scene) {
    List<Point> points = new ArrayList<>(scene.boundary());
    for (Fixture fixture : scene.fixtures()) {
      points.addAll(extent(fixture.shape()));
    }
    for (MapScene.PlantMark plant : scene.plants()) {
      double radius =
          plant.spreadsM().stream().mapToDouble(Double::doubleValue).max().orElse(0) / 2;
      points.addAll(square(plant.at(), radius));
    }
    scene.pipes().forEach(pipe -> points.addAll(pipe.line()));
    scene.devices().forEach(device -> points.add(device.at()));
    return around(points);
  }

  /** The frame that holds some points with a margin for labels. */
  static MapFrame around(List<Point> points) {
    double minX = points.stream().mapToDouble(Point::x).min().orElse(0);
    double maxX = points.stream().mapToDouble(Point::x).max().orElse(1);
    double minY = points.stream().mapToDouble(Point::y).min().orElse(0);
    double maxY = points.stream().mapToDouble(Point::y).max().orElse(1);
    double margin = Math.max(0.5, 0.04 * Math.max(maxX - minX, maxY - minY));
    double spanX = maxX - minX + 2 * margin;
    double spanY = maxY - minY + 2 * margin;
    double scale = Math.min(WIDTH / spanX, TALLEST / spanY);
    // A narrow plot is centred, because the strip below the map needs the full width.
    double left = minX - margin - (WIDTH / scale - spanX) / 2;
    return new MapFrame(scale, left, maxY + margin, WIDTH, spanY * scale);
  }

  double x(Point point) {
    return (point.x() - minX) * scale;
  }

  double y(Point point) {
    return (maxY - point.y()) * scale;
  }

  /** A path through points in the notation of SVG. */
  String path(List<Point> points, boolean closed) {
    StringBuilder path = new StringBuilder();
    for (Point point : points) {
      path.append(path.length() == 0 ? "M" : " L")
          .append(Decimals.coordinate(x(point)))
          .append(' ')
          .append(Decimals.coordinate(y(point)));
    }
    return closed ? path.append(" Z").toString() : path.toString();
  }

  /** The longest round length that takes at most a quarter of the width. */
  Bar scaleBar(Units units) {
    double unit = units == Units.US ? FOOT : 1;
    double most = width / scale / 4 / unit;
    double step = Math.pow(10, Math.floor(Math.log10(most)));
    double length = step;
    for (double factor : new double[] {2, 5}) {
      if (factor * step <= most) {
        length = factor * step;
      }
    }
    String label = Decimals.significant(length, 6) + (units == Units.US ? " ft" : " m");
    return new Bar(length * unit * scale, label);
  }

  private static List<Point> extent(Shape shape) {
    if (shape instanceof Shape.Area area) {
      return area.corners();
    }
    if (shape instanceof Shape.Line line) {
      return line.points();
    }
    Shape.Round round = (Shape.Round) shape;
    return square(round.centre(), round.radiusM());
  }

  private static List<Point> square(Point centre, double half) {
    return List.of(
        new Point(centre.x() - half, centre.y() - half),
        new Point(centre.x() + half, centre.y() + half));
  }

  /** A scale bar: its length in drawing units and what it stands for. */
  record Bar(double length, String label) {}
}
