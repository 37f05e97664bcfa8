package org.grovewright.layout;

import java.util.List;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** The model's shapes as plane geometry, in metres of the site's frame. */
public final class Shapes {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Sides of the polygon that stands for a circle. */
  private static final int SIDES = 64;

  /**
   * Circumradius over radius of the regular polygon that has the circle's area, so that areas of
   * discs come out exact and areas of unions without bias: n/2 sin(2 pi/n) R^2 = pi r^2.
   */
  private static final double EQUAL_AREA =
      Math.sqrt(2 * Math.PI / SIDES / Math.sin(2 * Math.PI / SIDES));

  private Shapes() {}

  /** A place as a point geometry. */
  public static Geometry point(Point place) {
    return FACTORY.createPoint(coordinate(place));
  }

  /** Several places as one geometry; empty for none. */
  public static Geometry points(List<Point> places) {
    return FACTORY.createMultiPointFromCoords(coordinates(places));
  }

  /** The straight line from one place to another. */
  public static Geometry segment(Point from, Point to) {
    return FACTORY.createLineString(coordinates(List.of(from, to)));
  }

  /** Nothing at all: area 0, and neutral in a union. */
  public static Geometry nothing() {
    return FACTORY.createPolygon();
  }

  /** All geometries in one collection, ready for a single union. */
  public static Geometry union(List<Geometry> geometries) {
    return geometries.isEmpty() ? nothing() : OverlayNGRobust.union(geometries, FACTORY);
  }

  /** The part of a geometry within an outline; all of it where the outline is empty. */
  public static Geometry within(Geometry geometry, Geometry outline) {
    if (outline.isEmpty() || outline.covers(geometry.getEnvelope())) {
      return geometry;
    }
    return OverlayNGRobust.overlay(geometry, outline, OverlayNG.INTERSECTION);
  }

  /** What is left of a geometry without others; those that lie apart from it cost nothing. */
  public static Geometry without(Geometry geometry, List<Geometry> others) {
    List<Geometry> near =
        others.stream()
            .filter(other -> other.getEnvelopeInternal().intersects(geometry.getEnvelopeInternal()))
            .toList();
    return near.isEmpty()
        ? geometry
        : OverlayNGRobust.overlay(geometry, union(near), OverlayNG.DIFFERENCE);
  }

  /**
   * The area within an outline. An outline that crosses itself is mended into the areas it
   * encloses; fewer than three corners enclose nothing.
   */
  public static Geometry outline(List<Point> corners) {
    if (corners.size() < 3) {
      return nothing();
    }
    Coordinate[] ring = new Coordinate[corners.size() + 1];
    System.arraycopy(coordinates(corners), 0, ring, 0, corners.size());
    ring[corners.size()] = ring[0].copy();
    Geometry polygon = FACTORY.createPolygon(ring);
    return polygon.isValid() ? polygon : GeometryFixer.fix(polygon);
  }

  /** Whether an outline encloses one area without crossing itself. */
  public static boolean isSimple(List<Point> corners) {
    if (corners.size() < 3) {
      return false;
    }
    Coordinate[] ring = new Coordinate[corners.size() + 1];
    System.arraycopy(coordinates(corners), 0, ring, 0, corners.size());
    ring[corners.size()] = ring[0].copy();
    return FACTORY.createPolygon(ring).isValid();
  }

  /** The disc about a place, as a regular polygon of the same area; empty for no radius. */
  public static Geometry disc(Point centre, double radiusM) {
    if (radiusM <= 0) {
      return nothing();
    }
    Coordinate[] ring = new Coordinate[SIDES + 1];
    for (int i = 0; i < SIDES; i++) {
      double angle = 2 * Math.PI * i / SIDES;
      ring[i] =
          new Coordinate(
              centre.x() + EQUAL_AREA * radiusM * Math.cos(angle),
              centre.y() + EQUAL_AREA * radiusM * Math.sin(angle));
    }
    ring[SIDES] = ring[0].copy();
    return FACTORY.createPolygon(ring);
  }

  /** A footprint as geometry. */
  public static Geometry of(Shape shape) {
    if (shape instanceof Shape.Area area) {
      return outline(area.corners());
    }
    if (shape instanceof Shape.Line line) {
      return line.points().size() < 2
          ? points(line.points())
          : FACTORY.createLineString(coordinates(line.points()));
    }
    Shape.Round round = (Shape.Round) shape;
    return round.radiusM() > 0 ? disc(round.centre(), round.radiusM()) : point(round.centre());
  }

  /** Distance of a place from the edge of a footprint, metres; 0 on or inside it. */
  public static double distance(Shape shape, Point place) {
    if (shape instanceof Shape.Round round) {
      return Math.max(0, round.centre().distanceTo(place) - round.radiusM());
    }
    return of(shape).distance(point(place));
  }

  private static Coordinate coordinate(Point place) {
    return new Coordinate(place.x(), place.y());
  }

  private static Coordinate[] coordinates(List<Point> places) {
    return places.stream().map(Shapes::coordinate).toArray(Coordinate[]::new);
  }
}
