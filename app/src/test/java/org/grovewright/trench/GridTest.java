package org.grovewright.trench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.grovewright.trench.Grounds.COSTS;
import static org.grovewright.trench.Grounds.box;
import static org.grovewright.trench.Grounds.tree;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Random;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Ways against Dijkstra's algorithm (1959) on a fine grid that knows nothing of corners: each cell
 * has its cost by where its middle lies, and steps go to 80 neighbours.
 */
class GridTest {
  private static final double STEP_M = 0.1;
  private static final double LEFT = -1;
  private static final double LOW = -6;
  private static final int WIDE = 140;
  private static final int HIGH = 120;
  private static final int[][] STEPS = steps();

  private static int[][] steps() {
    List<int[]> steps = new ArrayList<>();
    for (int dx = -5; dx <= 5; dx++) {
      for (int dy = -5; dy <= 5; dy++) {
        if (gcd(Math.abs(dx), Math.abs(dy)) == 1) {
          steps.add(new int[] {dx, dy});
        }
      }
    }
    return steps.toArray(int[][]::new);
  }

  private static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }

  private static List<Fixture> things(long seed) {
    Random random = new Random(seed);
    List<Fixture> things = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      double x = 1.5 + random.nextDouble() * 7;
      double y = random.nextDouble() * 6 - 4;
      double wide = 0.5 + random.nextDouble() * 2;
      double high = 0.5 + random.nextDouble() * 3;
      switch (random.nextInt(4)) {
        case 0 -> things.add(tree(x, y, 0.05 + random.nextDouble() * 0.1));
        case 1 -> things.add(box(FixtureKind.LAWN, x, y, x + wide, y + high));
        case 2 -> things.add(box(FixtureKind.PAVING, x, y, x + wide / 2, y + 2 * high));
        default -> things.add(box(FixtureKind.BUILDING, x, y, x + wide, y + high));
      }
    }
    return things;
  }

  /** Distance from a box with square corners, as room with mitred corners is measured. */
  private static double squareDistance(Fixture box, Point place) {
    List<Point> corners = ((Shape.Area) box.shape()).corners();
    Point low = corners.get(0);
    Point high = corners.get(2);
    return Math.max(
        0,
        Math.max(
            Math.max(low.x() - place.x(), place.x() - high.x()),
            Math.max(low.y() - place.y(), place.y() - high.y())));
  }

  /** Money for a metre at a place, by distances to the shapes as they were described. */
  private static double perM(List<Fixture> things, Point place) {
    double most = COSTS.weightPerM(TrenchGround.Kind.SOIL, false);
    for (Fixture thing : things) {
      double distance =
          thing.shape() instanceof Shape.Area
              ? squareDistance(thing, place)
              : Shapes.distance(thing.shape(), place);
      boolean vehicles = GroundMap.bearsVehicles(thing);
      switch (thing.kind()) {
        case BUILDING -> most = distance < Grounds.RULES.clearM() ? 1e6 : most;
        case LAWN ->
            most =
                distance > 0
                    ? most
                    : Math.max(most, COSTS.weightPerM(TrenchGround.Kind.LAWN, vehicles));
        case PAVING ->
            most =
                distance > Grounds.RULES.clearM()
                    ? most
                    : Math.max(most, COSTS.weightPerM(TrenchGround.Kind.PAVING, vehicles));
        default -> {
          double trunk = ((Shape.Round) thing.shape()).radiusM();
          if (distance < Grounds.RULES.clearM()) {
            most = 1e6;
          } else if (distance + trunk < Grounds.RULES.rootTimes() * 2 * trunk) {
            most = Math.max(most, COSTS.weightPerM(TrenchGround.Kind.ROOTS, false));
          }
        }
      }
    }
    return COSTS.pipePerM() + most;
  }

  private static Point at(int cell) {
    return new Point(LEFT + cell % WIDE * STEP_M, LOW + cell / WIDE * STEP_M);
  }

  private static double onGrid(List<Fixture> things, int from, int to) {
    double[] perM = new double[WIDE * HIGH];
    for (int i = 0; i < perM.length; i++) {
      perM[i] = perM(things, at(i));
    }
    double[] cost = new double[perM.length];
    Arrays.fill(cost, Double.POSITIVE_INFINITY);
    cost[from] = 0;
    PriorityQueue<double[]> open = new PriorityQueue<>((a, b) -> Double.compare(a[0], b[0]));
    open.add(new double[] {0, from});
    while (!open.isEmpty()) {
      double[] next = open.poll();
      int here = (int) next[1];
      if (next[0] > cost[here]) {
        continue;
      }
      if (here == to) {
        return next[0];
      }
      for (int[] step : STEPS) {
        int x = here % WIDE + step[0];
        int y = here / WIDE + step[1];
        if (x < 0 || y < 0 || x >= WIDE || y >= HIGH) {
          continue;
        }
        int there = y * WIDE + x;
        double sum = 0;
        int parts = 2 * Math.max(Math.abs(step[0]), Math.abs(step[1]));
        for (int k = 0; k <= parts; k++) {
          int cell =
              (int) Math.round(here / WIDE + step[1] * (double) k / parts) * WIDE
                  + (int) Math.round(here % WIDE + step[0] * (double) k / parts);
          sum += perM[cell] / (parts + 1);
        }
        double whole = next[0] + sum * STEP_M * Math.hypot(step[0], step[1]);
        if (whole < cost[there]) {
          cost[there] = whole;
          open.add(new double[] {whole, there});
        }
      }
    }
    return cost[to];
  }

  /**
   * The grid's way is at most dearer by its coarseness, and ours may not be dearer than it by more
   * than a cell's width of room here and there.
   */
  @ParameterizedTest
  @ValueSource(
      longs = {
        1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24
      })
  void noWayOnAFineGridIsCheaper(long seed) {
    List<Fixture> things = things(seed);
    int from = 60 * WIDE + 10;
    int to = 60 * WIDE + 120;
    double grid = onGrid(things, from, to);
    double ours =
        Grounds.finder(things.toArray(Fixture[]::new)).find(at(from), at(to), Dug.NONE).cost();
    assertThat(ours).isLessThanOrEqualTo(grid * 1.015).isGreaterThan(grid * 0.95);
  }
}
