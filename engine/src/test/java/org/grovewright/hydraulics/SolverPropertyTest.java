package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class SolverPropertyTest {
  private static final double LPH = 1e-3 / 3600;

  /** A connected network with loops, slopes and emitters of every sort. */
  private static Network random(long seed, int size, double sourceHead) {
    Random random = new Random(seed);
    FrictionFormula formula =
        random.nextBoolean() ? FrictionFormula.HAZEN_WILLIAMS : FrictionFormula.DARCY_WEISBACH;
    Roughness roughness =
        formula == FrictionFormula.HAZEN_WILLIAMS
            ? Roughness.hazenWilliams(120 + random.nextInt(30))
            : Roughness.darcyWeisbach(random.nextInt(100) * 1e-6);
    Network.Builder builder = Network.builder(formula);
    builder.source("n0", 0, new SupplyCurve(sourceHead, 1e6 * random.nextDouble(), 1.85));
    for (int i = 1; i < size; i++) {
      builder.junction("n" + i, 4 * random.nextDouble() - 2);
      int other = Math.max(0, i - 1 - random.nextInt(5));
      pipe(builder, "t" + i, other, i, roughness, random);
      EmitterCurve curve =
          switch (random.nextInt(4)) {
            case 0 -> EmitterCurve.through(4 * LPH, 10, 0.5);
            case 1 -> EmitterCurve.through(4 * LPH, 10, random.nextDouble());
            case 2 -> EmitterCurve.pressureCompensating(2 * LPH, 5, 40, 0.03);
            default -> EmitterCurve.pressureCompensating(4 * LPH, 6, 35, 0).shuttingBelow(1.5);
          };
      builder.emitter("n" + i, curve, 1 + random.nextInt(3));
    }
    for (int i = 0; i < size / 4; i++) {
      int a = random.nextInt(size);
      int b = random.nextInt(size);
      if (a != b) {
        pipe(builder, "l" + i, a, b, roughness, random);
      }
    }
    return builder.build();
  }

  private static void pipe(
      Network.Builder builder, String id, int a, int b, Roughness roughness, Random random) {
    double bore = 0.012 + 0.02 * random.nextDouble();
    Link.Pipe pipe =
        Link.Pipe.of(id, "n" + a, "n" + b, 0.2 + 30 * random.nextDouble(), bore, roughness);
    builder.link(random.nextInt(3) == 0 ? pipe.withMinorLoss(3 * random.nextDouble()) : pipe);
  }

  @Property(tries = 300, seed = "20260101")
  void bothLawsAreKept(@ForAll long seed, @ForAll @IntRange(min = 2, max = 150) int size) {
    Balances.check(Solver.solve(random(seed, size, 2 + 40 * new Random(~seed).nextDouble())));
  }

  @Property(tries = 150, seed = "20260101")
  void moreSourcePressureNeverGivesLess(
      @ForAll long seed, @ForAll @IntRange(min = 2, max = 80) int size) {
    PreparedNetwork prepared = Solver.prepare(random(seed, size, 5));
    double[] before = prepared.solve().emitterFlows();
    for (double head = 8; head < 60; head *= 1.7) {
      prepared.setSourceHead("n0", head);
      double[] after = prepared.resolve().emitterFlows();
      for (int g = 0; g < after.length; g++) {
        assertThat(after[g]).isGreaterThanOrEqualTo(before[g] - 1e-9);
      }
      before = after;
    }
  }

  @Property(tries = 100, seed = "20260101")
  void solvingAgainGivesTheSame(@ForAll long seed, @ForAll @IntRange(min = 3, max = 80) int size) {
    Network network = random(seed, size, 25);
    PreparedNetwork prepared = Solver.prepare(network);
    Solution first = prepared.solve();
    prepared.setEmitter("n2#1", EmitterCurve.orifice(0.003, 0.6));
    Solution edited = prepared.resolve();
    Solution fresh = prepared.solve();
    assertSame(edited, fresh);
    prepared.setEmitter("n2#1", network.emitters().get(network.emitterIndex("n2#1")).curve());
    assertSame(prepared.resolveFrom(edited), first);
  }

  private static void assertSame(Solution a, Solution b) {
    double[] flowsA = a.emitterFlows();
    double[] flowsB = b.emitterFlows();
    for (int g = 0; g < flowsA.length; g++) {
      assertThat(flowsA[g]).isCloseTo(flowsB[g], within(1e-9));
    }
  }

  /** A loop fed at one point; if {@code cutAt} is a node the loop is cut there. */
  private static Network loop(int half, double slope, int cutAt, Random figures) {
    Roughness roughness = Roughness.hazenWilliams(140);
    int n = 2 * half;
    double[] length = new double[n];
    for (int i = 0; i < half; i++) {
      length[i] = 0.3 + figures.nextDouble();
      length[n - 1 - i] = length[i];
    }
    Network.Builder builder =
        Network.builder(FrictionFormula.HAZEN_WILLIAMS).reservoir("in", 15).junction("n0", 0);
    builder.pipe("feed", "in", "n0", 5, 0.02, roughness);
    for (int i = 1; i < n; i++) {
      builder.junction("n" + i, slope * Math.min(i, n - i));
    }
    boolean cut = cutAt > 0;
    if (cut) {
      builder.junction("other end", slope * Math.min(cutAt, n - cutAt));
    }
    for (int i = 0; i < n; i++) {
      String to = "n" + (i + 1) % n;
      String from = cut && i == cutAt ? "other end" : "n" + i;
      builder.pipe("p" + i, from, to, length[i], 0.0138, roughness);
    }
    EmitterCurve curve = EmitterCurve.through(2 * LPH, 10, 0.5);
    for (int i = 1; i < n; i++) {
      if (cut && i == cutAt) {
        builder.emitter("n" + i, EmitterCurve.through(1 * LPH, 10, 0.5));
        builder.emitter("other end", EmitterCurve.through(1 * LPH, 10, 0.5));
      } else {
        builder.emitter("n" + i, curve);
      }
    }
    return builder.build();
  }

  @Property(tries = 60, seed = "20260101")
  void symmetricLoopHasSymmetricFlows(
      @ForAll long seed, @ForAll @IntRange(min = 2, max = 100) int half) {
    double slope = 0.02 * new Random(seed).nextDouble() - 0.01;
    Solution solution = Solver.solve(loop(half, slope, 0, new Random(seed)));
    for (int i = 1; i < half; i++) {
      assertThat(solution.outflow("n" + i))
          .isCloseTo(solution.outflow("n" + (2 * half - i)), within(1e-10));
    }
  }

  /** Half of the last emitter is fed from each side, so cutting the loop there changes nothing. */
  @Property(tries = 60, seed = "20260101")
  void loopCutWhereNothingFlowsIsTheSame(
      @ForAll long seed, @ForAll @IntRange(min = 2, max = 100) int half) {
    Solution whole = Solver.solve(loop(half, 0, 0, new Random(seed)));
    Solution cut = Solver.solve(loop(half, 0, half, new Random(seed)));
    for (int i = 1; i < 2 * half; i++) {
      assertThat(cut.head("n" + i)).isCloseTo(whole.head("n" + i), within(1e-6));
    }
  }
}
