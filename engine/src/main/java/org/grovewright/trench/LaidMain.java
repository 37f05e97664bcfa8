package org.grovewright.trench;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.model.Row;

/** A main that lies in the ground already: one pipe from the supply to its end. */
public final class LaidMain {
  /** No main lies there. */
  public static final LaidMain NONE = new LaidMain(List.of());

  /** A way lies on the pipe where it is nearer to it than this, metres. */
  private static final double WITHIN_M = 1e-3;

  /** Shorter stretches belong to their neighbour, metres. */
  private static final double LEAST_M = 0.01;

  private final List<Point> way;

  /**
   * A main.
   *
   * @param way its way from the supply to its end; empty where none lies there
   */
  public LaidMain(List<Point> way) {
    List<Point> plain = Planes.plain(way);
    this.way = plain.size() > 1 ? List.copyOf(plain) : List.of();
  }

  /** The main that the owner of a grove says lies there. */
  public static LaidMain of(Grove grove) {
    if (!grove.watering().mainLaid()) {
      return NONE;
    }
    List<Point> way = new ArrayList<>(List.of(grove.supply().at()));
    way.addAll(grove.watering().mainRoute());
    return new LaidMain(way);
  }

  /** Whether no main lies there. */
  public boolean isEmpty() {
    return way.isEmpty();
  }

  /** Its way, along which water is led for nothing. */
  Dug dug() {
    return isEmpty() ? Dug.NONE : Dug.piped(way);
  }

  /** Whether a place is on the pipe. */
  public boolean reaches(Point place) {
    return distance(place) < WITHIN_M;
  }

  /** Whether a place is the end of the pipe. */
  public boolean endsAt(Point place) {
    return !isEmpty() && way.get(way.size() - 1).distanceTo(place) < LEAST_M;
  }

  /** Distance from the supply along the pipe to the place of it that is nearest, metres. */
  public double stationOf(Point place) {
    return new Row("", way).stationOf(place);
  }

  /** Distance of a place from the pipe, metres; infinite where none lies there. */
  public double distance(Point place) {
    return Planes.distance(place, way);
  }

  /** A part of a way that lies on the pipe from end to end, or nowhere. */
  private record Stretch(List<Point> path, boolean laid) {}

  /**
   * For each leg of a zone's main the ways on which pipe is still to be laid, in order.
   *
   * <p>From a feed beside the pipe the water for the next feed would run back to it; there it never
   * leaves the pipe, so that way back needs no pipe of its own.
   *
   * @param legs legs of the main, each from the end of the one before
   */
  public List<List<List<Point>>> missing(List<List<Point>> legs) {
    if (isEmpty()) {
      return legs.stream()
          .map(leg -> Planes.length(leg) > 0 ? List.of(leg) : List.<List<Point>>of())
          .toList();
    }
    List<List<List<Point>>> all = new ArrayList<>();
    for (int leg = 0; leg < legs.size(); leg++) {
      List<List<Point>> parts = new ArrayList<>();
      List<Stretch> stretches = stretches(legs.get(leg));
      for (int i = 0; i < stretches.size(); i++) {
        boolean back = leg > 0 && i == 0 && stretches.size() > 1;
        if (!stretches.get(i).laid() && !back) {
          parts.add(stretches.get(i).path());
        }
      }
      all.add(parts);
    }
    return all;
  }

  private List<Stretch> stretches(List<Point> path) {
    List<Stretch> stretches = new ArrayList<>();
    List<Point> open = new ArrayList<>();
    boolean laid = false;
    for (int i = 1; i < path.size(); i++) {
      Point a = path.get(i - 1);
      Point b = path.get(i);
      double length = a.distanceTo(b);
      Double from = null;
      for (double to : cuts(a, b)) {
        if (from != null && (to - from) * length >= LEAST_M) {
          boolean here = reaches(Planes.between(a, b, (from + to) / 2));
          if (open.isEmpty()) {
            open.add(Planes.between(a, b, from));
          } else if (here != laid) {
            stretches.add(new Stretch(List.copyOf(open), laid));
            Point last = open.get(open.size() - 1);
            open = new ArrayList<>(List.of(last));
          }
          laid = here;
          open.add(Planes.between(a, b, to));
        }
        from = to;
      }
    }
    if (open.size() > 1) {
      stretches.add(new Stretch(List.copyOf(open), laid));
    }
    return stretches;
  }

  /** Shares of a straight piece at which it may come to the pipe or leave it. */
  private TreeSet<Double> cuts(Point a, Point b) {
    TreeSet<Double> cuts = new TreeSet<>(List.of(0.0, 1.0));
    for (int i = 0; i < way.size(); i++) {
      double near = Planes.shareNear(way.get(i), a, b);
      if (Planes.between(a, b, near).distanceTo(way.get(i)) < WITHIN_M) {
        cuts.add(near);
      }
      double crossing = i == 0 ? Double.NaN : Planes.crossing(a, b, way.get(i - 1), way.get(i));
      if (!Double.isNaN(crossing)) {
        cuts.add(crossing);
      }
    }
    return cuts;
  }
}
