package org.grovewright.trench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.model.Point;

/**
 * Leads a pipe from place to place at the least cost of pipe and trench.
 *
 * <p>Ways bend at corners of what they go round, at places on the edge of ground that costs more,
 * at places beside a service from which it is crossed at right angles, and along trenches that are
 * open already, in which only the pipe costs. Among these places the cheapest way is found by the
 * A* search (Hart, Nilsson and Raphael 1968, from memory) with a bound from below that is never too
 * high, so that no cheaper way over them exists.
 */
public final class WayFinder {
  /** What may not be crossed costs so many times bare soil, so that it is crossed last of all. */
  private static final double BLOCKED_TIMES = 1000;

  /**
   * A place in the room kept from a wall, such as a tap, is left by a line at most so many times as
   * long as the shortest way out.
   */
  private static final double LEAVING = 1.5;

  private static final double SAMPLE_M = 1;
  private static final int MOST_SAMPLES = 24;

  private final GroundMap map;
  private final TrenchCosts costs;
  private final double soilPerM;
  private final double blockedPerM;
  private final double[] patchPerM;
  private final List<Point> corners;
  private final double[][] between;

  /** Ways over some ground. */
  public WayFinder(GroundMap map, TrenchCosts costs) {
    this.map = map;
    this.costs = costs;
    this.soilPerM = costs.weightPerM(TrenchGround.Kind.SOIL, false);
    this.blockedPerM = BLOCKED_TIMES * Math.max(soilPerM, costs.pipePerM());
    this.patchPerM =
        map.shunned().stream()
            .mapToDouble(p -> Math.max(soilPerM, costs.weightPerM(p.kind(), p.vehicles())))
            .toArray();
    this.corners = free(candidates());
    this.between = new double[corners.size()][];
  }

  /**
   * A way with its cost.
   *
   * @param path its points from the first place to the last, those included
   * @param cost money for pipe and trench, with the reluctance against some ground
   */
  public record Way(List<Point> path, double cost) {}

  /** Corners of things, and places on both sides of services. */
  private List<Point> candidates() {
    List<Point> all = new ArrayList<>(map.corners());
    for (GroundMap.Service service : map.services()) {
      for (int i = 1; i < service.line().size(); i++) {
        Point a = service.line().get(i - 1);
        Point b = service.line().get(i);
        int parts = (int) Math.min(MOST_SAMPLES, Math.ceil(a.distanceTo(b) / SAMPLE_M));
        for (int k = 0; k < parts; k++) {
          addBeside(all, Planes.between(a, b, (k + 0.5) / parts), a, b);
        }
      }
    }
    return all;
  }

  /** Two places from which a service is crossed at right angles. */
  private void addBeside(List<Point> places, Point at, Point a, Point b) {
    if (a.distanceTo(b) < Planes.SAME_PLACE_M) {
      return;
    }
    double clear = map.serviceClearM() + GroundMap.BESIDE_M;
    places.add(Planes.aside(at, a, b, clear));
    places.add(Planes.aside(at, a, b, -clear));
  }

  /** Places at which a pipe may lie, each once. */
  private List<Point> free(List<Point> places) {
    List<Point> free = new ArrayList<>();
    for (Point place : places) {
      boolean inside = map.blocked().stream().anyMatch(r -> r.contains(place.x(), place.y()));
      boolean off =
          !map.land().isEmpty()
              && map.land().stream().noneMatch(r -> r.contains(place.x(), place.y()));
      if (!inside && !off && free.stream().noneMatch(other -> Planes.same(other, place))) {
        free.add(place);
      }
    }
    return free;
  }

  /**
   * The cheapest way.
   *
   * @param dug trenches that are open already
   */
  public Way find(Point from, Point to, Dug dug) {
    if (Planes.same(from, to)) {
      return new Way(List.of(from, to), 0);
    }
    double direct = cost(from, to, true, true);
    double ideal = from.distanceTo(to) * (costs.pipePerM() + soilPerM);
    if (dug.isEmpty() && direct <= ideal * (1 + 1e-9)) {
      return new Way(List.of(from, to), direct);
    }
    return new Search(from, to, dug, direct).way();
  }

  /** Money for a metre of pipe. */
  double pipePerM() {
    return costs.pipePerM();
  }

  /** Money for a metre of trench in bare soil. */
  double soilPerM() {
    return soilPerM;
  }

  /** Money for a straight piece of trench without the pipe, wherever it begins. */
  double trenchCost(Point a, Point b) {
    return cost(a, b, true, true) - a.distanceTo(b) * costs.pipePerM();
  }

  /**
   * Money for a straight piece.
   *
   * @param leavesA whether a way begins or ends at a, which may stand where no other part may be
   * @param leavesB the same for b
   */
  private double cost(Point a, Point b, boolean leavesA, boolean leavesB) {
    double length = a.distanceTo(b);
    if (length == 0) {
      return 0;
    }
    Parts parts = new Parts();
    for (int i = 0; i < patchPerM.length; i++) {
      parts.add(map.shunned().get(i).region().inside(a, b), patchPerM[i]);
    }
    for (Region region : map.blocked()) {
      double[] inside = region.inside(a, b);
      if (inside.length > 0) {
        parts.add(kept(inside, region, a, b, leavesA, leavesB), blockedPerM);
      }
    }
    if (!map.land().isEmpty()) {
      parts.add(outside(a, b), blockedPerM);
    }
    double trench = parts.n == 0 ? soilPerM : parts.mean(soilPerM);
    return length * (costs.pipePerM() + trench) + crossings(a, b) * costs.servicePiece();
  }

  private static double[] kept(
      double[] inside, Region region, Point a, Point b, boolean leavesA, boolean leavesB) {
    double length = a.distanceTo(b);
    int first = 0;
    int last = inside.length;
    if (leavesA && inside[0] < 1e-9) {
      double out = region.edgeNear(a).distanceTo(a);
      first = inside[1] * length <= LEAVING * out + GroundMap.BESIDE_M ? 2 : 0;
    }
    if (leavesB && last > first && inside[last - 1] > 1 - 1e-9) {
      double out = region.edgeNear(b).distanceTo(b);
      boolean leaves = (1 - inside[last - 2]) * length <= LEAVING * out + GroundMap.BESIDE_M;
      last -= leaves ? 2 : 0;
    }
    return first >= last ? new double[0] : Arrays.copyOfRange(inside, first, last);
  }

  private double[] outside(Point a, Point b) {
    double[] cuts = new double[] {0};
    for (Region region : map.land()) {
      double[] inside = region.inside(a, b);
      int n = cuts.length;
      cuts = Arrays.copyOf(cuts, n + inside.length);
      System.arraycopy(inside, 0, cuts, n, inside.length);
    }
    if (cuts.length == 3 && cuts[1] < 1e-9 && cuts[2] > 1 - 1e-9) {
      return new double[0];
    }
    cuts = Arrays.copyOf(cuts, cuts.length + 1);
    cuts[cuts.length - 1] = 1;
    Arrays.sort(cuts);
    return cuts;
  }

  private int crossings(Point a, Point b) {
    int crossings = 0;
    for (GroundMap.Service service : map.services()) {
      List<Point> line = service.line();
      for (int i = 1; i < line.size(); i++) {
        crossings += Double.isNaN(Planes.crossing(a, b, line.get(i - 1), line.get(i))) ? 0 : 1;
      }
    }
    return crossings;
  }

  /** Parts of a line that cost more than soil. */
  private static final class Parts {
    private double[] from = new double[8];
    private double[] to = new double[8];
    private double[] perM = new double[8];
    private int n;

    void add(double[] inside, double money) {
      for (int i = 0; i < inside.length; i += 2) {
        if (n == from.length) {
          from = Arrays.copyOf(from, 2 * n);
          to = Arrays.copyOf(to, 2 * n);
          perM = Arrays.copyOf(perM, 2 * n);
        }
        from[n] = inside[i];
        to[n] = inside[i + 1];
        perM[n++] = money;
      }
    }

    /** Mean over the line of the dearest that lies at each place. */
    double mean(double least) {
      double[] cuts = new double[2 * n + 2];
      cuts[0] = 0;
      cuts[1] = 1;
      System.arraycopy(from, 0, cuts, 2, n);
      System.arraycopy(to, 0, cuts, 2 + n, n);
      Arrays.sort(cuts);
      double sum = 0;
      for (int i = 1; i < cuts.length; i++) {
        double middle = (cuts[i - 1] + cuts[i]) / 2;
        double here = least;
        for (int k = 0; k < n; k++) {
          if (from[k] < middle && middle < to[k]) {
            here = Math.max(here, perM[k]);
          }
        }
        sum += here * (cuts[i] - cuts[i - 1]);
      }
      return sum;
    }
  }

  /** One search. Nodes are the two ends, further places of this search, and the corners. */
  private final class Search {
    private final Dug dug;
    private final double pipe = costs.pipePerM();
    private final List<Point> nodes = new ArrayList<>();
    private final List<Integer> cornerOf = new ArrayList<>();
    private final List<List<double[]>> open = new ArrayList<>();
    private final double direct;
    private final double[] ahead;

    Search(Point from, Point to, Dug dug, double direct) {
      this.dug = dug;
      this.direct = direct;
      add(from, -1);
      add(to, -1);
      for (Point end : List.of(from, to)) {
        map.blocked().forEach(region -> wayOut(end, region));
        map.shunned().forEach(patch -> wayOut(end, patch.region()));
        beside(end);
      }
      List<List<Point>> places = dug.places(from, to, pipe, pipe + soilPerM);
      for (int way = 0; way < places.size(); way++) {
        addDug(places.get(way), dug.isPiped(way) ? 0 : pipe);
      }
      for (int i = 0; i < corners.size(); i++) {
        if (bound(corners.get(i), from, to) < direct) {
          add(corners.get(i), i);
        }
      }
      ahead = nodes.stream().mapToDouble(node -> rest(node, to)).toArray();
    }

    /** The nearest place outside an area that an end stands in. */
    private void wayOut(Point end, Region region) {
      if (region.contains(end.x(), end.y())) {
        Point edge = region.edgeNear(end);
        double out = edge.distanceTo(end);
        double share = out < 1e-9 ? 1 : (out + GroundMap.BESIDE_M) / out;
        add(Planes.between(end, edge, share), -1);
      }
    }

    private void beside(Point end) {
      for (GroundMap.Service service : map.services()) {
        for (int i = 1; i < service.line().size(); i++) {
          Point a = service.line().get(i - 1);
          Point b = service.line().get(i);
          List<Point> places = new ArrayList<>();
          addBeside(places, Planes.foot(end, a, b), a, b);
          places.forEach(place -> add(place, -1));
        }
      }
    }

    private int add(Point place, int corner) {
      nodes.add(place);
      cornerOf.add(corner);
      open.add(new ArrayList<>());
      return nodes.size() - 1;
    }

    /** Places along an open trench, each joined to the next. */
    private void addDug(List<Point> places, double perM) {
      int before = -1;
      for (Point place : places) {
        int at = index(place);
        if (before >= 0 && before != at) {
          double cost = perM * nodes.get(before).distanceTo(place);
          open.get(before).add(new double[] {at, cost});
          open.get(at).add(new double[] {before, cost});
        }
        before = at;
      }
    }

    private int index(Point place) {
      for (int i = 0; i < nodes.size(); i++) {
        if (Planes.same(nodes.get(i), place)) {
          return i;
        }
      }
      return add(place, -1);
    }

    /** Money that any way over a place costs at least. */
    private double bound(Point place, Point from, Point to) {
      double off = dug.isEmpty() ? Double.POSITIVE_INFINITY : dug.distance(place);
      double one = place.distanceTo(from);
      double two = place.distanceTo(to);
      return pipe * (dug.leastPipeM(place, from) + dug.leastPipeM(place, to))
          + soilPerM * (Math.min(off, one) + Math.min(off, two));
    }

    /** Money that the way on from a place costs at least. */
    private double rest(Point place, Point to) {
      double length = place.distanceTo(to);
      double off = dug.isEmpty() ? length : Math.min(length, dug.distance(place));
      return pipe * dug.leastPipeM(place, to) + soilPerM * off;
    }

    Way way() {
      int n = nodes.size();
      double[] cost = new double[n];
      int[] before = new int[n];
      boolean[] done = new boolean[n];
      Arrays.fill(cost, Double.POSITIVE_INFINITY);
      cost[0] = 0;
      cost[1] = direct;
      while (true) {
        int at = -1;
        for (int i = 0; i < n; i++) {
          if (!done[i] && (at < 0 || cost[i] + ahead[i] < cost[at] + ahead[at])) {
            at = i;
          }
        }
        if (at == 1) {
          break;
        }
        done[at] = true;
        for (double[] along : open.get(at)) {
          int i = (int) along[0];
          if (cost[at] + along[1] < cost[i]) {
            cost[i] = cost[at] + along[1];
            before[i] = at;
          }
        }
        for (int i = 1; i < n; i++) {
          double least = cost[at] + (pipe + soilPerM) * nodes.get(at).distanceTo(nodes.get(i));
          if (done[i] || least >= cost[i] || least + ahead[i] >= cost[1]) {
            continue;
          }
          double here = cost[at] + edge(at, i);
          if (here < cost[i]) {
            cost[i] = here;
            before[i] = at;
          }
        }
      }
      List<Point> path = new ArrayList<>();
      for (int i = 1; i > 0; i = before[i]) {
        path.add(nodes.get(i));
      }
      path.add(nodes.get(0));
      Collections.reverse(path);
      return new Way(Planes.plain(path), cost[1]);
    }

    private double edge(int from, int to) {
      int a = cornerOf.get(from);
      int b = cornerOf.get(to);
      if (a < 0 || b < 0) {
        return cost(nodes.get(from), nodes.get(to), from < 2, to < 2);
      }
      if (between[a] == null) {
        between[a] = new double[corners.size()];
        Arrays.fill(between[a], Double.NaN);
      }
      if (Double.isNaN(between[a][b])) {
        between[a][b] = cost(corners.get(a), corners.get(b), false, false);
      }
      return between[a][b];
    }
  }
}
