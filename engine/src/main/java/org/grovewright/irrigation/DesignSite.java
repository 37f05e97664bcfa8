package org.grovewright.irrigation;

import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Part;
import org.grovewright.model.Grove;

/**
 * What all designs of one grove's system share.
 *
 * @param peakNeed need of each plant in the peak month that the system is laid out for, m3/s as a
 *     mean over the day
 * @param crownRadiusM radius of the crown of each plant at the end of the system's life, metres
 * @param known what is known from groves with plants in other places
 */
record DesignSite(
    Grove grove,
    Catalogue catalogue,
    double[] peakNeed,
    double[] crownRadiusM,
    ZoneNetwork.Site network,
    Rulebook rules,
    Costs costs,
    Zoning zoning,
    MainTrench trench,
    KnownDesigns known) {

  /** A designed system with its goods and cost. */
  Candidate candidate(DesignPolicy policy, List<ZoneResult> zones) {
    Goods goods = Goods.of(zones, this);
    return Candidate.of(policy, zones, goods, grove, rules, costs);
  }

  /** What to advise against water that runs back from a system. */
  BackflowAdvice backflow(List<ZoneResult> zones) {
    return new BackflowAdvice(
        grove, catalogue, network.supply(), network.terrain(), network.parts(), zones);
  }

  /**
   * The ways to build the system. The mains decide how high the water is led and so which backflow
   * preventer it takes; where that loses more than was reckoned with, all is designed once more.
   */
  Designed designed() {
    Alternatives ways = Alternatives.of(this);
    Optional<Part> device = backflow(ways.planned().zones()).device();
    if (device.isEmpty() || device.get().lossCoefficient() <= network.fittings().backflow()) {
      return new Designed(this, ways);
    }
    DesignSite behind =
        new DesignSite(
            grove,
            catalogue,
            peakNeed,
            crownRadiusM,
            network.behind(device.get()),
            rules,
            costs,
            zoning,
            trench,
            known);
    return new Designed(behind, Alternatives.of(behind));
  }

  /** The ways to build a system, and what they were designed for. */
  record Designed(DesignSite with, Alternatives ways) {}

  /** Pressure to expect at the highest plant while a zone runs, pascals. */
  double expectedPressurePa() {
    double atRest =
        network.supply().curve().staticHead() + network.supply().elevationM() - highestPlantM();
    double usable = Math.max(0.5 * atRest, atRest - rules.lossAllowanceM());
    return Math.max(0, usable) * SupplyModel.PASCALS_PER_METRE;
  }

  /** Height of the ground at the highest plant, metres. */
  double highestPlantM() {
    return grove.plantings().stream()
        .mapToDouble(p -> network.terrain().heightAt(p.at()))
        .max()
        .orElse(network.supply().elevationM());
  }
}
