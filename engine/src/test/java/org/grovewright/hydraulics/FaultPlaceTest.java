package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.grovewright.hydraulics.FaultSearch.Finding;
import org.grovewright.hydraulics.FaultSearch.Kind;
import org.grovewright.hydraulics.FaultSearch.Suspicion;
import org.grovewright.hydraulics.Reading.Quantity;
import org.junit.jupiter.api.Test;

/** Whether a single fault is found to a stretch between two plants, or to the plant. */
class FaultPlaceTest {
  private static final double LPH = 1e-3 / 3600;
  private static final int LATERALS = 4;
  private static final int PLANTS = 10;
  private static final double NOISE = 0.05;

  /** One zone of four dead-end laterals with ten plants each. */
  private static Network zone() {
    Roughness plastic = Roughness.hazenWilliams(145);
    Network.Builder builder =
        Network.builder(FrictionFormula.HAZEN_WILLIAMS)
            .source("tap", 0, new SupplyCurve(28, 8e7, 1.85))
            .junction("z", 0)
            .pipe("meter", "tap", "z", 25, 0.0182, plastic);
    EmitterCurve curve = EmitterCurve.through(8 * LPH, 10, 0.5);
    String before = "z";
    for (int l = 0; l < LATERALS; l++) {
      String tee = "t" + l;
      builder.junction(tee, 0.1 * l).pipe("m" + l, before, tee, 3, 0.0182, plastic);
      before = tee;
      String last = tee;
      for (int i = 0; i < PLANTS; i++) {
        String node = plant(l, i);
        builder.junction(node, 0.1 * l + 0.05 * i).emitter(node, node, curve, 1);
        builder.pipe(stretch(l, i), last, node, 3, 0.0138, plastic);
        last = node;
      }
    }
    return builder.build();
  }

  private static String plant(int lateral, int i) {
    return "plant " + lateral + "." + i;
  }

  /** The stretch of tubing that ends at a plant. */
  private static String stretch(int lateral, int i) {
    return "stretch " + lateral + "." + i;
  }

  private static List<Suspicion> suspicions() {
    List<Suspicion> all = new ArrayList<>();
    for (int l = 0; l < LATERALS; l++) {
      for (int i = 0; i < PLANTS; i++) {
        all.add(new Suspicion(stretch(l, i), Kind.LEAK, List.of(stretch(l, i))));
        all.add(new Suspicion(stretch(l, i), Kind.BLOCKAGE, List.of(stretch(l, i))));
        all.add(new Suspicion(plant(l, i), Kind.CLOGGING, List.of(plant(l, i))));
      }
    }
    return all;
  }

  private record Case(String element, Network network) {}

  /**
   * A random fault that an owner would notice: a hole of 2 to 5 mm anywhere along a stretch, a
   * blockage that takes at least a fifth from some plant, or a plant's emitter that lost 30 to 100
   * %.
   */
  private static Case draw(Network sound, Random random) {
    Solution whole = Solver.solve(sound);
    int l = random.nextInt(LATERALS);
    int i = random.nextInt(PLANTS);
    switch (random.nextInt(3)) {
      case 0 -> {
        double share = 0.05 + 0.9 * random.nextDouble();
        double diameter = 0.002 + 0.003 * random.nextDouble();
        Fault hole = new Fault.Hole(stretch(l, i), share, diameter);
        return new Case(stretch(l, i), hole.applyTo(sound));
      }
      case 1 -> {
        Link.Pipe pipe = (Link.Pipe) sound.links().get(sound.linkIndex(stretch(l, i)));
        for (double open = 0.05; ; open *= 0.8) {
          Link.Pipe blocked = pipe.withMinorLoss(FaultSearch.blockageLoss(open));
          Network network = sound.toBuilder().replace(blocked).build();
          String beyond = plant(l, PLANTS - 1);
          double left = Solver.solve(network).emitterFlow(beyond) / whole.emitterFlow(beyond);
          if (left < 0.8) {
            return new Case(stretch(l, i), network);
          }
        }
      }
      default -> {
        double left = 0.7 * random.nextDouble();
        Fault clogged = new Fault.Clogging(Set.of(plant(l, i)), left);
        return new Case(plant(l, i), clogged.applyTo(sound));
      }
    }
  }

  private static Reading noisy(Quantity quantity, String id, double value, Random random) {
    double least = quantity == Quantity.PRESSURE ? 0.1 : 0.05 * LPH;
    double deviation = Math.max(NOISE * Math.abs(value), least);
    return new Reading(quantity, id, value + deviation * random.nextGaussian(), deviation);
  }

  /** The meter, a gauge at the end of each lateral, a can under an emitter of every plant. */
  private static FieldRun round(Network sound, Network faulty, Random random) {
    Solution truth = Solver.solve(faulty);
    List<Reading> readings = new ArrayList<>();
    readings.add(noisy(Quantity.SUPPLIED, "tap", truth.supplied("tap"), random));
    for (int l = 0; l < LATERALS; l++) {
      String end = plant(l, PLANTS - 1);
      readings.add(noisy(Quantity.PRESSURE, end, truth.pressure(end), random));
      for (int i = 0; i < PLANTS; i++) {
        readings.add(noisy(Quantity.EMITTER, plant(l, i), truth.emitterFlow(plant(l, i)), random));
      }
    }
    return FieldRun.of(sound, readings);
  }

  /** The meter once more with one lateral folded shut before a plant. */
  private static FieldRun folded(Network sound, Network faulty, String stretch, Random random) {
    PreparedNetwork prepared = Solver.prepare(faulty);
    prepared.setClosed(stretch, true);
    Reading meter = noisy(Quantity.SUPPLIED, "tap", prepared.solve().supplied("tap"), random);
    return new FieldRun(sound, Set.of(stretch), List.of(meter));
  }

  /** Place of the faulty element in the ranking, from 0. */
  private static int place(Network sound, long seed, boolean folds) {
    Random random = new Random(seed);
    Case fault = draw(sound, random);
    List<FieldRun> runs = new ArrayList<>();
    runs.add(round(sound, fault.network(), random));
    if (folds) {
      for (int l = 0; l < LATERALS; l++) {
        runs.add(folded(sound, fault.network(), stretch(l, 0), random));
      }
      // then only the two laterals that are suspected most are folded at more places
      List<String> laterals =
          FaultSearch.rank(runs, suspicions()).stream()
              .map(f -> f.suspicion().element().replaceAll("[^0-9.]|\\..*", ""))
              .distinct()
              .limit(2)
              .toList();
      for (String lateral : laterals) {
        for (int i = 2; i < PLANTS; i += 2) {
          runs.add(folded(sound, fault.network(), stretch(Integer.parseInt(lateral), i), random));
        }
      }
    }
    List<Finding> ranked = FaultSearch.rank(runs, suspicions());
    return ranked.stream().map(f -> f.suspicion().element()).toList().indexOf(fault.element());
  }

  private static int[] places(int cases, boolean folds) {
    Network sound = zone();
    return IntStream.range(0, cases)
        .parallel()
        .map(i -> place(sound, 20260000L + i, folds))
        .toArray();
  }

  private static final int CASES = 510;

  private static long among(int[] places, int most) {
    return IntStream.of(places).filter(place -> place >= 0 && place < most).count();
  }

  /**
   * 510 single faults of random kind, place and size with 5 % noise on every reading: the stretch
   * or plant at fault is to be among the three ranked first of eighty at least nine times in ten.
   * (Found: 505 of 510 among the first three, 416 of them first.)
   *
   * <p>The readings: the meter; a gauge at the end of each lateral; a can under an emitter of every
   * plant; the meter with each lateral folded shut at its start; and the meter with the two most
   * suspected laterals folded shut before their third, fifth, seventh and ninth plant.
   */
  @Test
  void faultyPlaceIsAmongTheFirstThree() {
    int[] places = places(CASES, true);
    assertThat(among(places, 3) / (double) CASES)
        .as("%d first, %d among the first three", among(places, 1), among(places, 3))
        .isGreaterThanOrEqualTo(0.9);
  }

  /**
   * Without the folds the readings cannot tell where along a lateral it leaks. (Found, of 510
   * cases: 397 among the first three, 348 first; fewer cases are tried here.)
   */
  @Test
  void foldsAreWhatFindsLeaks() {
    int[] places = places(150, false);
    assertThat(among(places, 3) / 150.0).isLessThan(0.9);
  }
}
