package org.grovewright.trench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * Leads the mains of all zones from the supply to the feeds of their laterals so that they share
 * trenches where that is cheaper than ways of their own.
 *
 * <p>Mains are laid one after the other, each where it costs least beside the trenches that are
 * open; then each is taken up and laid again beside the others as long as that helps. Finding the
 * least tree of trenches is hard in general (Steiner's problem), and this does not always find it;
 * but it is never dearer than laying each main as if it were alone.
 */
public final class MainWays {
  /** Times that each main is laid again. */
  private static final int ROUNDS = 2;

  private final WayFinder finder;
  private final List<Point> drawn;
  private final Map<List<List<Point>>, Laid> known = new HashMap<>();

  /**
   * Ways from a supply.
   *
   * @param drawn the supply and the bends that the owner drew, which every main follows
   */
  public MainWays(WayFinder finder, List<Point> drawn) {
    this.finder = finder;
    this.drawn = Planes.plain(drawn);
  }

  /**
   * Mains as laid.
   *
   * @param legs for each zone, the way from the supply to its first feed and from each feed to the
   *     next
   * @param cost money for pipes and trench, each trench once
   */
  public record Laid(List<List<List<Point>>> legs, double cost) {}

  /**
   * The mains of zones.
   *
   * @param feeds for each zone the places its main reaches, in order
   */
  public Laid lay(List<List<Point>> feeds) {
    Laid laid = known.get(feeds);
    if (laid == null) {
      laid = laidOut(feeds);
      known.put(feeds, laid);
    }
    return laid;
  }

  private Laid laidOut(List<List<Point>> feeds) {
    List<Integer> order =
        new ArrayList<>(IntStream.range(0, feeds.size()).boxed().toList());
    Laid best = inTurn(feeds, order);
    if (feeds.size() < 2) {
      return best;
    }
    Collections.reverse(order);
    best = cheaper(best, inTurn(feeds, order));
    best = cheaper(best, alone(feeds));
    for (int round = 0; round < ROUNDS; round++) {
      double before = best.cost();
      for (int zone = 0; zone < feeds.size(); zone++) {
        best = cheaper(best, relaid(best, feeds, zone));
      }
      if (best.cost() >= before) {
        break;
      }
    }
    return best;
  }

  private static Laid cheaper(Laid one, Laid other) {
    return other.cost() < one.cost() - 1e-9 ? other : one;
  }

  private Laid inTurn(List<List<Point>> feeds, List<Integer> order) {
    List<List<List<Point>>> legs = new ArrayList<>(Collections.nCopies(feeds.size(), List.of()));
    Dug dug = Dug.NONE;
    for (int zone : order) {
      legs.set(zone, legs(feeds.get(zone), dug));
      for (List<Point> leg : legs.get(zone)) {
        dug = dug.and(leg);
      }
    }
    return new Laid(legs, costOf(legs));
  }

  private Laid alone(List<List<Point>> feeds) {
    List<List<List<Point>>> legs = feeds.stream().map(to -> legs(to, Dug.NONE)).toList();
    return new Laid(legs, costOf(legs));
  }

  private Laid relaid(Laid laid, List<List<Point>> feeds, int zone) {
    Dug others = Dug.NONE;
    for (int other = 0; other < feeds.size(); other++) {
      for (List<Point> leg : other == zone ? List.<List<Point>>of() : laid.legs().get(other)) {
        others = others.and(leg);
      }
    }
    List<List<List<Point>>> legs = new ArrayList<>(laid.legs());
    legs.set(zone, legs(feeds.get(zone), others));
    return new Laid(legs, costOf(legs));
  }

  /** The legs of one main beside open trenches. */
  private List<List<Point>> legs(List<Point> feeds, Dug open) {
    List<List<Point>> legs = new ArrayList<>();
    List<Point> path = new ArrayList<>(drawn);
    Dug dug = drawn.size() > 1 ? open.and(drawn) : open;
    for (Point feed : feeds) {
      Point from = path.get(path.size() - 1);
      path.addAll(finder.find(from, feed, dug).path());
      List<Point> leg = Planes.plain(path);
      // A lateral at the supply itself has a leg of no length.
      legs.add(leg.size() > 1 ? List.copyOf(leg) : List.of(from, feed));
      dug = dug.and(leg);
      path.clear();
      path.add(feed);
    }
    return legs;
  }

  /** Money for pipes and trench, each trench once. */
  double costOf(List<List<List<Point>>> zones) {
    double pipe = 0;
    List<Geometry> lines = new ArrayList<>();
    for (List<List<Point>> legs : zones) {
      for (List<Point> leg : legs) {
        double length = Planes.length(leg);
        pipe += length * finder.pipePerM();
        if (length > 0) {
          lines.add(Shapes.of(new Shape.Line(leg)));
        }
      }
    }
    Geometry ways = Shapes.union(lines);
    double trench = 0;
    for (int i = 0; i < ways.getNumGeometries(); i++) {
      Coordinate[] points = ways.getGeometryN(i).getCoordinates();
      for (int k = 1; k < points.length; k++) {
        Point a = new Point(points[k - 1].x, points[k - 1].y);
        Point b = new Point(points[k].x, points[k].y);
        trench += finder.trenchCost(a, b);
      }
    }
    return pipe + trench;
  }
}
