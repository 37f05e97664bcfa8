package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.grovewright.hydraulics.HydraulicProblem.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SolverTest {
  private static final double LPH = 1e-3 / 3600;
  private static final Roughness PLASTIC = Roughness.hazenWilliams(150);

  private static Network.Builder builder() {
    return Network.builder(FrictionFormula.HAZEN_WILLIAMS);
  }

  @Test
  void onePipeOneDemand() {
    Network network =
        builder()
            .reservoir("tank", 20)
            .junction("tap", 3)
            .pipe("p", "tank", "tap", 100, 0.025, PLASTIC)
            .demand("tap", 5e-4)
            .build();
    Solution solution = Solver.solve(network);
    double loss = Friction.hazenWilliamsLoss(5e-4, 100, 0.025, 150);
    assertThat(solution.head("tap")).isCloseTo(20 - loss, within(1e-6));
    assertThat(solution.pressure("tap")).isCloseTo(17 - loss, within(1e-6));
    assertThat(solution.velocity("p")).isCloseTo(5e-4 / (Math.PI * 0.0125 * 0.0125), within(1e-9));
    assertThat(solution.supplied("tank")).isCloseTo(5e-4, within(1e-12));
    Balances.check(solution);
  }

  /**
   * Friction in a lateral with equal outlets is that of a plain pipe times Christiansen's F (seen
   * in the reference of a university extension calculator): here equal outlets are fixed demands.
   */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 10, 30, 100})
  void lateralWithEqualOutletsLosesChristiansensShare(int outlets) {
    Network.Builder builder = builder().reservoir("in", 30);
    for (int i = 1; i <= outlets; i++) {
      String before = i == 1 ? "in" : "n" + (i - 1);
      builder.junction("n" + i, 0).demand("n" + i, 8 * LPH);
      builder.pipe("p" + i, before, "n" + i, 0.5, 0.016, PLASTIC);
    }
    Solution solution = Solver.solve(builder.build());
    double plain = Friction.hazenWilliamsLoss(outlets * 8 * LPH, outlets * 0.5, 0.016, 150);
    double lost = 30 - solution.head("n" + outlets);
    assertThat(lost).isCloseTo(plain * ReductionFactor.exact(outlets, 1.852), within(1e-6));
    assertThat(lost)
        .isCloseTo(plain * ReductionFactor.christiansen(outlets, 1.852), withinPercentage(0.6));
  }

  /** Table of F for m = 1.85, as printed in irrigation handbooks (e.g. NEH 623-11), from memory. */
  @Test
  void reductionFactorTable() {
    assertThat(ReductionFactor.christiansen(1, 1.85)).isCloseTo(1.0, within(0.006));
    assertThat(ReductionFactor.christiansen(2, 1.85)).isCloseTo(0.639, within(0.002));
    assertThat(ReductionFactor.christiansen(5, 1.85)).isCloseTo(0.457, within(0.001));
    assertThat(ReductionFactor.christiansen(10, 1.85)).isCloseTo(0.402, within(0.001));
    assertThat(ReductionFactor.christiansen(20, 1.85)).isCloseTo(0.376, within(0.001));
    assertThat(ReductionFactor.christiansen(100, 1.85)).isCloseTo(0.356, within(0.001));
  }

  /**
   * The two-loop network of Alperovits and Shamir (1977) with the diameters most often found best
   * for it; node pressures as the literature prints them (e.g. Savic and Walters, 1997), from
   * memory.
   */
  @Test
  void twoLoopNetworkOfTheLiterature() {
    double[] elevation = {150, 160, 155, 150, 165, 160};
    double[] demand = {100, 100, 120, 270, 330, 200};
    double[] printed = {53.25, 30.46, 43.45, 33.81, 30.44, 30.55};
    int[][] ends = {{1, 2}, {2, 3}, {2, 4}, {4, 5}, {4, 6}, {6, 7}, {3, 5}, {7, 5}};
    double[] inches = {18, 10, 16, 4, 16, 10, 10, 1};
    Network.Builder builder = builder().reservoir("1", 210);
    for (int i = 0; i < 6; i++) {
      String id = Integer.toString(i + 2);
      builder.junction(id, elevation[i]).demand(id, demand[i] / 3600);
    }
    for (int p = 0; p < ends.length; p++) {
      String from = Integer.toString(ends[p][0]);
      String to = Integer.toString(ends[p][1]);
      double bore = inches[p] * 0.0254;
      builder.pipe("p" + (p + 1), from, to, 1000, bore, Roughness.hazenWilliams(130));
    }
    Solution solution = Solver.solve(builder.build());
    for (int i = 0; i < 6; i++) {
      assertThat(solution.pressure(Integer.toString(i + 2))).isCloseTo(printed[i], within(0.02));
    }
    Balances.check(solution);
  }

  /** The same two-loop shape solved by hand-written loop corrections after Hardy Cross (1936). */
  @Test
  void loopedNetworkAgreesWithHardyCross() {
    double[] length = {80, 60, 70, 50, 90, 40, 65};
    double[] bore = {0.025, 0.02, 0.02, 0.016, 0.02, 0.016, 0.016};
    // 0:A-B 1:B-C 2:A-D 3:B-E 4:D-E 5:C-F 6:E-F, A is the source
    double[] q = {6e-4, 3e-4, 4e-4, 2e-4, 3e-4, 2e-4, 2e-4};
    // demands B 1e-4, C 1e-4, D 1e-4, E 3e-4, F 4e-4
    int[][] loops = {{0, 3, -4, -2}, {1, 5, -6, -3}};
    for (int round = 0; round < 400; round++) {
      for (int[] loop : loops) {
        double sum = 0;
        double slope = 0;
        for (int at = 0; at < loop.length; at++) {
          int p = Math.abs(loop[at]);
          double sign = loop[at] < 0 ? -1 : 1;
          double h = Friction.hazenWilliamsLoss(Math.abs(q[p]), length[p], bore[p], 150);
          sum += sign * Math.signum(q[p]) * h;
          slope += 1.852 * h / Math.abs(q[p]);
        }
        for (int signed : loop) {
          q[Math.abs(signed)] -= (signed < 0 ? -1 : 1) * sum / slope;
        }
      }
    }
    String[] from = {"A", "B", "A", "B", "D", "C", "E"};
    String[] to = {"B", "C", "D", "E", "E", "F", "F"};
    Network.Builder builder = builder().reservoir("A", 40);
    for (String id : new String[] {"B", "C", "D", "E", "F"}) {
      builder.junction(id, 0);
    }
    builder.demand("B", 1e-4).demand("C", 1e-4).demand("D", 1e-4).demand("E", 3e-4);
    builder.demand("F", 4e-4);
    for (int p = 0; p < 7; p++) {
      builder.pipe("p" + p, from[p], to[p], length[p], bore[p], PLASTIC);
    }
    Solution solution = Solver.solve(builder.build());
    for (int p = 0; p < 7; p++) {
      assertThat(solution.flow("p" + p)).isCloseTo(q[p], within(1e-9));
    }
  }

  /** Supply and emitters balance where p = ps - a Q^2 meets Q = N k sqrt(p). */
  @Test
  void sourceFallsAlongItsCurve() {
    double a = 2e7;
    double k = 1e-5;
    Network network =
        builder()
            .source("tap", 0, new SupplyCurve(30, a, 2))
            .junction("n", 0)
            .filter("f", "tap", "n", LossCurve.power(0, 2))
            .emitter("n", EmitterCurve.power(k, 0.5), 20)
            .build();
    Solution solution = Solver.solve(network);
    double expected = Math.sqrt(30 / (a + 1 / (400 * k * k)));
    assertThat(solution.supplied("tap")).isCloseTo(expected, withinPercentage(0.01));
    assertThat(solution.pressure("tap")).isCloseTo(30 - a * expected * expected, within(1e-3));
    Balances.check(solution);
  }

  @Test
  void regulatorHoldsItsPressureOpensAndShuts() {
    Network network =
        builder()
            .reservoir("main", 50)
            .junction("before", 0)
            .junction("after", 0)
            .junction("end", -3)
            .pipe("p1", "main", "before", 20, 0.02, PLASTIC)
            .valve("v", "before", "after", 0.02, 14, 4)
            .pipe("p2", "after", "end", 40, 0.016, PLASTIC)
            .emitter("end", EmitterCurve.through(2 * LPH, 10, 0.5), 60)
            .build();
    PreparedNetwork prepared = Solver.prepare(network);
    Solution solution = prepared.solve();
    assertThat(solution.pressure("after")).isCloseTo(14, within(1e-6));
    assertThat(solution.isRegulating("v")).isTrue();
    Balances.check(solution);

    prepared.setSourceHead("main", 9);
    Solution starved = prepared.solve();
    assertThat(starved.notices())
        .extracting(HydraulicProblem::kind)
        .containsExactly(Kind.REGULATOR_STARVED);
    assertThat(starved.pressure("after")).isBetween(5.0, 9.0);
    Solution warm = prepared.resolveFrom(solution);
    assertThat(warm.flow("v")).isCloseTo(starved.flow("v"), within(1e-9));
  }

  @Test
  void checkValveStopsReverseFlow() {
    Network network =
        builder()
            .reservoir("high", 20)
            .reservoir("low", 10)
            .junction("n", 0)
            .pipe("p1", "high", "n", 50, 0.02, PLASTIC)
            .link(Link.Pipe.of("p2", "low", "n", 50, 0.02, PLASTIC).withCheckValve())
            .emitter("n", EmitterCurve.through(4 * LPH, 10, 0.5), 10)
            .build();
    PreparedNetwork prepared = Solver.prepare(network);
    Solution solution = prepared.solve();
    assertThat(solution.flow("p2")).isZero();
    assertThat(solution.pressure("n")).isGreaterThan(10);
    prepared.setSourceHead("low", 30);
    Solution other = prepared.resolve();
    assertThat(other.flow("p2")).isGreaterThan(0);
    assertThat(other.flow("p1")).isLessThan(0);
  }

  @Test
  void sourceTakesNothingBack() {
    Network network =
        builder()
            .reservoir("high", 40)
            .source("tap", 0, new SupplyCurve(25, 1e7, 1.85))
            .junction("n", 0)
            .pipe("p1", "high", "n", 50, 0.02, PLASTIC)
            .pipe("p2", "tap", "n", 50, 0.02, PLASTIC)
            .emitter("n", EmitterCurve.through(4 * LPH, 10, 0.5), 10)
            .build();
    Solution solution = Solver.solve(network);
    assertThat(solution.supplied("tap")).isZero();
    assertThat(solution.flow("p2")).isCloseTo(0, within(1e-9));
  }

  @Test
  void pumpWorksOnItsCurve() {
    PumpCurve curve = PumpCurve.ofPoint(3e-4, 20);
    Network network =
        builder()
            .reservoir("pond", 0)
            .junction("out", 0)
            .junction("top", 5)
            .pump("pump", "pond", "out", curve)
            .pipe("p", "out", "top", 60, 0.02, PLASTIC)
            .emitter("top", EmitterCurve.through(8 * LPH, 10, 0.5), 100)
            .build();
    PreparedNetwork prepared = Solver.prepare(network);
    Solution solution = prepared.solve();
    assertThat(solution.head("out")).isCloseTo(curve.headAt(solution.flow("pump")), within(1e-5));
    Balances.check(solution);
    prepared.setSourceHead("pond", -40);
    Solution dry = prepared.solve();
    assertThat(dry.flow("pump")).isZero();
    assertThat(dry.outflow("top")).isZero();
    assertThat(dry.notices()).extracting(HydraulicProblem::kind).contains(Kind.PUMP_OVERCOME);
  }

  @Test
  void emitterAboveTheSourceGivesNothing() {
    Network network =
        builder()
            .reservoir("tank", 5)
            .junction("low", 0)
            .junction("high", 9)
            .pipe("p1", "tank", "low", 10, 0.016, PLASTIC)
            .pipe("p2", "low", "high", 10, 0.016, PLASTIC)
            .emitter("low", EmitterCurve.through(4 * LPH, 10, 0.5))
            .emitter("high", EmitterCurve.through(4 * LPH, 10, 0.5))
            .build();
    Solution solution = Solver.solve(network);
    assertThat(solution.outflow("high")).isZero();
    assertThat(solution.outflow("low")).isGreaterThan(0);
    Balances.check(solution);
  }

  @Test
  void closedValveCutsOffAndSaysSo() {
    Network network =
        builder()
            .reservoir("tank", 20)
            .junction("a", 0)
            .junction("b", 0)
            .pipe("p1", "tank", "a", 10, 0.016, PLASTIC)
            .pipe("p2", "a", "b", 10, 0.016, PLASTIC)
            .emitter("a", EmitterCurve.through(4 * LPH, 10, 0.5))
            .emitter("b", EmitterCurve.through(4 * LPH, 10, 0.5))
            .build();
    PreparedNetwork prepared = Solver.prepare(network);
    double before = prepared.solve().outflow("b");
    prepared.setClosed("p2", true);
    Solution cut = prepared.resolve();
    assertThat(cut.isCutOff("b")).isTrue();
    assertThat(cut.outflow("b")).isZero();
    assertThat(cut.outflow("a")).isGreaterThan(0);
    assertThat(cut.notices()).extracting(HydraulicProblem::partId).containsExactly("b");
    prepared.setClosed("p2", false);
    assertThat(prepared.resolve().outflow("b")).isCloseTo(before, within(1e-10));
  }

  /** Water that a small tank can barely give: all pressure is lost, yet both laws are kept. */
  @Test
  void starvedNetworkStillBalances() {
    Network.Builder builder = builder().reservoir("tank", 1.0);
    for (int i = 1; i <= 200; i++) {
      String before = i == 1 ? "tank" : "n" + (i - 1);
      builder.junction("n" + i, i % 7 * 0.1);
      builder.pipe("p" + i, before, "n" + i, 1, 0.013, PLASTIC);
      builder.emitter("n" + i, EmitterCurve.through(8 * LPH, 10, 0.5));
    }
    Solution solution = Solver.solve(builder.build());
    Balances.check(solution);
    assertThat(solution.pressure("n200")).isLessThan(0.5);
  }

  @Test
  void compensatingEmittersBelowTheirRange() {
    Network.Builder builder = builder().reservoir("tank", 9);
    for (int i = 1; i <= 300; i++) {
      String before = i == 1 ? "tank" : "n" + (i - 1);
      builder.junction("n" + i, 0);
      builder.pipe("p" + i, before, "n" + i, 0.5, 0.0138, PLASTIC);
      builder.emitter("n" + i, EmitterCurve.pressureCompensating(2 * LPH, 5, 40, 0.02));
    }
    Solution solution = Solver.solve(builder.build());
    Balances.check(solution);
    assertThat(solution.pressure("n300")).isLessThan(5);
    assertThat(solution.outflow("n1")).isGreaterThan(2 * LPH);
  }

  /** Short wide pipes, where heads round more coarsely than flows, still come to an end. */
  @Test
  void almostLosslessPipes() {
    Network.Builder builder = builder().reservoir("tank", 80);
    for (int i = 1; i <= 20; i++) {
      String before = i == 1 ? "tank" : "n" + (i - 1);
      builder.junction("n" + i, 0);
      builder.pipe("p" + i, before, "n" + i, 0.01, 0.3, PLASTIC);
      builder.emitter("n" + i, EmitterCurve.through(2 * LPH, 10, 0.5));
    }
    builder.pipe("close", "n20", "n3", 0.01, 0.3, PLASTIC);
    Balances.check(Solver.solve(builder.build()));
  }
}
