package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Market;
import org.grovewright.model.Point;
import org.grovewright.model.Watering.Run;
import org.junit.jupiter.api.Test;

/** Closed-form geometry of tubing along a row. */
class LateralLayoutTest {
  private static final EmitterType EMITTER =
      new EmitterType(
          "emitter.test",
          "test emitter",
          4 / 3.6e6,
          100_000,
          0.5,
          false,
          50_000,
          300_000,
          0.05,
          OptionalDouble.empty(),
          0.8,
          130e-6,
          0.1,
          EmitterType.Pattern.DRIPPER,
          Market.ANY,
          "made up for this test");
  private static final LateralLayout.Rules RULES = new LateralLayout.Rules(0.3, 0.4, 0.5, 0.6);
  private static final List<Point> ROW = List.of(new Point(0, 0), new Point(20, 0));

  private static LateralLayout.Served plant(int index, double x, double y, int count) {
    return new LateralLayout.Served(index, "P" + index, new Point(x, y), EMITTER, count);
  }

  @Test
  void deadEndRunsAlongTheLeftOfTheRowToTheLastEmitterAndItsTail() {
    List<Line> lines =
        LateralLayout.lay(
            "A", ROW, Run.DEAD_END, List.of(plant(0, 5, 0, 2), plant(1, 15, 0, 2)), RULES);

    assertThat(lines).hasSize(1);
    Line line = lines.get(0);
    assertThat(line.closed()).isFalse();
    // 0.3 m across from the feed, then to 15 m, half an emitter spacing and the tail.
    assertThat(line.lengthM()).isCloseTo(0.3 + 15 + 0.2 + 0.5, within(1e-9));
    assertThat(line.outlets())
        .extracting(Outlet::alongM)
        .usingComparatorForType((a, b) -> Math.abs(a - b) < 1e-9 ? 0 : 1, Double.class)
        .containsExactly(0.3 + 4.8, 0.3 + 5.2, 0.3 + 14.8, 0.3 + 15.2);
    assertThat(line.outlets().get(0).at().y()).isCloseTo(0.3, within(1e-9));
  }

  @Test
  void loopGoesDownOneSideAndBackUpTheOther() {
    List<Line> lines = LateralLayout.lay("A", ROW, Run.LOOP, List.of(plant(0, 5, 0, 4)), RULES);

    Line line = lines.get(0);
    assertThat(line.closed()).isTrue();
    double side = 5 + 0.2 + 0.5;
    assertThat(line.lengthM()).isCloseTo(2 * side + 0.6 + 2 * 0.3, within(1e-9));
    assertThat(line.outlets()).hasSize(4);
    // By symmetry the outlets of the two sides lie equally far from the two ends.
    for (int i = 0; i < 2; i++) {
      double fromStart = line.outlets().get(i).alongM();
      double fromEnd = line.lengthM() - line.outlets().get(3 - i).alongM();
      assertThat(fromEnd).isCloseTo(fromStart, within(1e-9));
    }
    assertThat(line.path().get(0)).isEqualTo(line.path().get(line.path().size() - 1));
  }

  @Test
  void anOddEmitterGoesToTheSideNearerThePlant() {
    List<Line> lines =
        LateralLayout.lay("A", ROW, Run.TWO_SIDED, List.of(plant(0, 5, -0.2, 3)), RULES);

    assertThat(lines.get(0).outlets()).hasSize(1);
    assertThat(lines.get(1).outlets()).hasSize(2);
    assertThat(lines.get(1).outlets().get(0).at().y()).isCloseTo(-0.3, within(1e-9));
  }

  @Test
  void aPlantOutOfReachOfTheTubingGetsAFeederTube() {
    List<Line> lines =
        LateralLayout.lay("A", ROW, Run.DEAD_END, List.of(plant(0, 5, 1.5, 1)), RULES);

    Outlet outlet = lines.get(0).outlets().get(0);
    assertThat(outlet.feederM()).isCloseTo(1.2, within(1e-9));
    assertThat(outlet.at()).isEqualTo(new Point(5, 1.5));
  }

  @Test
  void parallelOfABentPathKeepsItsDistanceAtTheCorner() {
    List<Point> bent = List.of(new Point(0, 0), new Point(10, 0), new Point(10, 10));

    List<Point> left = Paths.parallel(bent, 1);

    assertThat(left).containsExactly(new Point(0, 1), new Point(9, 1), new Point(9, 10));
  }

  private static List<Line> drawn(Run run, List<Point> way, List<LateralLayout.Served> plants) {
    LateralWish wish =
        new LateralWish(
            "A",
            new org.grovewright.model.Row("A", way),
            run,
            List.of(),
            java.util.Optional.empty(),
            java.util.Optional.empty(),
            java.util.OptionalInt.empty(),
            java.util.Optional.empty(),
            0.3,
            LateralWish.Kept.WAY);
    return LateralLayout.lay(wish, plants, RULES);
  }

  @Test
  void aDrawnDeadEndIsKeptPointByPointToItsEnd() {
    List<Point> way =
        List.of(new Point(0, 1), new Point(10, 1), new Point(10, 4), new Point(18, 4));
    List<Line> lines = drawn(Run.DEAD_END, way, List.of(plant(0, 5, 0.8, 2), plant(1, 12, 6, 1)));
    Line line = lines.get(0);
    assertThat(line.path()).isEqualTo(way);
    assertThat(line.closed()).isFalse();
    assertThat(line.lengthM()).isCloseTo(21, within(1e-9));
    assertThat(line.outlets())
        .extracting(Outlet::alongM)
        .usingComparatorForType((a, b) -> Math.abs(a - b) < 1e-9 ? 0 : 1, Double.class)
        .containsExactly(4.8, 5.2, 15.0);
    // The first plant is near enough; the other gets a feeder of 2 m.
    assertThat(line.outlets().get(0).feederM()).isZero();
    assertThat(line.outlets().get(2).feederM()).isCloseTo(2, within(1e-9));
  }

  @Test
  void aDrawnLoopIsClosedAndPassesAPlantOnBothSides() {
    List<Point> way = List.of(new Point(0, 0), new Point(10, 0), new Point(10, 1), new Point(0, 1));
    List<Line> lines = drawn(Run.LOOP, way, List.of(plant(0, 4, 0.5, 4)));
    Line line = lines.get(0);
    assertThat(line.closed()).isTrue();
    assertThat(line.lengthM()).isCloseTo(22, within(1e-9));
    assertThat(line.path().get(4)).isEqualTo(way.get(0));
    // Two emitters at 4 m on the way out, two at 4 m before the feed on the way back, which begins
    // 11 m and a half of the loop's short end later: 10 + 1 + 6 = 17 m.
    assertThat(line.outlets())
        .extracting(Outlet::alongM)
        .usingComparatorForType((a, b) -> Math.abs(a - b) < 1e-9 ? 0 : 1, Double.class)
        .containsExactly(3.8, 4.2, 16.8, 17.2);
    assertThat(line.outlets().get(3).at().y()).isCloseTo(1, within(1e-9));
  }

  @Test
  void aDrawnTwoSidedLineKeepsItsDistanceFromTheWayDownItsMiddle() {
    List<Line> lines = drawn(Run.TWO_SIDED, ROW, List.of(plant(0, 5, 0, 2)));
    assertThat(lines).hasSize(2);
    // Down to the end of the way, though the only plant stands at 5 m.
    assertThat(lines.get(0).lengthM()).isCloseTo(0.3 + 20, within(1e-9));
    assertThat(lines.get(1).path().get(1).y()).isCloseTo(-0.3, within(1e-9));
  }
}
