package org.grovewright.trench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.grovewright.trench.Grounds.COSTS;
import static org.grovewright.trench.Grounds.box;
import static org.grovewright.trench.Grounds.finder;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Point;
import org.junit.jupiter.api.Test;

class MainWaysTest {
  private static final Pipe MAIN = Grounds.CATALOGUE.pipes().get("pipe.pe100-pn16-25");

  private static Trench trench(MainWays.Laid laid, List<Fixture> things, Point start) {
    List<Trench.Run> runs = new ArrayList<>();
    for (int z = 0; z < laid.legs().size(); z++) {
      for (List<Point> leg : laid.legs().get(z)) {
        runs.add(new Trench.Run("zone-" + (z + 1), MAIN, leg));
      }
    }
    return new TrenchMaker(
            Grounds.map(things),
            Grounds.CATALOGUE,
            Grounds.RULES,
            Grounds.NO_FROST,
            org.grovewright.layout.Terrain.LEVEL)
        .make(runs, start);
  }

  /**
   * Two feeds side by side far away: the trench forks. With p for a metre of pipe and t for a metre
   * of trench the cheapest fork between the axis and feeds at distance d has the angle a from the
   * axis with 2 (p + t) cos a = 2 p + t, by setting the derivative of the cost to nought.
   */
  @Test
  void forksTheTrenchForTwoZonesAtTheCheapestPlace() {
    double d = 4;
    double far = 30;
    MainWays ways = new MainWays(finder(), List.of(new Point(0, 0)));
    MainWays.Laid laid = ways.lay(List.of(List.of(new Point(far, d)), List.of(new Point(far, -d))));
    double p = COSTS.pipePerM();
    double t = COSTS.trenchPerM(TrenchGround.Kind.SOIL, false);
    double cosine = (2 * p + t) / (2 * (p + t));
    double sine = Math.sqrt(1 - cosine * cosine);
    double trunk = far - d * cosine / sine;
    double best = trunk * (2 * p + t) + 2 * d / sine * (p + t);
    // Shared ways are measured to a tenth of a millimetre.
    assertThat(laid.cost()).isCloseTo(best, within(1e-3 * best));
    assertThat(laid.cost()).isGreaterThan(best * (1 - 1e-6));
    double apart = 2 * Math.hypot(far, d) * (p + t);
    assertThat(laid.cost()).isLessThan(apart);
  }

  @Test
  void laysTheSecondMainInTheTrenchOfTheFirst() {
    MainWays ways = new MainWays(finder(), List.of(new Point(0, 0)));
    MainWays.Laid laid = ways.lay(List.of(List.of(new Point(10, 0)), List.of(new Point(20, 0))));
    Trench trench = trench(laid, List.of(), new Point(0, 0));
    assertThat(trench.lengthM()).isCloseTo(20, within(1e-6));
    assertThat(trench.segments()).extracting(Trench.Segment::number).containsExactly(1, 2);
    assertThat(trench.segments().get(0).pipes()).hasSize(2);
    assertThat(trench.segments().get(1).pipes()).hasSize(1);
  }

  /** Segments add up to the trench: no place is counted twice, none is left out. */
  @Property(tries = 120)
  void sharedTrenchesNeverCostMoreThanSeparateOnes(@ForAll long seed) {
    Random random = new Random(seed);
    List<Fixture> things = new ArrayList<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      double x = 3 + random.nextDouble() * 20;
      double y = random.nextDouble() * 16 - 8;
      things.add(
          box(
              random.nextBoolean() ? FixtureKind.BUILDING : FixtureKind.PAVING,
              x,
              y,
              x + 0.5 + random.nextDouble() * 3,
              y + 0.5 + random.nextDouble() * 4));
    }
    List<List<Point>> feeds = new ArrayList<>();
    for (int zone = random.nextInt(3); zone >= 0; zone--) {
      List<Point> reached = new ArrayList<>();
      for (int k = random.nextInt(2); k >= 0; k--) {
        reached.add(new Point(26 + random.nextDouble() * 10, random.nextDouble() * 20 - 10));
      }
      feeds.add(reached);
    }
    Point supply = new Point(0, 0);
    WayFinder finder = finder(things.toArray(Fixture[]::new));
    MainWays ways = new MainWays(finder, List.of(supply));
    MainWays.Laid shared = ways.lay(feeds);
    double apart = 0;
    for (List<Point> zone : feeds) {
      apart += ways.lay(List.of(zone)).cost();
    }
    assertThat(shared.cost()).isLessThanOrEqualTo(apart + 1e-6);
    Trench trench = trench(shared, things, supply);
    double pipes = 0;
    double inSegments = 0;
    for (List<List<Point>> legs : shared.legs()) {
      for (List<Point> leg : legs) {
        pipes += Planes.length(leg);
      }
    }
    for (Trench.Segment segment : trench.segments()) {
      inSegments += segment.lengthM() * segment.pipes().size();
    }
    assertThat(inSegments).isCloseTo(pipes, within(1e-3 * (1 + pipes)));
  }
}
