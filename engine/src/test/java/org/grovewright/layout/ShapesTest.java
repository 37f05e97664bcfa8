package org.grovewright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.junit.jupiter.api.Test;

class ShapesTest {
  private static final Point ORIGIN = new Point(0, 0);

  @Test
  void measuresToTheEdgeOfEachFootprint() {
    Shape square =
        new Shape.Area(List.of(new Point(0, 0), new Point(4, 0), new Point(4, 4), new Point(0, 4)));
    assertThat(Shapes.distance(square, new Point(7, 8))).isCloseTo(5, within(1e-12));
    assertThat(Shapes.distance(square, new Point(2, 2))).isZero();
    Shape fence = new Shape.Line(List.of(new Point(0, 0), new Point(10, 0), new Point(10, 10)));
    assertThat(Shapes.distance(fence, new Point(4, -3))).isCloseTo(3, within(1e-12));
    assertThat(Shapes.distance(fence, new Point(13, 14))).isCloseTo(5, within(1e-12));
    Shape tank = new Shape.Round(ORIGIN, 1.5);
    assertThat(Shapes.distance(tank, new Point(3, 4))).isCloseTo(3.5, within(1e-12));
    assertThat(Shapes.distance(tank, new Point(1, 0))).isZero();
    assertThat(Shapes.of(new Shape.Round(ORIGIN, 0)).distance(Shapes.point(new Point(3, 4))))
        .isCloseTo(5, within(1e-12));
  }

  @Test
  void mendsAnOutlineThatCrossesItself() {
    List<Point> bowTie =
        List.of(new Point(0, 0), new Point(2, 2), new Point(2, 0), new Point(0, 2));
    assertThat(Shapes.isSimple(bowTie)).isFalse();
    assertThat(Shapes.outline(bowTie).getArea()).isCloseTo(2, within(1e-12));
    assertThat(Shapes.outline(List.of(ORIGIN, new Point(1, 1))).isEmpty()).isTrue();
    assertThat(Shapes.isSimple(List.of())).isFalse();
  }

  @Property
  void aDiscHasTheAreaOfItsCircle(@ForAll @DoubleRange(min = 0.01, max = 50) double radius) {
    assertThat(Shapes.disc(new Point(3, -2), radius).getArea())
        .isCloseTo(Math.PI * radius * radius, within(1e-9 * radius * radius));
  }

  @Property
  void theUnionOfTwoDiscsIsBothLessTheLens(
      @ForAll @DoubleRange(min = 0.5, max = 4) double r,
      @ForAll @DoubleRange(min = 0.5, max = 4) double s,
      @ForAll @DoubleRange(min = 0.1, max = 9) double distance) {
    double area =
        Shapes.union(List.of(Shapes.disc(ORIGIN, r), Shapes.disc(new Point(distance, 0), s)))
            .getArea();
    double exact = Math.PI * (r * r + s * s) - lens(r, s, distance);
    assertThat(area).isCloseTo(exact, within(0.003 * exact));
  }

  /** Common area of two circles, from the two circular segments (plane geometry). */
  static double lens(double r, double s, double d) {
    if (d >= r + s) {
      return 0;
    }
    if (d <= Math.abs(r - s)) {
      double small = Math.min(r, s);
      return Math.PI * small * small;
    }
    double a = 2 * acos((d * d + r * r - s * s) / (2 * d * r));
    double b = 2 * acos((d * d + s * s - r * r) / (2 * d * s));
    return r * r / 2 * (a - Math.sin(a)) + s * s / 2 * (b - Math.sin(b));
  }

  /** Arc cosine of a ratio that rounding may have put just outside its range. */
  private static double acos(double ratio) {
    return Math.acos(Math.max(-1, Math.min(1, ratio)));
  }
}
