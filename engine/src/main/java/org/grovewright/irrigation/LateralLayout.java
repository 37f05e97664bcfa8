package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.model.Point;
import org.grovewright.model.Row;
import org.grovewright.model.Watering.Run;

/**
 * Lays tubing along a row and puts emitters at its plants.
 *
 * <p>The tubing keeps an offset from the row's centre line so that it misses the trunks. A dead end
 * runs along one side; a loop runs down one side, across the far end and back up the other, both
 * its ends joined to the feed; a two-sided lateral is two dead ends. Emitters of one plant are
 * spread along the tubing about the plant, shared between the sides where there are two.
 */
final class LateralLayout {
  private final Row row;
  private final Run run;
  private final List<Served> plants;
  private final Rules rules;
  private final boolean drawn;

  private LateralLayout(List<Point> row, Run run, List<Served> plants, Rules rules, boolean drawn) {
    this.row = new Row("", row);
    this.run = run;
    this.plants = plants;
    this.rules = rules;
    this.drawn = drawn;
  }

  /**
   * A plant to be served.
   *
   * @param plant index of the plant in the grove's plantings
   * @param id the plant's id
   * @param at where it stands
   * @param emitter type of its emitters
   * @param count number of its emitters
   */
  record Served(int plant, String id, Point at, EmitterType emitter, int count) {}

  /**
   * How tubing is laid.
   *
   * @param offsetM distance of the tubing from the row's centre line, metres
   * @param spacingM distance between emitters of one plant along the tubing, metres
   * @param tailM tubing beyond the last emitter, metres
   * @param reachM plants farther than this from the tubing get a feeder tube, metres
   */
  record Rules(double offsetM, double spacingM, double tailM, double reachM) {}

  /**
   * The lines of one lateral.
   *
   * @param id name of the lateral, used in the ids of lines
   * @param row the row's points, from the end at which the water comes in
   * @param run how the lateral runs
   * @param plants the plants it serves
   * @param rules how tubing is laid
   */
  static List<Line> lay(String id, List<Point> row, Run run, List<Served> plants, Rules rules) {
    return new LateralLayout(row, run, plants, rules, false).lines(id);
  }

  /** The lines of a lateral, on the way that the owner drew for it or along its row. */
  static List<Line> lay(LateralWish wish, List<Served> plants, Rules rules) {
    return new LateralLayout(wish.row().line(), wish.run(), plants, rules, wish.drawn())
        .lines(wish.id());
  }

  private List<Line> lines(String id) {
    if (drawn && run == Run.LOOP) {
      return List.of(ring(id));
    }
    List<Point> centre = drawn ? row.line() : Paths.upTo(row.line(), reach());
    List<Point> left = Paths.parallel(centre, rules.offsetM());
    Point feed = centre.get(0);
    if (drawn && run == Run.DEAD_END) {
      return List.of(line(id, centre, false, outlets(centre, Side.ONLY)));
    }
    if (run == Run.DEAD_END) {
      return List.of(line(id, from(feed, left), false, outlets(left, Side.ONLY)));
    }
    List<Point> right = Paths.parallel(centre, -rules.offsetM());
    List<Outlet> onLeft = outlets(left, Side.LEFT);
    List<Outlet> onRight = outlets(right, Side.RIGHT);
    if (run == Run.TWO_SIDED) {
      return List.of(
          line(id + "-left", from(feed, left), false, onLeft),
          line(id + "-right", from(feed, right), false, onRight));
    }
    List<Point> loop = from(feed, left);
    loop.addAll(Paths.reversed(right));
    loop.add(feed);
    return List.of(loop(id, loop, onLeft, onRight));
  }

  private static Line loop(String id, List<Point> path, List<Outlet> out, List<Outlet> back) {
    double whole = Paths.length(path);
    List<Outlet> all = new ArrayList<>(out);
    for (Outlet o : back) {
      all.add(new Outlet(o.id(), o.plant(), o.emitter(), o.at(), whole - o.alongM(), o.feederM()));
    }
    return line(id, path, true, all);
  }

  /**
   * A loop on the way that the owner drew, closed if the drawing is not. The corner farthest from
   * the feed parts it into the way out and the way back, which pass a plant on its two sides.
   */
  private Line ring(String id) {
    List<Point> ring = new ArrayList<>(row.line());
    Point feed = ring.get(0);
    if (ring.get(ring.size() - 1).distanceTo(feed) > 0) {
      ring.add(feed);
    }
    int far = 1;
    for (int i = 2; i < ring.size() - 1; i++) {
      far = ring.get(i).distanceTo(feed) > ring.get(far).distanceTo(feed) ? i : far;
    }
    List<Point> out = List.copyOf(ring.subList(0, far + 1));
    List<Point> back = Paths.reversed(ring.subList(far, ring.size()));
    return loop(id, ring, outlets(out, Side.LEFT), outlets(back, Side.RIGHT));
  }

  /** Distance along the row to which the tubing runs. */
  private double reach() {
    double far = 0;
    for (Served plant : plants) {
      int side = run == Run.DEAD_END ? plant.count() : (plant.count() + 1) / 2;
      far = Math.max(far, row.stationOf(plant.at()) + (side - 1) / 2.0 * rules.spacingM());
    }
    return far + rules.tailM();
  }

  private static List<Point> from(Point feed, List<Point> side) {
    List<Point> path = new ArrayList<>();
    path.add(feed);
    path.addAll(side);
    return path;
  }

  private static Line line(String id, List<Point> path, boolean closed, List<Outlet> outlets) {
    List<Outlet> sorted = new ArrayList<>(outlets);
    sorted.sort(Comparator.comparingDouble(Outlet::alongM).thenComparing(Outlet::id));
    return new Line(id, path, closed, sorted);
  }

  private enum Side {
    ONLY(""),
    LEFT("left-"),
    RIGHT("right-");

    private final String prefix;

    Side(String prefix) {
      this.prefix = prefix;
    }
  }

  private List<Outlet> outlets(List<Point> path, Side side) {
    List<Outlet> outlets = new ArrayList<>();
    Row walk = new Row("", path);
    double lead = row.line().get(0).distanceTo(path.get(0));
    double end = walk.lengthM();
    for (Served plant : plants) {
      int here = share(plant, side);
      double middle = walk.stationOf(plant.at());
      double gap = walk.at(middle).distanceTo(plant.at());
      boolean feeder = gap > rules.reachM();
      for (int k = 0; k < here; k++) {
        double along = middle + (k - (here - 1) / 2.0) * rules.spacingM();
        along = Math.max(0, Math.min(end, along));
        outlets.add(
            new Outlet(
                plant.id() + "." + side.prefix + (k + 1),
                plant.plant(),
                plant.emitter(),
                feeder ? plant.at() : walk.at(along),
                lead + along,
                feeder ? gap : 0));
      }
    }
    return outlets;
  }

  /** Emitters of a plant on one side: shared evenly, an odd one on the side nearer the plant. */
  private int share(Served plant, Side side) {
    if (side == Side.ONLY) {
      return plant.count();
    }
    int half = plant.count() / 2;
    boolean odd = plant.count() % 2 == 1;
    return odd && side == nearer(plant) ? half + 1 : half;
  }

  private Side nearer(Served plant) {
    double station = row.stationOf(plant.at());
    Point before = row.at(station - 0.05);
    Point after = row.at(station + 0.05);
    double cross =
        (after.x() - before.x()) * (plant.at().y() - before.y())
            - (after.y() - before.y()) * (plant.at().x() - before.x());
    if (Math.abs(cross) < 1e-6) {
      // A plant on the centre line has no nearer side; taking turns keeps the sides in balance.
      return plant.plant() % 2 == 0 ? Side.LEFT : Side.RIGHT;
    }
    return cross > 0 ? Side.LEFT : Side.RIGHT;
  }
}
