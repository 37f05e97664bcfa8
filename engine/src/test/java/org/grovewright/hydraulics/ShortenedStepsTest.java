package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Networks on which full Newton steps circle: emitters that shut below a pressure, behind a supply
 * so weak that they can neither stay open nor shut. Open they take the pressure away, shut it comes
 * back. The answer lies on the few centimetres of head over which they open.
 */
class ShortenedStepsTest {
  private static final double LPH = 1e-3 / 3600;
  private static final Roughness PLASTIC = Roughness.hazenWilliams(150);
  private static final EmitterCurve HOLDING =
      EmitterCurve.pressureCompensating(4 * LPH, 10, 40, 0.05).shuttingBelow(1.5);

  private static Network.Builder builder() {
    return Network.builder(FrictionFormula.HAZEN_WILLIAMS);
  }

  private static Solution solvedInShortSteps(Network network) {
    Solution solution = Solver.solve(network);
    // If full steps were enough the network would be no test of the others.
    assertThat(solution.iterations()).isGreaterThan(GradientMethod.FULL_STEPS);
    assertThat(solution.massResidual()).isLessThan(1e-9);
    assertThat(solution.energyResidual()).isLessThan(1e-6);
    Balances.check(solution);
    return solution;
  }

  /** Against the one pressure at which pipe and emitters agree, found by halving an interval. */
  @ParameterizedTest
  @ValueSource(ints = {100, 200, 400})
  void holdingEmittersBehindALongPipe(int emitters) {
    double length = 150;
    Network network =
        builder()
            .reservoir("tank", 3)
            .junction("end", 0)
            .pipe("p", "tank", "end", length, 0.0136, PLASTIC)
            .emitter("end", HOLDING, emitters)
            .build();

    Solution solution = solvedInShortSteps(network);

    double low = 0;
    double high = 3;
    for (int i = 0; i < 100; i++) {
      double middle = (low + high) / 2;
      double flow = emitters * HOLDING.flow(middle);
      double left = 3 - Friction.hazenWilliamsLoss(flow, length, 0.0136, 150);
      low = left > middle ? middle : low;
      high = left > middle ? high : middle;
    }
    assertThat(solution.pressure("end")).isCloseTo(low, within(1e-6)).isBetween(1.5, 1.6);
    assertThat(solution.flow("p")).isCloseTo(emitters * HOLDING.flow(low), within(1e-9));
  }

  @Test
  void holdingEmittersDownASlope() {
    Network network =
        builder()
            .reservoir("tank", 3)
            .junction("a", 0)
            .junction("b", -0.4)
            .junction("c", -0.9)
            .pipe("p", "tank", "a", 150, 0.0136, PLASTIC)
            .pipe("q", "a", "b", 10, 0.0136, PLASTIC)
            .pipe("r", "b", "c", 10, 0.0136, PLASTIC)
            .emitter("a", HOLDING, 66)
            .emitter("b", HOLDING, 66)
            .emitter("c", HOLDING, 66)
            .build();

    Solution solution = solvedInShortSteps(network);

    // The lower an emitter stands, the more of what there is it takes.
    assertThat(solution.outflow("c")).isGreaterThan(solution.outflow("b"));
    assertThat(solution.outflow("b")).isGreaterThanOrEqualTo(solution.outflow("a"));
    assertThat(solution.pressure("a")).isLessThan(1.6);
  }

  /** A pump whose head hardly falls at these flows. */
  @Test
  void holdingEmittersBehindAFlatPump() {
    PumpCurve flat = new PumpCurve.PowerLaw(3, 0.05 / Math.pow(400 * LPH, 2), 2);
    Network network =
        builder()
            .reservoir("pond", 0)
            .junction("out", 0)
            .junction("end", 0)
            .pump("pump", "pond", "out", flat)
            .pipe("p", "out", "end", 60, 0.0136, PLASTIC)
            .emitter("end", HOLDING, 200)
            .build();

    Solution solution = solvedInShortSteps(network);

    assertThat(solution.head("out")).isCloseTo(flat.headAt(solution.flow("pump")), within(1e-5));
    assertThat(solution.pressure("end")).isBetween(1.5, 1.6);
  }

  /**
   * Random networks with pumps, regulators, loops and holding emitters on steep ground. Of 20,000
   * made in this way about a twentieth is not solved by full steps.
   */
  @Test
  void randomNetworksOfSharpBends() {
    long shortened =
        LongStream.range(0, 400)
            .mapToObj(seed -> random(new Random(seed), false))
            .filter(network -> network.problems().isEmpty())
            .map(Solver::solve)
            .peek(solution -> assertThat(solution.massResidual()).isLessThan(1e-9))
            .peek(solution -> assertThat(solution.energyResidual()).isLessThan(1e-6))
            .filter(solution -> solution.iterations() > GradientMethod.FULL_STEPS)
            .count();
    assertThat(shortened).isGreaterThan(10);
  }

  /**
   * Networks whose states settle only after more than 200 steps, or in which regulators that no
   * water came to fed themselves round a loop: those of the first 150,000 without and some of the
   * first 40,000 with check valves, further regulators, shut pipes and tanks that were not solved
   * before.
   */
  @ParameterizedTest
  @CsvSource({
    "false, 2873 55278 69181 70386 74576 77133 93208 97863 119291",
    "true, 662 992 3037 3378 4305 5318 9153 17861 20650 20955 21003 22813 29767 32756 35486"
  })
  void networksWhoseDevicesTakeLongToSettle(boolean devices, String seeds) {
    for (String seed : seeds.split(" ")) {
      Solution solution = Solver.solve(random(new Random(Long.parseLong(seed)), devices));
      assertThat(solution.massResidual()).as(seed).isLessThan(1e-9);
      assertThat(solution.energyResidual()).as(seed).isLessThan(1e-6);
      Balances.check(solution);
    }
  }

  /** Of 93,000 valid ones made in this way 13 are not solved. */
  @Test
  void randomNetworksOfManyDevices() {
    long solved =
        LongStream.range(1000, 1400)
            .mapToObj(seed -> random(new Random(seed), true))
            .filter(network -> network.problems().isEmpty())
            .map(Solver::solve)
            .peek(solution -> assertThat(solution.massResidual()).isLessThan(1e-9))
            .peek(solution -> assertThat(solution.energyResidual()).isLessThan(1e-6))
            .count();
    assertThat(solved).isGreaterThan(300);
  }

  private static Network random(Random chance, boolean devices) {
    double head = 1 + 15 * chance.nextDouble();
    Network.Builder builder = builder();
    String at = "in";
    if (chance.nextBoolean()) {
      double open = (50 + 1000 * chance.nextDouble()) * LPH;
      builder.source("in", 0, new SupplyCurve(head, head / (open * open), 2));
    } else {
      PumpCurve pump = PumpCurve.ofPoint((50 + 1000 * chance.nextDouble()) * LPH, head);
      builder.reservoir("pond", 0).junction("in", 0).pump("pump", "pond", "in", pump);
    }
    if (chance.nextInt(3) == 0) {
      builder.junction("out", 0);
      builder.valve("regulator", "in", "out", 0.02, 1 + 12 * chance.nextDouble(), 10);
      at = "out";
    }
    int nodes = 1 + chance.nextInt(8);
    List<String> ids = new ArrayList<>(List.of(at));
    for (int i = 0; i < nodes; i++) {
      String id = "n" + i;
      builder.junction(id, (chance.nextDouble() - 0.5) * head);
      double bore = 0.008 + 0.018 * chance.nextDouble();
      double length = 0.5 + 40 * chance.nextDouble();
      switch (devices ? chance.nextInt(10) : 9) {
        case 0 -> builder.checkValve("p" + i, at, id, bore, 1 + 5 * chance.nextDouble());
        case 1 -> builder.valve("p" + i, at, id, bore, 1 + 8 * chance.nextDouble(), 5);
        case 2 ->
            builder.link(Link.Pipe.of("p" + i, id, at, length, bore, PLASTIC).withCheckValve());
        default -> builder.pipe("p" + i, at, id, length, bore, PLASTIC);
      }
      double shut = 0.5 + 2 * chance.nextDouble();
      EmitterCurve curve =
          switch (chance.nextInt(3)) {
            case 0 -> EmitterCurve.through(20 * LPH, 10, 0.5);
            case 1 -> EmitterCurve.pressureCompensating(4 * LPH, 10, 40, 0.05).shuttingBelow(shut);
            default -> EmitterCurve.through(4 * LPH, 10, 0.5).shuttingBelow(shut);
          };
      builder.emitter(id, curve, 1 + chance.nextInt(100));
      at = chance.nextInt(3) > 0 ? id : at;
      ids.add(id);
    }
    if (nodes > 3) {
      builder.pipe("close", "n0", "n" + (nodes - 1), 10, 0.0136, PLASTIC);
    }
    if (devices && nodes > 2) {
      for (int k = 0; k < chance.nextInt(3); k++) {
        cross(builder, "x" + k, ids, head, chance);
      }
    }
    return builder.build();
  }

  /** A device across the network, or a tank with a check valve. */
  private static void cross(
      Network.Builder builder, String id, List<String> ids, double head, Random chance) {
    String a = ids.get(chance.nextInt(ids.size()));
    String b = ids.get(chance.nextInt(ids.size()));
    if (a.equals(b)) {
      return;
    }
    switch (chance.nextInt(4)) {
      case 0 -> builder.checkValve(id, a, b, 0.013, 2);
      case 1 -> {
        Link.Pipe pipe = Link.Pipe.of(id, a, b, 20, 0.0136, PLASTIC);
        builder.link(chance.nextBoolean() ? pipe : pipe.shut());
      }
      case 2 -> {
        builder.reservoir("tank of " + id, head * chance.nextDouble());
        Link.Pipe pipe = Link.Pipe.of(id, "tank of " + id, b, 10, 0.0136, PLASTIC);
        builder.link(pipe.withCheckValve());
      }
      default -> builder.filter(id, a, b, LossCurve.minor(3, 0.02));
    }
  }
}
