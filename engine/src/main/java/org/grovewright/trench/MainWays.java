package org.grovewright.trench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.grovewright.model.Point;

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

  /** Steps towards the best fork. */
  private static final int FORK_ROUNDS = 60;

  /** Forks of every pair are tried for so many zones at most. */
  private static final int MOST_FORKED = 4;

  private final WayFinder finder;
  private final List<Point> drawn;
  private final LaidMain laidMain;
  private final Map<List<List<Point>>, Laid> known = new HashMap<>();

  /**
   * Ways from a supply.
   *
   * @param drawn the supply and the bends that the owner drew, which every main follows
   */
  public MainWays(WayFinder finder, List<Point> drawn) {
    this(finder, drawn, LaidMain.NONE);
  }

  /**
   * Ways from a supply of which some lies there already.
   *
   * @param drawn the supply and the bends that every new main follows
   * @param laid the pipe that lies there, along which neither trench nor pipe costs anything
   */
  public MainWays(WayFinder finder, List<Point> drawn, LaidMain laid) {
    this.finder = finder;
    this.drawn = Planes.plain(drawn);
    this.laidMain = laid;
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
    List<Integer> order = new ArrayList<>(IntStream.range(0, feeds.size()).boxed().toList());
    Laid best = inTurn(feeds, order);
    if (feeds.size() < 2) {
      return best;
    }
    Collections.reverse(order);
    best = cheaper(best, inTurn(feeds, order));
    best = cheaper(best, alone(feeds));
    if (feeds.size() <= MOST_FORKED && laidMain.isEmpty()) {
      for (int one = 0; one < feeds.size(); one++) {
        for (int two = one + 1; two < feeds.size(); two++) {
          best = cheaper(best, forked(feeds, one, two));
        }
      }
    }
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

  /** Two mains that share a trench to the best fork on free ground, then the others. */
  private Laid forked(List<List<Point>> feeds, int one, int two) {
    Point start = drawn.get(drawn.size() - 1);
    Point fork = fork(start, feeds.get(one).get(0), feeds.get(two).get(0));
    List<List<List<Point>>> legs = new ArrayList<>(Collections.nCopies(feeds.size(), List.of()));
    Dug dug = new Dug(List.of(finder.find(start, fork, Dug.NONE).path()));
    List<Integer> order = new ArrayList<>(List.of(one, two));
    IntStream.range(0, feeds.size()).filter(z -> z != one && z != two).forEach(order::add);
    for (int zone : order) {
      legs.set(zone, legs(feeds.get(zone), dug));
      for (List<Point> leg : legs.get(zone)) {
        dug = dug.and(leg);
      }
    }
    return new Laid(legs, costOf(legs));
  }

  /**
   * The place where the trench of two pipes forks at the least cost on free ground: the weighted
   * geometric median of start and feeds (Weiszfeld 1937, from memory).
   */
  private Point fork(Point start, Point one, Point two) {
    double alone = finder.pipePerM() + finder.soilPerM();
    List<Point> ends = List.of(start, one, two);
    double[] perM = {alone + finder.pipePerM(), alone, alone};
    Point at = new Point((start.x() + one.x() + two.x()) / 3, (start.y() + one.y() + two.y()) / 3);
    for (int round = 0; round < FORK_ROUNDS; round++) {
      double x = 0;
      double y = 0;
      double sum = 0;
      for (int i = 0; i < ends.size(); i++) {
        double pull = perM[i] / Math.max(1e-6, at.distanceTo(ends.get(i)));
        x += pull * ends.get(i).x();
        y += pull * ends.get(i).y();
        sum += pull;
      }
      at = sum > 0 ? new Point(x / sum, y / sum) : at;
    }
    return at;
  }

  private static Laid cheaper(Laid one, Laid other) {
    return other.cost() < one.cost() - 1e-9 ? other : one;
  }

  private Laid inTurn(List<List<Point>> feeds, List<Integer> order) {
    List<List<List<Point>>> legs = new ArrayList<>(Collections.nCopies(feeds.size(), List.of()));
    Dug dug = laidMain.dug();
    for (int zone : order) {
      legs.set(zone, legs(feeds.get(zone), dug));
      for (List<Point> leg : legs.get(zone)) {
        dug = dug.and(leg);
      }
    }
    return new Laid(legs, costOf(legs));
  }

  private Laid alone(List<List<Point>> feeds) {
    List<List<List<Point>>> legs = feeds.stream().map(to -> legs(to, laidMain.dug())).toList();
    return new Laid(legs, costOf(legs));
  }

  private Laid relaid(Laid laid, List<List<Point>> feeds, int zone) {
    Dug others = laidMain.dug();
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

  /**
   * One more main.
   *
   * @param lengthM length of its pipe, metres
   * @param trench money for the trench that is dug for it alone
   */
  public record Branch(double lengthM, double trench) {}

  /** A main to one place beside those of zones. */
  public Branch beside(List<List<Point>> feeds, Point feed) {
    Dug dug = drawn.size() > 1 ? laidMain.dug().and(drawn) : laidMain.dug();
    for (List<List<Point>> legs : lay(feeds).legs()) {
      for (List<Point> leg : legs) {
        dug = dug.and(leg);
      }
    }
    WayFinder.Way way = finder.find(drawn.get(drawn.size() - 1), feed, dug);
    double bought =
        laidMain.missing(List.of(way.path())).get(0).stream().mapToDouble(Planes::length).sum();
    return new Branch(
        Planes.length(drawn) + bought, Math.max(0, way.cost() - bought * finder.pipePerM()));
  }

  /** Money for pipes and trench, each trench once. */
  double costOf(List<List<List<Point>>> zones) {
    double money = 0;
    List<List<Point>> all = new ArrayList<>();
    for (List<List<Point>> legs : zones) {
      for (List<List<Point>> parts : laidMain.missing(legs)) {
        for (List<Point> part : parts) {
          money += Planes.length(part) * finder.pipePerM();
          all.add(part);
        }
      }
    }
    for (List<Point> part : Planes.together(all)) {
      for (int i = 1; i < part.size(); i++) {
        money += finder.trenchCost(part.get(i - 1), part.get(i));
      }
    }
    return money;
  }
}
