package org.grovewright.trouble;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.grovewright.hydraulics.Calibration;
import org.grovewright.hydraulics.Calibration.Estimate;
import org.grovewright.hydraulics.Calibration.Fit;
import org.grovewright.hydraulics.Calibration.Parameter;
import org.grovewright.hydraulics.Fault;
import org.grovewright.hydraulics.FaultSearch;
import org.grovewright.hydraulics.FaultSearch.Finding;
import org.grovewright.hydraulics.FaultSearch.Kind;
import org.grovewright.hydraulics.FaultSearch.Suspicion;
import org.grovewright.hydraulics.FieldRun;
import org.grovewright.hydraulics.FrictionFormula;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Reading;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Grove;

/**
 * What field readings say of a watering system: how rough its pipes are, how its supply falls off,
 * how much its emitters still give, and where a leak, a blockage or dirt is likeliest.
 *
 * @param estimates fitted factors on the plan's figures, with 95 % bounds
 * @param beliefs standard deviation of the logarithm of each factor before anything was read
 * @param likeliest places in the order of likelihood, at most {@link FaultSearch#RANKED}
 * @param pointsToFault whether the first place explains the readings so much better than wear and
 *     chance that it is worth digging for
 * @param misfit squared differences that remain, in standard deviations, with the first place if it
 *     is worth digging for
 * @param readings number of readings
 */
public record Diagnosis(
    Map<Parameter, Estimate> estimates,
    Map<Parameter, Double> beliefs,
    List<Finding> likeliest,
    boolean pointsToFault,
    double misfit,
    int readings) {
  /** What is thought of a new system before anything is read; common practice, no source. */
  private static final double SUPPLY_BELIEF = 0.4;

  private static final double EMITTER_BELIEF = 0.25;
  private static final double HAZEN_WILLIAMS_BELIEF = 0.1;
  private static final double ROUGHNESS_HEIGHT_BELIEF = 1.0;

  /** Least deviations of readings: a gauge's needle and a hasty can. */
  private static final double LEAST_HEAD_M = 0.1;

  private static final double LEAST_CATCH = 0.05e-3 / 3600;
  private static final double LEAST_METER = 1e-3 / 3600;

  /** Copies the maps and lists. */
  public Diagnosis {
    estimates = new EnumMap<>(estimates);
    beliefs = new EnumMap<>(beliefs);
    likeliest = List.copyOf(likeliest);
  }

  /**
   * Judges readings.
   *
   * @param readings the readings with their places
   * @param grove the grove
   * @param noise standard deviation of a reading as a share of it, e.g. 0.05
   * @throws IllegalArgumentException if there is no reading
   */
  public static Diagnosis of(List<PlacedReading> readings, Grove grove, double noise) {
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("there is no reading in it.");
    }
    return new Maker(readings, grove, noise).make();
  }

  /** Makes one diagnosis. */
  private static final class Maker {
    private final Grove grove;
    private final int count;
    private final List<ZoneResult> zones = new ArrayList<>();

    /** For each zone what was read, by what was folded shut meanwhile. */
    private final List<Map<Set<String>, List<Reading>>> read = new ArrayList<>();

    Maker(List<PlacedReading> readings, Grove grove, double noise) {
      this.grove = grove;
      this.count = readings.size();
      for (PlacedReading placed : readings) {
        if (!zones.contains(placed.zone())) {
          zones.add(placed.zone());
          read.add(new LinkedHashMap<>());
        }
        read.get(zones.indexOf(placed.zone()))
            .computeIfAbsent(placed.closed(), closed -> new ArrayList<>())
            .add(reading(placed, noise));
      }
    }

    private static Reading reading(PlacedReading placed, double noise) {
      double metre = 1000 * placed.zone().network().network().gravity();
      double value = placed.reading().value();
      double least = LEAST_CATCH;
      switch (placed.reading().kind()) {
        case PRESSURE -> {
          value /= metre;
          least = LEAST_HEAD_M;
        }
        case METER -> least = LEAST_METER;
        case CATCH -> least = LEAST_CATCH;
      }
      double deviation = Math.max(least, noise * Math.abs(value));
      return new Reading(placed.quantity(), placed.id(), value, deviation);
    }

    Diagnosis make() {
      List<Network> asPlanned = zones.stream().map(z -> z.network().network()).toList();
      Map<Parameter, Double> beliefs = beliefs(asPlanned.get(0).formula());
      Fit fit = Calibration.fit(runs(asPlanned), beliefs);
      List<Finding> ranked = new ArrayList<>();
      int worst = rank(asPlanned, fit, ranked);
      boolean faulty = ranked.get(0).gain() > threshold(ranked.size());
      if (faulty) {
        // the fault has bent the fit: fit once more with it, then rank once more
        List<Network> withFault = new ArrayList<>(asPlanned);
        withFault.set(worst, with(ranked.get(0), asPlanned.get(worst)));
        fit = Calibration.fit(runs(withFault), beliefs);
        ranked.clear();
        rank(asPlanned, fit, ranked);
      }
      List<Finding> first = ranked.subList(0, Math.min(FaultSearch.RANKED, ranked.size()));
      return new Diagnosis(fit.estimates(), beliefs, first, faulty, fit.misfit(), count);
    }

    /**
     * Gain that chance alone reaches at the best of so many places about once in a hundred rounds
     * of readings.
     */
    private static double threshold(int places) {
      return 6 + 2 * Math.log(places);
    }

    private static Map<Parameter, Double> beliefs(FrictionFormula formula) {
      Map<Parameter, Double> beliefs = new EnumMap<>(Parameter.class);
      beliefs.put(
          Parameter.ROUGHNESS,
          formula == FrictionFormula.HAZEN_WILLIAMS
              ? HAZEN_WILLIAMS_BELIEF
              : ROUGHNESS_HEIGHT_BELIEF);
      beliefs.put(Parameter.SUPPLY, SUPPLY_BELIEF);
      beliefs.put(Parameter.EMITTERS, EMITTER_BELIEF);
      return beliefs;
    }

    private List<FieldRun> runs(List<Network> networks) {
      List<FieldRun> runs = new ArrayList<>();
      for (int z = 0; z < zones.size(); z++) {
        runs.addAll(runs(z, networks.get(z)));
      }
      return runs;
    }

    private List<FieldRun> runs(int zone, Network network) {
      List<FieldRun> runs = new ArrayList<>();
      read.get(zone)
          .forEach((closed, readings) -> runs.add(new FieldRun(network, closed, readings)));
      return runs;
    }

    /** Ranks the places of all zones by their gain; gives the zone of the first. */
    private int rank(List<Network> networks, Fit fit, List<Finding> ranked) {
      Map<Parameter, Double> factors = new EnumMap<>(Parameter.class);
      fit.estimates().forEach((parameter, estimate) -> factors.put(parameter, estimate.factor()));
      Map<Finding, Integer> zoneOf = new HashMap<>();
      for (int z = 0; z < zones.size(); z++) {
        Network fitted = Calibration.withFactors(networks.get(z), factors);
        for (Finding finding : FaultSearch.rank(runs(z, fitted), suspicions(zones.get(z)))) {
          ranked.add(finding);
          zoneOf.put(finding, z);
        }
      }
      ranked.sort(Comparator.comparingDouble(finding -> -finding.gain()));
      return zoneOf.get(ranked.get(0));
    }

    private static Network with(Finding finding, Network network) {
      List<String> parts = finding.suspicion().parts();
      return switch (finding.suspicion().kind()) {
        case LEAK -> new Fault.Hole(parts.get(0), 0.5, finding.size()).applyTo(network);
        case BLOCKAGE -> new Fault.Blockage(parts.get(0), finding.size()).applyTo(network);
        case CLOGGING -> new Fault.Clogging(Set.copyOf(parts), finding.size()).applyTo(network);
      };
    }

    private List<Suspicion> suspicions(ZoneResult zone) {
      List<Suspicion> all = new ArrayList<>();
      Map<Integer, List<String>> byPlant = new LinkedHashMap<>();
      zone.outlets()
          .forEach(
              o ->
                  byPlant
                      .computeIfAbsent(o.outlet().plant(), p -> new ArrayList<>())
                      .add(o.outlet().id()));
      byPlant.forEach(
          (plant, outlets) ->
              all.add(
                  new Suspicion(
                      "the emitters of " + grove.plantings().get(plant).id(),
                      Kind.CLOGGING,
                      outlets)));
      for (Stretch stretch : Stretch.of(zone, grove)) {
        all.add(new Suspicion(stretch.name(), Kind.LEAK, List.of(stretch.pipeId())));
        all.add(new Suspicion(stretch.name(), Kind.BLOCKAGE, List.of(stretch.pipeId())));
      }
      return all;
    }
  }
}
