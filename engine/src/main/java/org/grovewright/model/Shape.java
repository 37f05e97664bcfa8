package org.grovewright.model;

import java.util.List;

/** The footprint of a fixed thing. */
public sealed interface Shape {
  /**
   * A closed outline.
   *
   * @param corners at least three corners in order; the last joins the first
   */
  record Area(List<Point> corners) implements Shape {
    /** Copies the corners. */
    public Area {
      corners = List.copyOf(corners);
    }
  }

  /**
   * An open line such as a fence or a buried pipe.
   *
   * @param points at least two points in order
   */
  record Line(List<Point> points) implements Shape {
    /** Copies the points. */
    public Line {
      points = List.copyOf(points);
    }
  }

  /**
   * A round thing such as a tank or an existing tree's trunk.
   *
   * @param centre its centre
   * @param radiusM its radius, metres
   */
  record Round(Point centre, double radiusM) implements Shape {}
}
