package org.grovewright.trouble;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import org.grovewright.irrigation.WateringSystem;
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
 * @param readings what was read
 * @param next the reading not taken yet that would tell the likeliest places apart best, with a
 *     value of 0; nothing without a fault, or where no reading would
 */
public record Diagnosis(
    Map<Parameter, Estimate> estimates,
    Map<Parameter, Double> beliefs,
    List<Finding> likeliest,
    boolean pointsToFault,
    double misfit,
    List<FieldReading> readings,
    Optional<FieldReading> next) {
  /** What is thought of a new system before anything is read; common practice, no source. */
  private static final double SUPPLY_BELIEF = 0.4;

  private static final double EMITTER_BELIEF = 0.25;
  private static final double HAZEN_WILLIAMS_BELIEF = 0.1;
  private static final double ROUGHNESS_HEIGHT_BELIEF = 1.0;

  /** Copies the maps and lists. */
  public Diagnosis {
    estimates = new EnumMap<>(estimates);
    beliefs = new EnumMap<>(beliefs);
    likeliest = List.copyOf(likeliest);
    readings = List.copyOf(readings);
  }

  /**
   * Judges readings.
   *
   * @param readings the readings with their places
   * @param grove the grove
   * @param system its watering system
   * @param year year of the plan, from 1, in which they were taken
   * @param noise standard deviation of a reading as a share of it, e.g. 0.05
   * @throws IllegalArgumentException if there is no reading
   */
  public static Diagnosis of(
      List<PlacedReading> readings, Grove grove, WateringSystem system, int year, double noise) {
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("there is no reading in it.");
    }
    return new Maker(readings, grove, system, year, noise).make();
  }

  /** Makes one diagnosis. */
  private static final class Maker {
    private final Grove grove;
    private final WateringSystem system;
    private final int year;
    private final double noise;
    private final List<PlacedReading> taken;
    private final List<ZoneResult> zones = new ArrayList<>();

    /** For each zone what was read, by what was folded shut meanwhile. */
    private final List<Map<Set<String>, List<Reading>>> read = new ArrayList<>();

    Maker(
        List<PlacedReading> readings, Grove grove, WateringSystem system, int year, double noise) {
      this.grove = grove;
      this.system = system;
      this.year = year;
      this.noise = noise;
      this.taken = readings;
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
      double si = placed.reading().value();
      double value = placed.reading().kind() == FieldReading.Kind.PRESSURE ? si / metre : si;
      return new Reading(placed.quantity(), placed.id(), value, placed.deviation(value, noise));
    }

    Diagnosis make() {
      List<Network> asPlanned = zones.stream().map(z -> z.network().network()).toList();
      Map<Parameter, Double> beliefs = beliefs(asPlanned.get(0).formula());
      Fit fit = Calibration.fit(runs(asPlanned), beliefs);
      Ranking worn = rank(asPlanned, factors(fit));
      // the fit may have taken a fault for wear that no system has: try the plan's figures too
      Ranking asNew = rank(asPlanned, Map.of());
      Fit best = fit;
      for (Ranking ranking : List.of(worn, asNew)) {
        for (Finding suspect : ranking.firstOfEachKind()) {
          // the fault bends the fit: fit once more with it
          List<Network> withFault = new ArrayList<>(asPlanned);
          withFault.replaceAll(
              n -> n == asPlanned.get(ranking.zoneOf().get(suspect)) ? with(suspect, n) : n);
          Fit fitted = Calibration.fit(runs(withFault), beliefs);
          best = fitted.misfit() < best.misfit() ? fitted : best;
        }
      }
      double gain = fit.misfit() - best.misfit();
      boolean faulty = gain > threshold(worn.findings().size());
      Ranking ranking = faulty ? rank(asPlanned, factors(best)) : worn;
      fit = faulty ? best : fit;
      List<Finding> all = ranking.findings();
      List<Finding> first = all.subList(0, Math.min(FaultSearch.RANKED, all.size()));
      Optional<FieldReading> next = faulty ? next(ranking, factors(fit), first) : Optional.empty();
      List<FieldReading> read = taken.stream().map(PlacedReading::reading).toList();
      return new Diagnosis(fit.estimates(), beliefs, first, faulty, fit.misfit(), read, next);
    }

    /**
     * Places of all zones in the order of their gain on networks with some factors.
     *
     * @param findings the places
     * @param zoneOf for each its zone
     */
    private record Ranking(List<Finding> findings, Map<Finding, Integer> zoneOf) {
      int zoneOfFirst() {
        return zoneOf.get(findings.get(0));
      }

      List<Finding> firstOfEachKind() {
        Map<Kind, Finding> first = new EnumMap<>(Kind.class);
        findings.forEach(finding -> first.putIfAbsent(finding.suspicion().kind(), finding));
        return List.copyOf(first.values());
      }
    }

    /** The reading that would tell the suspects of the first one's zone apart best. */
    private Optional<FieldReading> next(
        Ranking ranking, Map<Parameter, Double> factors, List<Finding> suspects) {
      ZoneResult zone = zones.get(ranking.zoneOfFirst());
      Network fitted = Calibration.withFactors(zone.network().network(), factors);
      Map<Finding, Network> faulty = new LinkedHashMap<>();
      for (Finding finding : suspects) {
        if (ranking.zoneOf().get(finding) == ranking.zoneOfFirst()) {
          faulty.put(finding, with(finding, fitted));
        }
      }
      return new NextReading(zone, grove, system, year, taken).among(faulty, noise);
    }

    private static Map<Parameter, Double> factors(Fit fit) {
      Map<Parameter, Double> factors = new EnumMap<>(Parameter.class);
      fit.estimates().forEach((parameter, estimate) -> factors.put(parameter, estimate.factor()));
      return factors;
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

    /** Ranks the places of all zones by their gain. */
    private Ranking rank(List<Network> networks, Map<Parameter, Double> factors) {
      List<Finding> findings = new ArrayList<>();
      Map<Finding, Integer> zoneOf = new IdentityHashMap<>();
      for (int z = 0; z < zones.size(); z++) {
        Network fitted = Calibration.withFactors(networks.get(z), factors);
        List<Finding> ofZone = FaultSearch.rank(runs(z, fitted), suspicions(zones.get(z)));
        for (Finding finding : ofZone) {
          findings.add(finding);
          zoneOf.put(finding, z);
        }
      }
      findings.sort(Comparator.comparingDouble(finding -> -finding.gain()));
      return new Ranking(findings, zoneOf);
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
