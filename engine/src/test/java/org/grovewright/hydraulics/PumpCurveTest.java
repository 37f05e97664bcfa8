package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.grovewright.hydraulics.HydraulicProblem.Kind;
import org.grovewright.hydraulics.PumpCurve.Pieces;
import org.grovewright.hydraulics.PumpCurve.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Pumps with a curve of straight pieces. */
class PumpCurveTest {
  private static final double LPH = 1e-3 / 3600;
  private static final Roughness PLASTIC = Roughness.hazenWilliams(140);

  /** 30 m at 2 L/s, 28 m at 4, 20 m at 6 and 5 m at 8; straight on it is 32 m at no flow. */
  private static final Pieces CURVE = litres(2, 30, 4, 28, 6, 20, 8, 5);

  /** A curve from flows in L/s and heads in m by turns. */
  private static Pieces litres(double... values) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < values.length; i += 2) {
      points.add(new Point(values[i] * 1e-3, values[i + 1]));
    }
    return new Pieces(points);
  }

  private static Network.Builder pumped(PumpCurve curve) {
    return Network.builder(FrictionFormula.HAZEN_WILLIAMS)
        .reservoir("pond", 0)
        .junction("out", 0)
        .pump("pump", "pond", "out", curve);
  }

  private static Network between(double level, double loss) {
    return pumped(CURVE)
        .reservoir("tank", level)
        .filter("loss", "out", "tank", LossCurve.power(loss, 2))
        .build();
  }

  private static Network demanding(PumpCurve curve, double flow) {
    return pumped(curve)
        .junction("end", 0)
        .pipe("p", "out", "end", 10, 0.1, PLASTIC)
        .demand("end", flow)
        .build();
  }

  @Test
  void runsStraightThroughItsPointsAndOn() {
    assertThat(CURVE.headAt(2e-3)).isCloseTo(30, within(1e-12));
    assertThat(CURVE.headAt(5e-3)).isCloseTo(24, within(1e-12));
    assertThat(CURVE.headAt(6e-3)).isCloseTo(20, within(1e-12));
    assertThat(CURVE.headAt(9e-3)).isCloseTo(-2.5, within(1e-12));
    assertThat(CURVE.headAt(0)).isCloseTo(32, within(1e-12));
    assertThat(CURVE.flowWithoutHead()).isCloseTo(8e-3 + 2e-3 / 3, within(1e-12));
    assertThat(litres(0, 9, 1, -9, 2, -10).flowWithoutHead()).isCloseTo(0.5e-3, within(1e-12));
  }

  /** By the affinity laws at 1.2 of the speed: 1.2 of the flow and 1.44 of the head. */
  @Test
  void flowsGrowWithTheSpeedAndHeadsWithItsSquare() {
    PumpCurve fast = CURVE.atSpeed(1.2);
    assertThat(fast.headAt(6e-3)).isCloseTo(1.44 * 24, within(1e-12));
    assertThat(fast.mostHead()).isCloseTo(1.44 * 30, within(1e-12));
    assertThat(fast.mostFlow()).isCloseTo(9.6e-3, within(1e-12));
    assertThat(Solver.solve(demanding(fast, 6e-3)).head("out")).isCloseTo(34.56, within(1e-4));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1 30",
        "1 30 1 20",
        "1 30 2 30",
        "1 30 2 31",
        "-1 30 2 20",
        "1 0 2 -3",
        "1 3 2 NaN"
      })
  void refusesPointsThatAreNoFallingCurve(String points) {
    double[] values =
        java.util.Arrays.stream(points.split(" ")).mapToDouble(Double::parseDouble).toArray();
    assertThatThrownBy(() -> litres(values))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("curve");
  }

  /**
   * A pump into a tank of a known level behind a loss {@code a Q^2}, computed by hand: on a piece
   * {@code h = H - s Q} the flow is the root of {@code a Q^2 + s Q + level - H = 0}. The second
   * figures give the H and s of the piece that holds the root.
   */
  @ParameterizedTest
  @CsvSource({
    // level, a, H at no flow of the piece, s of the piece
    "18, 8e5, 32, 1000",
    "18, 3e5, 44, 4000",
    "2, 2e5, 65, 7500",
    "-30, 3e5, 65, 7500"
  })
  void worksWhereCurveAndSystemMeet(double level, double a, double headAtNone, double fall) {
    Solution solution = Solver.solve(between(level, a));
    double flow = (-fall + Math.sqrt(fall * fall + 4 * a * (headAtNone - level))) / (2 * a);
    double lift = headAtNone - fall * flow;
    // pump and loss each have 1 mm per m3/s more, so that none is lossless
    assertThat(solution.flow("pump")).isCloseTo(flow, within(5e-8));
    assertThat(solution.head("out")).isCloseTo(lift, within(2e-4));
    assertThat(lift).as("the right piece").isCloseTo(CURVE.headAt(flow), within(1e-9));
    Balances.check(solution);
  }

  /** At 30.5 m the straight line would still give water, but nothing is known of the pump there. */
  @Test
  void standsStillWhereItWouldHaveToLiftMoreThanItsFirstPoint() {
    Solution running = Solver.solve(between(29.5, 0));
    assertThat(running.flow("pump")).isCloseTo(2.5e-3, within(1e-8));
    assertThat(running.notices()).isEmpty();

    Solution still = Solver.solve(between(30.5, 0));
    assertThat(still.flow("pump")).isZero();
    assertThat(still.notices()).extracting(HydraulicProblem::kind).contains(Kind.PUMP_OVERCOME);

    Solution back = Solver.solve(between(40, 0));
    assertThat(back.flow("pump")).isZero();
  }

  /**
   * Emitters that want less than the first point's flow: running, the pump would lift too much;
   * standing, it sees no lift at all. The public-domain engine goes to and fro here without end.
   */
  @Test
  void standsStillForGoodWhereTooLittleIsDrawn() {
    Network network = pumped(CURVE).emitter("out", EmitterCurve.through(1e-3, 30, 0.5)).build();
    PreparedNetwork prepared = Solver.prepare(network);
    Solution still = prepared.solve();
    assertThat(still.flow("pump")).isZero();
    assertThat(still.outflow("out")).isZero();
    assertThat(still.notices())
        .extracting(HydraulicProblem::message)
        .contains(
            "pump pump stands still: to run it would have to lift more than the 30.00 m at which"
                + " its curve begins; it needs a curve that begins at less flow, more to flow out"
                + " behind it, or a pump for less water");
    // emitters for more water are enough, after a small change as after solving anew
    prepared.setEmitter("out#1", EmitterCurve.through(2.5e-3, 30, 0.5));
    Solution again = prepared.resolve();
    assertThat(again.flow("pump")).isGreaterThan(2e-3);
    assertThat(again.head("out")).isCloseTo(CURVE.headAt(again.flow("pump")), within(1e-4));
    prepared.setEmitter("out#1", EmitterCurve.through(1e-3, 30, 0.5));
    assertThat(prepared.resolve().flow("pump")).isZero();
    assertThat(prepared.copy().resolve().flow("pump")).isZero();
  }

  @Test
  void aFixedDemandBelowTheFirstPointNamesThePump() {
    assertThatThrownBy(() -> Solver.solve(demanding(CURVE, 1e-3)))
        .isInstanceOf(HydraulicException.class)
        .hasMessageContaining("pump pump stands still")
        .hasMessageContaining(
            "node end has a fixed demand but is cut off by pumps that stand still or closed"
                + " valves");
    assertThat(Solver.solve(demanding(CURVE, 2e-3)).head("out")).isCloseTo(30, within(1e-4));
  }

  /** The public-domain engine found -2.5 m at 9 L/s and warned of the pump from 8 L/s on. */
  @Test
  void saysWhenMoreIsDrawnThanTheCurveTellsOf() {
    Solution within = Solver.solve(demanding(CURVE, 8e-3));
    assertThat(within.notices()).isEmpty();

    Solution past = Solver.solve(demanding(CURVE, 8.4e-3));
    assertThat(past.head("out")).isCloseTo(2, within(1e-4));
    assertThat(past.notices())
        .extracting(HydraulicProblem::message)
        .containsExactly(
            "pump pump runs past the last point of its curve, at 30240 L/h where the curve ends at"
                + " 28800 L/h; its lift there is only guessed from the last two points");

    Solution over = Solver.solve(demanding(CURVE, 9e-3));
    assertThat(over.head("out")).isCloseTo(-2.5, within(1e-4));
    assertThat(over.notices())
        .extracting(HydraulicProblem::kind)
        .containsExactlyInAnyOrder(Kind.NEGATIVE_PRESSURE, Kind.PUMP_OVERRUN);
    assertThat(over.notices())
        .extracting(HydraulicProblem::message)
        .contains(
            "more water is drawn through pump pump than it can pump: at 32400 L/h it lifts nothing"
                + " but takes 2.50 m away; draw less than 31200 L/h or take a larger pump");
  }

  /** A pump by one point has no head at twice its flow. */
  @Test
  void aPowerLawSaysSoToo() {
    PumpCurve curve = PumpCurve.ofPoint(1e-3, 30);
    assertThat(Solver.solve(demanding(curve, 1.99e-3)).notices()).isEmpty();
    assertThat(Solver.solve(demanding(curve, 2.2e-3)).notices())
        .filteredOn(notice -> notice.kind() == Kind.PUMP_OVERRUN)
        .singleElement()
        .extracting(HydraulicProblem::message)
        .asString()
        .startsWith("more water is drawn through pump pump than it can pump: at 7920 L/h")
        .contains("draw less than 7200 L/h");
  }

  /** Whatever the shape of the curve the pump works on it or stands still. */
  @Test
  void randomNetworksAreSolved() {
    int ran = 0;
    int stood = 0;
    int overrun = 0;
    for (long seed = 0; seed < 1500; seed++) {
      Network network = random(new Random(seed));
      Solution solution = Solver.solve(network);
      Balances.check(solution);
      for (Link link : network.links()) {
        if (link instanceof Link.Pump pump) {
          double lift = solution.head(pump.to()) - solution.head(pump.from());
          double flow = solution.flow(pump.id());
          if (flow > 0) {
            assertThat(lift)
                .as("network " + seed)
                .isCloseTo(pump.curve().headAt(flow), within(1e-4))
                .isLessThan(pump.curve().mostHead() + 1e-3);
            ran++;
            overrun += flow > pump.curve().mostFlow() ? 1 : 0;
          } else {
            stood++;
          }
        }
      }
    }
    assertThat(ran).isGreaterThan(1500);
    assertThat(stood).isGreaterThan(50);
    assertThat(overrun).isGreaterThan(50);
  }

  /** Solving on after a change gives what solving anew does. */
  @Test
  void solvingOnGivesTheSame() {
    for (long seed = 0; seed < 300; seed++) {
      PreparedNetwork prepared = Solver.prepare(random(new Random(seed)));
      prepared.solve();
      for (double level : new double[] {-8, 0, 6, -2}) {
        prepared.setSourceHead("pond", level);
        double[] on = prepared.resolve().heads();
        double[] anew = prepared.copy().solve().heads();
        for (int i = 0; i < on.length; i++) {
          assertThat(on[i]).as("network " + seed + " at " + level).isCloseTo(anew[i], within(1e-3));
        }
      }
    }
  }

  private static Pieces randomCurve(Random chance, double flow, double head) {
    int points = 2 + chance.nextInt(6);
    double q = chance.nextInt(3) == 0 ? 0.3 * flow * chance.nextDouble() : 0;
    double h = head;
    List<Point> list = new ArrayList<>(List.of(new Point(q, h)));
    for (int i = 1; i < points; i++) {
      q += flow / points * (0.05 + 1.9 * chance.nextDouble());
      // steep and flat pieces by turns, so that the curve is neither hollow nor bulging
      h -= head / points * Math.pow(chance.nextDouble(), 3) * 2 + 1e-4;
      list.add(new Point(q, h));
    }
    return new Pieces(list);
  }

  private static Network random(Random chance) {
    double flow = (200 + 3000 * chance.nextDouble()) * LPH;
    double head = 8 + 30 * chance.nextDouble();
    Network.Builder builder =
        pumped(randomCurve(chance, flow, head).atSpeed(0.8 + 0.4 * chance.nextDouble()));
    int nodes = 2 + chance.nextInt(12);
    List<String> ids = new ArrayList<>(List.of("out"));
    for (int i = 0; i < nodes; i++) {
      builder.junction("n" + i, 4 * chance.nextDouble() - 2);
      builder.pipe(
          "p" + i,
          ids.get(chance.nextInt(ids.size())),
          "n" + i,
          1 + 30 * chance.nextDouble(),
          0.015 + 0.02 * chance.nextDouble(),
          PLASTIC);
      double each = 2 * flow / nodes * chance.nextDouble();
      EmitterCurve law =
          switch (chance.nextInt(3)) {
            case 0 -> EmitterCurve.pressureCompensating(each, 5, 40, 0.03);
            case 1 -> EmitterCurve.through(each, 10, chance.nextDouble());
            default -> EmitterCurve.through(each, 10, 0.5);
          };
      builder.emitter("n" + i, law);
      ids.add("n" + i);
    }
    switch (chance.nextInt(4)) {
      case 0 -> {
        // a second pump beside the first
        builder.pump("beside", "pond", "out", randomCurve(chance, flow, head));
      }
      case 1 -> {
        // a second pump behind the first
        builder.junction("high", 2);
        builder.pump("behind", "n1", "high", randomCurve(chance, 0.4 * flow, 0.5 * head));
        builder.emitter("high", EmitterCurve.through(0.3 * flow, 10, 0.5));
      }
      case 2 -> {
        builder.reservoir("tank", 0.6 * head);
        builder.pipe("feed", "tank", "n" + (nodes - 1), 30, 0.02, PLASTIC);
      }
      default -> {
        // one pump alone
      }
    }
    return builder.build();
  }
}
