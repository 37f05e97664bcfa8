package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.junit.jupiter.api.Test;

class MainRouteTest {
  private static final double CLEAR_M = 0.3;
  private static final Point FROM = new Point(0, 0);
  private static final Point TO = new Point(10, 0);

  private static Fixture box(FixtureKind kind, double x0, double y0, double x1, double y1) {
    return new Fixture(
        kind + "-" + x0,
        kind,
        new Shape.Area(
            List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1))),
        2.5,
        OptionalDouble.empty());
  }

  private static List<Point> way(List<Fixture> fixtures, Point from, Point to) {
    List<Point> way = new ArrayList<>(List.of(from));
    way.addAll(new MainRoute(fixtures, CLEAR_M).bends(from, to));
    way.add(to);
    return way;
  }

  private static double inside(List<Point> way, Fixture fixture) {
    return Shapes.of(new Shape.Line(way)).intersection(Shapes.of(fixture.shape())).getLength();
  }

  /** Plane geometry, by hand: two slopes to the corners (4, 1) and (6, 1) and the wall between. */
  @Test
  void goesRoundAShedByLittleMoreThanTheTightestWay() {
    Fixture shed = box(FixtureKind.BUILDING, 4, -1, 6, 1);
    List<Point> way = way(List.of(shed), FROM, TO);
    assertThat(inside(way, shed)).isLessThan(0.01);
    double tightest = 2 * Math.sqrt(17) + 2;
    double roundWideCorners = 2 * Math.sqrt(16 + 1.3 * 1.3) + 2;
    assertThat(Paths.length(way)).isBetween(tightest, roundWideCorners + 1e-9);
  }

  @Test
  void takesTheShorterSide() {
    Fixture shed = box(FixtureKind.BUILDING, 4, -5, 6, 1);
    assertThat(way(List.of(shed), FROM, TO).get(1).y()).isPositive();
  }

  @Test
  void leadsBetweenTwoThings() {
    List<Fixture> things =
        List.of(box(FixtureKind.BUILDING, 2, -1, 3, 8), box(FixtureKind.SEPTIC_FIELD, 6, -8, 7, 1));
    List<Point> way = way(things, FROM, TO);
    things.forEach(thing -> assertThat(inside(way, thing)).isLessThan(0.01));
    assertThat(way.size()).isGreaterThan(3);
  }

  /** A tap is often on the wall of the house: the wall it touches is no obstacle to leaving it. */
  @Test
  void leavesATapOnAWall() {
    Fixture house = box(FixtureKind.BUILDING, -4, -3, 0, 3);
    assertThat(new MainRoute(List.of(house), CLEAR_M).bends(FROM, TO)).isEmpty();
  }

  @Test
  void goesStraightWhereNothingBlocksIt() {
    List<Fixture> things =
        List.of(box(FixtureKind.FENCE, 4, -1, 6, 1), box(FixtureKind.BUILDING, 4, 2, 6, 3));
    assertThat(Paths.length(way(things, FROM, TO)))
        .isCloseTo(10, org.assertj.core.api.Assertions.within(1e-12));
  }

  /** Where there is no free way the straight one stays, and the plan says what it crosses. */
  @Test
  void staysStraightWhereThereIsNoFreeWay() {
    Fixture yard = box(FixtureKind.PAVING, -2, -2, 2, 2);
    assertThat(new MainRoute(List.of(yard), CLEAR_M).bends(FROM, TO)).isEmpty();
  }
}
