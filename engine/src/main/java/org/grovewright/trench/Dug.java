package org.grovewright.trench;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.grovewright.model.Point;

/** Trenches that are open already. */
public final class Dug {
  /** No trench. */
  public static final Dug NONE = new Dug(List.of(), List.of());

  private static final double SAMPLE_M = 1;
  private static final int MOST_SAMPLES = 12;

  private final List<List<Point>> ways;

  /** Ways among them on which a pipe lies that brings water for nothing. */
  private final List<List<Point>> piped;

  /** Trenches along some ways. */
  public Dug(List<List<Point>> ways) {
    this(ways, List.of());
  }

  private Dug(List<List<Point>> ways, List<List<Point>> piped) {
    this.ways = ways.stream().filter(way -> Planes.length(way) > 0).map(List::copyOf).toList();
    this.piped = piped;
  }

  /** A way on which a pipe lies already that brings water for nothing. */
  static Dug piped(List<Point> way) {
    return new Dug(List.of(way), List.of(way));
  }

  /** These trenches and one more. */
  Dug and(List<Point> way) {
    List<List<Point>> more = new ArrayList<>(ways);
    more.add(way);
    return new Dug(more, piped);
  }

  /** Whether a pipe lies on one of the ways already. */
  boolean isPiped(int way) {
    return piped.contains(ways.get(way));
  }

  /**
   * Length of pipe that any way between two places needs at least, metres.
   *
   * @param from one place
   * @param to the other
   */
  double leastPipeM(Point from, Point to) {
    double length = from.distanceTo(to);
    return piped.isEmpty() ? length : Math.min(length, distance(from, piped) + distance(to, piped));
  }

  boolean isEmpty() {
    return ways.isEmpty();
  }

  /** Distance of a place from the nearest trench, metres. */
  double distance(Point place) {
    return distance(place, ways);
  }

  private static double distance(Point place, List<List<Point>> ways) {
    double least = Double.POSITIVE_INFINITY;
    for (List<Point> way : ways) {
      least = Math.min(least, Planes.distance(place, way));
    }
    return least;
  }

  /**
   * Places of each trench at which a pipe may leave it, in order: its bends, the places nearest to
   * the ends, where trenches meet, places in between, and those at which a pipe to an end parts
   * from the trench at the least cost. There the angle between trench and pipe has the cosine of
   * the costs of a metre with and without trench, as light is bent at a surface.
   *
   * @param from one end
   * @param to the other
   * @param pipePerM money for a metre in an open trench
   * @param trenchPerM money for a metre in a new trench
   */
  List<List<Point>> places(Point from, Point to, double pipePerM, double trenchPerM) {
    double cosine = trenchPerM > 0 ? Math.min(1, pipePerM / trenchPerM) : 1;
    double aheadOfFoot = cosine >= 1 ? 0 : cosine / Math.sqrt(1 - cosine * cosine);
    List<List<Point>> all = new ArrayList<>();
    for (List<Point> way : ways) {
      List<Point> places = new ArrayList<>();
      for (int i = 1; i < way.size(); i++) {
        Point a = way.get(i - 1);
        Point b = way.get(i);
        for (double share : shares(a, b, List.of(from, to), aheadOfFoot)) {
          places.add(share == 0 ? a : share == 1 ? b : Planes.between(a, b, share));
        }
      }
      all.add(places);
    }
    return all;
  }

  private TreeSet<Double> shares(Point a, Point b, List<Point> ends, double aheadOfFoot) {
    double length = a.distanceTo(b);
    TreeSet<Double> shares = new TreeSet<>(List.of(0.0, 1.0));
    if (length < Planes.SAME_PLACE_M) {
      return shares;
    }
    for (Point end : ends) {
      double foot = Planes.shareNear(end, a, b);
      double shift = Planes.between(a, b, foot).distanceTo(end) * aheadOfFoot / length;
      for (double share : new double[] {foot, foot - shift, foot + shift}) {
        shares.add(Math.max(0, Math.min(1, share)));
      }
    }
    for (List<Point> other : ways) {
      for (int i = 1; i < other.size(); i++) {
        double share = Planes.crossing(a, b, other.get(i - 1), other.get(i));
        if (!Double.isNaN(share)) {
          shares.add(share);
        }
        for (Point corner : List.of(other.get(i - 1), other.get(i))) {
          double near = Planes.shareNear(corner, a, b);
          if (Planes.same(Planes.between(a, b, near), corner)) {
            shares.add(near);
          }
        }
      }
    }
    int parts = (int) Math.min(MOST_SAMPLES, Math.round(length / SAMPLE_M));
    for (int k = 1; k < parts; k++) {
      shares.add((double) k / parts);
    }
    return shares;
  }
}
