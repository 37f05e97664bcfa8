package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.grovewright.hydraulics.FaultSearch.Finding;
import org.grovewright.hydraulics.FaultSearch.Kind;
import org.grovewright.hydraulics.FaultSearch.Suspicion;
import org.grovewright.hydraulics.Reading.Quantity;
import org.junit.jupiter.api.Test;

class FaultSearchTest {
  private static final double LPH = 1e-3 / 3600;
  private static final int LATERALS = 8;
  private static final int EMITTERS = 10;
  private static final double NOISE = 0.05;

  /** Two zones of four laterals behind one tap; figures may be off to stand for the real thing. */
  static Network orchard(double c, double supply, double emitters, double bore) {
    Roughness plastic = Roughness.hazenWilliams(c);
    Network.Builder builder =
        Network.builder(FrictionFormula.HAZEN_WILLIAMS)
            .source("tap", 0, new SupplyCurve(28, supply * 8e7, 1.85))
            .junction("z0", 0)
            .junction("z1", 0)
            .pipe("zone0", "tap", "z0", 25, bore * 0.0182, plastic)
            .pipe("zone1", "tap", "z1", 40, bore * 0.0182, plastic);
    EmitterCurve curve = EmitterCurve.through(emitters * 8 * LPH, 10, 0.5);
    for (int l = 0; l < LATERALS; l++) {
      int zone = l / 4;
      String tee = "t" + l;
      String before = l % 4 == 0 ? "z" + zone : "t" + (l - 1);
      builder.junction(tee, 0).pipe("m" + l, before, tee, 3, bore * 0.0182, plastic);
      String last = tee;
      for (int i = 0; i < EMITTERS; i++) {
        String node = "l" + l + "e" + i;
        builder.junction(node, 0.05 * i).emitter(node, node, curve, 1);
        builder.pipe("p" + node, last, node, 1, bore * 0.0138, plastic);
        last = node;
      }
    }
    return builder.build();
  }

  /** Meter by zone, a gauge at the end of each lateral, three catch cans on each lateral. */
  static List<Reading> readings(Solution truth, Random random) {
    List<Reading> readings = new ArrayList<>();
    for (int zone = 0; zone < 2; zone++) {
      readings.add(noisy(Quantity.FLOW, "zone" + zone, truth.flow("zone" + zone), random));
    }
    for (int l = 0; l < LATERALS; l++) {
      String end = "l" + l + "e" + (EMITTERS - 1);
      readings.add(noisy(Quantity.PRESSURE, end, truth.pressure(end), random));
      for (int i = 1; i < EMITTERS; i += 4) {
        String can = "l" + l + "e" + i;
        readings.add(noisy(Quantity.EMITTER, can, truth.emitterFlow(can), random));
      }
    }
    return readings;
  }

  private static Reading noisy(Quantity quantity, String id, double value, Random random) {
    double least = quantity == Quantity.PRESSURE ? 0.1 : 0.05 * LPH;
    double deviation = Math.max(NOISE * Math.abs(value), least);
    return new Reading(quantity, id, value + deviation * random.nextGaussian(), deviation);
  }

  private static List<Suspicion> suspicions() {
    List<Suspicion> all = new ArrayList<>();
    for (int l = 0; l < LATERALS; l++) {
      String element = "lateral " + l;
      List<String> groups = new ArrayList<>();
      for (int i = 0; i < EMITTERS; i++) {
        groups.add("l" + l + "e" + i);
      }
      all.add(new Suspicion(element, Kind.LEAK, List.of("pl" + l + "e5")));
      all.add(new Suspicion(element, Kind.BLOCKAGE, List.of("pl" + l + "e0")));
      all.add(new Suspicion(element, Kind.CLOGGING, groups));
    }
    return all;
  }

  private static Network faulty(Network network, int lateral, Random random) {
    int place = random.nextInt(EMITTERS);
    String node = "l" + lateral + "e" + place;
    switch (random.nextInt(3)) {
      case 0 -> {
        return new Fault.Leak(node, 0.002 + 0.003 * random.nextDouble()).applyTo(network);
      }
      case 1 -> {
        String inlet = "pl" + lateral + "e" + random.nextInt(2);
        Link.Pipe pipe = (Link.Pipe) network.links().get(network.linkIndex(inlet));
        double open = 0.01 + 0.04 * random.nextDouble();
        Link.Pipe blocked = pipe.withMinorLoss(FaultSearch.blockageLoss(open));
        return network.toBuilder().replace(blocked).build();
      }
      default -> {
        List<String> groups = new ArrayList<>();
        for (int i = 0; i < EMITTERS; i++) {
          groups.add("l" + lateral + "e" + i);
        }
        double left = 0.3 + 0.4 * random.nextDouble();
        return new Fault.Clogging(java.util.Set.copyOf(groups), left).applyTo(network);
      }
    }
  }

  /**
   * 510 single faults of random kind, place and size with 5 % noise on every reading: the lateral
   * at fault is to be among the three ranked first at least nine times in ten.
   */
  @Test
  void faultyLateralIsAmongTheFirstThree() {
    Network network = orchard(145, 1, 1, 1);
    List<Suspicion> suspicions = suspicions();
    Random random = new Random(20260101);
    int trials = 510;
    int first = 0;
    int firstThree = 0;
    for (int trial = 0; trial < trials; trial++) {
      int lateral = random.nextInt(LATERALS);
      Solution truth = Solver.solve(faulty(network, lateral, random));
      List<Finding> ranked = FaultSearch.rank(network, suspicions, readings(truth, random));
      List<String> elements = ranked.stream().map(f -> f.suspicion().element()).toList();
      int place = elements.indexOf("lateral " + lateral);
      first += place == 0 ? 1 : 0;
      firstThree += place < 3 ? 1 : 0;
    }
    assertThat(firstThree / (double) trials)
        .as("%d first and %d among the first three of %d", first, firstThree, trials)
        .isGreaterThanOrEqualTo(0.9);
  }

  @Test
  void sizeOfALeakIsFound() {
    Network network = orchard(145, 1, 1, 1);
    Solution truth = Solver.solve(new Fault.Hole("pl3e5", 0.5, 0.003).applyTo(network));
    List<Reading> exact = new ArrayList<>();
    for (Reading reading : readings(truth, new Random(1))) {
      exact.add(
          new Reading(reading.quantity(), reading.id(), reading.in(truth), reading.deviation()));
    }
    Finding best = FaultSearch.rank(network, suspicions(), exact).get(0);
    assertThat(best.suspicion().element()).isEqualTo("lateral 3");
    assertThat(best.suspicion().kind()).isEqualTo(Kind.LEAK);
    assertThat(best.size()).isCloseTo(0.003, within(0.0003));
  }

  /** An open bore loses nothing; a thin slit loses much (Borda and Carnot). */
  @Test
  void blockageLoss() {
    assertThat(FaultSearch.blockageLoss(1)).isCloseTo(0, within(1e-12));
    assertThat(FaultSearch.blockageLoss(0.1)).isCloseTo(245, within(2.0));
  }
}
