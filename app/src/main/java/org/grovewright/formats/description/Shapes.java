package org.grovewright.formats.description;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.grovewright.model.Point;
import org.grovewright.texts.Sentence;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;

/** Tells shapes that can be on the ground from those that cannot. */
final class Shapes {
  /** What may lie outside the boundary by rounding, metres. */
  static final double TOLERANCE_M = 0.01;

  private static final double LEAST_AREA_M2 = 1e-4;
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private Shapes() {}

  /**
   * What is wrong with a closed outline, if anything.
   *
   * @param length says a length of metres in the unit of the outline
   */
  static Optional<Sentence> faultOfOutline(List<Point> corners, DoubleFunction<String> length) {
    if (corners.stream().distinct().count() < 3) {
      return Optional.of(Sentence.of("needs at least three different corners"));
    }
    Polygon polygon = polygon(corners);
    TopologyValidationError error = new IsValidOp(polygon).getValidationError();
    if (error != null && polygon.convexHull().getArea() >= LEAST_AREA_M2) {
      Coordinate at = error.getCoordinate();
      return Optional.of(
          Sentence.of(
              "crosses itself near [{0}, {1}]; give the corners in order around it",
              length.apply(at.x), length.apply(at.y)));
    }
    return error != null || polygon.getArea() < LEAST_AREA_M2
        ? Optional.of(Sentence.of("encloses no area; check the corners"))
        : Optional.empty();
  }

  /** What is wrong with an open line, if anything. */
  static Optional<Sentence> faultOfLine(List<Point> points) {
    LineString line = line(points);
    if (line.getLength() < TOLERANCE_M) {
      return Optional.of(Sentence.of("has no length; check its points"));
    }
    return line.isSimple()
        ? Optional.empty()
        : Optional.of(Sentence.of("crosses itself; check its points"));
  }

  /** The outline as a closed polygon. */
  static Polygon polygon(List<Point> corners) {
    Coordinate[] ring = new Coordinate[corners.size() + 1];
    for (int i = 0; i < corners.size(); i++) {
      ring[i] = coordinate(corners.get(i));
    }
    ring[corners.size()] = ring[0].copy();
    return FACTORY.createPolygon(ring);
  }

  /** The points as a line. */
  static LineString line(List<Point> points) {
    return FACTORY.createLineString(
        points.stream().map(Shapes::coordinate).toArray(Coordinate[]::new));
  }

  /** The place as a geometry. */
  static Geometry point(Point point) {
    return FACTORY.createPoint(coordinate(point));
  }

  private static Coordinate coordinate(Point point) {
    return new Coordinate(point.x(), point.y());
  }
}
