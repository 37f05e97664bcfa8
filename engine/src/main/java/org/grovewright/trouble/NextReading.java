package org.grovewright.trouble;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.grovewright.hydraulics.FaultSearch.Finding;
import org.grovewright.hydraulics.HydraulicException;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.PreparedNetwork;
import org.grovewright.hydraulics.Reading;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.Solver;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Grove;
import org.grovewright.trouble.FieldReading.Kind;

/**
 * Finds the reading, among those not taken yet, that would tell suspected places apart best.
 *
 * <p>Every suspect says what each reading would show if it were at fault. The more these answers
 * differ, counted in standard deviations of a reading and weighted by how likely each suspect is,
 * the more the reading tells. Readings that all suspects foretell alike tell nothing.
 */
final class NextReading {
  /** Below this mean square of deviations a reading would hardly move any suspect. */
  private static final double LEAST_WORTH = 1;

  private final ZoneResult zone;
  private final Grove grove;
  private final WateringSystem system;
  private final int year;
  private final List<PlacedReading> taken;

  /**
   * A search among the readings of one zone.
   *
   * @param zone the zone that is suspected
   * @param grove the grove
   * @param system its watering system
   * @param year year of the plan
   * @param taken what was read
   */
  NextReading(
      ZoneResult zone, Grove grove, WateringSystem system, int year, List<PlacedReading> taken) {
    this.zone = zone;
    this.grove = grove;
    this.system = system;
    this.year = year;
    this.taken = taken;
  }

  /**
   * The reading that would tell most.
   *
   * @param suspects the suspects of the zone with the zone's network as each would leave it
   * @param noise standard deviation of a reading as a share of it
   * @return the reading with a value of 0; nothing where none would tell the suspects apart
   */
  Optional<FieldReading> among(Map<Finding, Network> suspects, double noise) {
    if (suspects.size() < 2) {
      return Optional.empty();
    }
    List<PlacedReading> open = candidates();
    Set<Set<String>> folds = new LinkedHashSet<>();
    open.forEach(reading -> folds.add(reading.closed()));
    double[] weights = weights(suspects.keySet());
    List<Map<Set<String>, Solution>> foretold = new ArrayList<>();
    suspects.values().forEach(network -> foretold.add(solutions(network, folds)));
    FieldReading best = null;
    double most = LEAST_WORTH;
    for (PlacedReading reading : open) {
      double worth = worth(reading, foretold, weights, noise);
      if (worth > most) {
        most = worth;
        best = reading.reading();
      }
    }
    return Optional.ofNullable(best);
  }

  /** Odds of the suspects from their gains, which are twice the logarithms of likelihoods. */
  private static double[] weights(Set<Finding> suspects) {
    double top = suspects.stream().mapToDouble(Finding::gain).max().orElse(0);
    double[] weights = suspects.stream().mapToDouble(s -> Math.exp((s.gain() - top) / 2)).toArray();
    double sum = 0;
    for (double weight : weights) {
      sum += weight;
    }
    for (int k = 0; k < weights.length; k++) {
      weights[k] /= sum;
    }
    return weights;
  }

  private static Map<Set<String>, Solution> solutions(Network network, Set<Set<String>> folds) {
    Map<Set<String>, Solution> solutions = new HashMap<>();
    PreparedNetwork prepared = Solver.prepare(network);
    for (Set<String> fold : folds) {
      fold.forEach(pipe -> prepared.setClosed(pipe, true));
      try {
        solutions.put(fold, prepared.solve());
      } catch (HydraulicException e) {
        // a fold that leaves no steady flow foretells nothing
        solutions.put(fold, null);
      }
      fold.forEach(pipe -> prepared.setClosed(pipe, false));
    }
    return solutions;
  }

  private static double worth(
      PlacedReading reading,
      List<Map<Set<String>, Solution>> foretold,
      double[] weights,
      double noise) {
    double mean = 0;
    double[] values = new double[weights.length];
    for (int k = 0; k < values.length; k++) {
      Solution solution = foretold.get(k).get(reading.closed());
      if (solution == null) {
        return 0;
      }
      values[k] = new Reading(reading.quantity(), reading.id(), 0, 1).in(solution);
      mean += weights[k] * values[k];
    }
    double deviation = reading.deviation(mean, noise);
    double worth = 0;
    for (int k = 0; k < values.length; k++) {
      double apart = (values[k] - mean) / deviation;
      worth += weights[k] * apart * apart;
    }
    return worth;
  }

  /** All readings of the zone that an owner can take and has not taken. */
  private List<PlacedReading> candidates() {
    Map<String, PlacedReading> open = new LinkedHashMap<>();
    Set<String> plants = new LinkedHashSet<>();
    zone.design()
        .outlets()
        .forEach(outlet -> plants.add(grove.plantings().get(outlet.plant()).id()));
    List<String> starts = new ArrayList<>();
    List<String> ends = new ArrayList<>();
    for (Tubing.Run run : Tubing.runs(List.of(zone))) {
      starts.add(run.profile().line().id() + " start");
      ends.add(run.profile().line().id() + " end");
    }
    add(Kind.METER, "", List.of(), open);
    add(Kind.PRESSURE, "tap", List.of(), open);
    ends.forEach(end -> add(Kind.PRESSURE, end, List.of(), open));
    plants.forEach(plant -> add(Kind.CATCH, plant, List.of(), open));
    starts.forEach(start -> add(Kind.METER, "", List.of(start), open));
    plants.forEach(plant -> add(Kind.METER, "", List.of(plant), open));
    return List.copyOf(open.values());
  }

  private void add(Kind kind, String place, List<String> folded, Map<String, PlacedReading> open) {
    FieldReading asked = new FieldReading(0, zone.design().id(), kind, place, folded, 0);
    PlacedReading placed;
    try {
      placed = PlacedReading.of(List.of(asked), grove, system, year).get(0);
    } catch (IllegalArgumentException e) {
      // behind the last plant of a line there is no tubing to fold
      return;
    }
    if (taken.stream().noneMatch(placed::sameAs)) {
      open.putIfAbsent(placed.quantity() + " " + placed.id() + " " + placed.closed(), placed);
    }
  }
}
