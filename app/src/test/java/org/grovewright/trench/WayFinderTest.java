package org.grovewright.trench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.grovewright.trench.Grounds.RULES;
import static org.grovewright.trench.Grounds.box;
import static org.grovewright.trench.Grounds.cable;
import static org.grovewright.trench.Grounds.finder;
import static org.grovewright.trench.Grounds.tree;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.junit.jupiter.api.Test;

/** Plane geometry by hand. */
class WayFinderTest {
  private static final Point FROM = new Point(0, 0);
  private static final Point TO = new Point(10, 0);

  private static List<Point> way(Point from, Point to, Fixture... fixtures) {
    return finder(fixtures).find(from, to, Dug.NONE).path();
  }

  private static double distance(List<Point> way, Fixture fixture) {
    return Shapes.of(new Shape.Line(way)).distance(Shapes.of(fixture.shape()));
  }

  private static double inside(List<Point> way, Fixture fixture) {
    return Shapes.of(new Shape.Line(way)).intersection(Shapes.of(fixture.shape())).getLength();
  }

  /** Two slopes to the mitred corners (4 - c, 1 + c) and (6 + c, 1 + c), and the wall between. */
  @Test
  void goesRoundAShedWithRoomAllAlong() {
    Fixture shed = box(FixtureKind.BUILDING, 4, -1.5, 6, 1);
    List<Point> way = way(FROM, TO, shed);
    double c = RULES.clearM();
    double tightest = 2 * Math.hypot(4 - c, 1 + c) + 2 + 2 * c;
    assertThat(Planes.length(way)).isCloseTo(tightest, within(0.01));
    assertThat(distance(way, shed)).isGreaterThanOrEqualTo(c);
  }

  @Test
  void leadsBetweenTwoThings() {
    Fixture one = box(FixtureKind.BUILDING, 2, -1, 3, 8);
    Fixture two = box(FixtureKind.SEPTIC_FIELD, 6, -8, 7, 1);
    List<Point> way = way(FROM, TO, one, two);
    assertThat(distance(way, one)).isGreaterThanOrEqualTo(RULES.clearM());
    assertThat(distance(way, two)).isGreaterThanOrEqualTo(RULES.clearM());
    assertThat(way.size()).isGreaterThan(3);
  }

  /** A gap of half a metre between two walls is too narrow for 0.3 m of room on both sides. */
  @Test
  void takesNoGapThatIsTooNarrow() {
    List<Point> way =
        way(
            FROM,
            TO,
            box(FixtureKind.BUILDING, 4, -3, 6, -0.25),
            box(FixtureKind.BUILDING, 4, 0.25, 6, 3));
    assertThat(way).anyMatch(p -> Math.abs(p.y()) > 3);
  }

  @Test
  void leavesATapOnAWallStraightOut() {
    Fixture house = box(FixtureKind.BUILDING, -4, -3, 0, 3);
    assertThat(way(FROM, TO, house)).containsExactly(FROM, TO);
  }

  /** Along the wall there is no room; the way leaves it first. */
  @Test
  void doesNotCreepAlongTheWallOfItsTap() {
    Fixture house = box(FixtureKind.BUILDING, -4, -30, 0, 30);
    List<Point> way = way(FROM, new Point(0, 20), house);
    double near = 0;
    for (int i = 1; i < way.size(); i++) {
      for (double share = 0; share < 1; share += 0.01) {
        near +=
            Planes.between(way.get(i - 1), way.get(i), share).x() < RULES.clearM() - 1e-6
                ? way.get(i - 1).distanceTo(way.get(i)) / 100
                : 0;
      }
    }
    assertThat(near).isLessThan(4 * RULES.clearM());
  }

  @Test
  void goesThroughWhereThereIsNoWayRound() {
    Fixture yard =
        new Fixture(
            "yard wall",
            FixtureKind.WALL,
            new Shape.Line(
                List.of(
                    new Point(-3, -3),
                    new Point(3, -3),
                    new Point(3, 3),
                    new Point(-3, 3),
                    new Point(-3, -3))),
            2,
            java.util.OptionalDouble.empty());
    assertThat(way(FROM, TO, yard)).containsExactly(FROM, TO);
  }

  @Test
  void keepsToTheLand() {
    List<Point> land =
        List.of(
            new Point(-1, -1),
            new Point(11, -1),
            new Point(11, 6),
            new Point(5.5, 6),
            new Point(5.5, 2),
            new Point(4.5, 2),
            new Point(4.5, 6),
            new Point(-1, 6));
    GroundMap map = new GroundMap(List.of(), land, List.of(), List.of(), RULES);
    List<Point> way =
        new WayFinder(map, Grounds.COSTS).find(new Point(0, 5), new Point(10, 5), Dug.NONE).path();
    assertThat(Shapes.of(new Shape.Line(way)).difference(Shapes.outline(land)).getLength())
        .isLessThan(0.03);
    assertThat(Planes.length(way)).isCloseTo(1 + 2 * Math.hypot(4.5, 3), within(0.02));
  }

  /** A path of a metre is cheaper to open than to walk round for 40 m, one end of it is not. */
  @Test
  void opensPavingOnlyWhereThatIsCheaper() {
    Fixture path = box(FixtureKind.PAVING, 4.5, -40, 5.5, 40);
    assertThat(inside(way(FROM, TO, path), path)).isBetween(0.99, 1.05);
    Fixture end = box(FixtureKind.PAVING, 4.5, -40, 5.5, 1);
    assertThat(inside(way(FROM, TO, end), end)).isZero();
  }

  @Test
  void crossesAServiceAtARightAngleAndOnlyOnce() {
    Fixture cable = cable(0.6, new Point(-20, 0), new Point(40, 0));
    List<Point> way = way(new Point(0, -6), new Point(10, 6), cable);
    GroundMap map = Grounds.map(List.of(cable));
    Trench trench =
        new TrenchMaker(
                map,
                Grounds.CATALOGUE,
                RULES,
                Grounds.NO_FROST,
                org.grovewright.layout.Terrain.LEVEL)
            .make(
                List.of(
                    new Trench.Run(
                        "zone-1", Grounds.CATALOGUE.pipes().get("pipe.pe100-pn16-25"), way)),
                way.get(0));
    assertThat(trench.crossings()).hasSize(1);
    assertThat(Math.toDegrees(trench.crossings().get(0).angleRad())).isBetween(89.0, 90.0);
    assertThat(trench.segments()).anyMatch(s -> s.ground().digTask().equals("dig-trench-service"));
  }

  @Test
  void keepsAwayFromAServiceThatItNeedNotCross() {
    Fixture cable = cable(0.6, new Point(2, 0.2), new Point(8, 0.2));
    List<Point> way = way(FROM, TO, cable);
    assertThat(inside(way, cable)).isZero();
    double near = 0;
    for (int i = 1; i < way.size(); i++) {
      for (double share = 0.005; share < 1; share += 0.01) {
        Point here = Planes.between(way.get(i - 1), way.get(i), share);
        near +=
            Shapes.distance(cable.shape(), here) < RULES.serviceClearM() - 0.01
                ? way.get(i - 1).distanceTo(way.get(i)) / 100
                : 0;
      }
    }
    assertThat(near).isLessThan(0.1);
  }

  /** Root zone of 12 trunk diameters; the chord through its edge is dearer than the way round. */
  @Test
  void goesRoundTheRootsOfATreeThatStandsBesideTheWay() {
    Fixture tree = tree(5, 1.5, 0.1);
    List<Point> way = way(FROM, TO, tree);
    assertThat(distance(way, tree)).isGreaterThan(2.4 - 0.1 - 0.02);
  }

  /** Every leg keeps its room from everything, except where it leaves its ends. */
  @Property(tries = 300)
  void keepsItsRoomAllAlong(@ForAll long seed) {
    Random random = new Random(seed);
    List<Fixture> things = new ArrayList<>();
    for (int i = random.nextInt(7); i >= 0; i--) {
      double x = 2 + random.nextDouble() * 14;
      double y = random.nextDouble() * 14 - 7;
      if (random.nextInt(4) == 0) {
        things.add(tree(x, y, 0.05 + random.nextDouble() * 0.3));
      } else {
        things.add(
            box(
                random.nextBoolean() ? FixtureKind.BUILDING : FixtureKind.TANK,
                x,
                y,
                x + 0.3 + random.nextDouble() * 3,
                y + 0.3 + random.nextDouble() * 4));
      }
    }
    Point to = new Point(23, random.nextDouble() * 6 - 3);
    List<Point> way = finder(things.toArray(Fixture[]::new)).find(FROM, to, Dug.NONE).path();
    assertThat(way.get(0)).isEqualTo(FROM);
    assertThat(way.get(way.size() - 1)).isEqualTo(to);
    for (Fixture thing : things) {
      assertThat(distance(way, thing)).as(thing.id()).isGreaterThanOrEqualTo(RULES.clearM() - 1e-6);
    }
  }
}
