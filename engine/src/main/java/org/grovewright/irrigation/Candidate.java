package org.grovewright.irrigation;

import java.util.List;
import org.grovewright.model.Grove;
import org.grovewright.model.Supply;

/**
 * A designed system with its goods and cost.
 *
 * @param policy the choices it was designed with
 * @param zones its zones, each solved
 * @param goods its goods and work
 * @param cost its cost over its life
 * @param emissionUniformity design emission uniformity of its least even zone, share
 * @param zonesShort how far its zones are from keeping the rules of hydraulics
 * @param hoursShort by which share the greatest daily run time or volume of a year exceeds what is
 *     allowed
 */
record Candidate(
    DesignPolicy policy,
    List<ZoneResult> zones,
    Goods goods,
    LifeCost cost,
    double emissionUniformity,
    double zonesShort,
    double hoursShort) {
  private static final double DAY_S = 86_400;

  static Candidate of(
      DesignPolicy policy,
      List<ZoneResult> zones,
      Goods goods,
      Grove grove,
      Rulebook rules,
      Costs costs) {
    return new Candidate(
        policy,
        zones,
        goods,
        costs.of(zones, goods),
        zones.stream().mapToDouble(ZoneResult::emissionUniformity).min().orElse(0),
        zones.stream().mapToDouble(z -> z.shortness(rules)).sum(),
        hoursShort(zones, grove.supply(), costs.overwatering()));
  }

  private static double hoursShort(
      List<ZoneResult> zones, Supply supply, Overwatering overwatering) {
    double allowedS =
        supply.allowedHours().isEmpty()
            ? DAY_S
            : supply.allowedHours().stream().mapToDouble(Supply.Hours::seconds).sum();
    double allowedM3 = supply.dailyLimitM3().orElse(Double.POSITIVE_INFINITY);
    List<List<Overwatering.Flow>> flows = zones.stream().map(Costs::flows).toList();
    double most = 0;
    for (int month = 1; month <= 12; month++) {
      double seconds = 0;
      double volume = 0;
      for (int z = 0; z < zones.size(); z++) {
        double run = overwatering.runShare(flows.get(z), month) * DAY_S;
        seconds += run;
        volume += run * zones.get(z).flowM3PerS();
      }
      most = Math.max(most, Math.max(seconds / allowedS, volume / allowedM3));
    }
    return Math.max(0, most - 1);
  }

  boolean keepsRules() {
    return zonesShort <= 1e-9 && hoursShort <= 1e-9;
  }

  /** Whether it goes before another: by rules kept, then by cost. */
  boolean beats(Candidate other) {
    double mine = keepsRules() ? 0 : zonesShort + hoursShort;
    double others = other.keepsRules() ? 0 : other.zonesShort + other.hoursShort;
    return mine < others - 1e-9
        || mine <= others + 1e-9 && cost.total() < other.cost.total() - 1e-9;
  }

  /** Whether it is no dearer and no less even than another, and better in one of both. */
  boolean dominates(Candidate other) {
    return cost.total() <= other.cost.total()
        && emissionUniformity >= other.emissionUniformity
        && (cost.total() < other.cost.total() || emissionUniformity > other.emissionUniformity);
  }
}
