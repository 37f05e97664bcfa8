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
 * @param sorts number of sorts of emitter in it
 * @param tooManySorts whether these are more than are planned with
 * @param peakRunS time that its zones run in all on a day of the peak month, seconds
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
    int sorts,
    boolean tooManySorts,
    double peakRunS,
    double hoursShort) {
  private static final double DAY_S = 86_400;

  /** Difference of emission uniformity that is worth money. */
  private static final double MEASURABLE = 0.001;

  static Candidate of(
      DesignPolicy policy,
      List<ZoneResult> zones,
      Goods goods,
      Grove grove,
      Rulebook rules,
      Costs costs) {
    Peak peak = peak(zones, grove.supply(), costs.overwatering());
    return new Candidate(
        policy,
        zones,
        goods,
        costs.of(zones, goods),
        zones.stream().mapToDouble(ZoneResult::emissionUniformity).min().orElse(0),
        zones.stream().mapToDouble(z -> z.shortness(rules)).sum(),
        sorts(zones),
        tooManySorts(policy, zones, SortLimit.of(grove.watering().wishes(), rules)),
        peak.runS(),
        peak.shortBy());
  }

  private static int sorts(List<ZoneResult> zones) {
    return (int)
        zones.stream()
            .flatMap(zone -> zone.outlets().stream())
            .map(o -> o.outlet().emitter())
            .distinct()
            .count();
  }

  /** Whether a way that was designed without a limit goes beyond it; owners may fix more. */
  private static boolean tooManySorts(
      DesignPolicy policy, List<ZoneResult> zones, SortLimit limit) {
    return !policy.emitters().sorts().limits()
        && (sorts(zones) > limit.inAll()
            || zones.stream().anyMatch(zone -> sorts(List.of(zone)) > limit.perZone()));
  }

  /** The longest run of a day, and by which share it or its volume exceeds what is allowed. */
  private record Peak(double runS, double shortBy) {}

  private static Peak peak(List<ZoneResult> zones, Supply supply, Overwatering overwatering) {
    double allowedS =
        supply.allowedHours().isEmpty()
            ? DAY_S
            : supply.allowedHours().stream().mapToDouble(Supply.Hours::seconds).sum();
    // Where some days only are allowed, these take the water of the others.
    allowedS *= supply.allowedDays().share();
    double allowedM3 =
        supply.dailyLimitM3().orElse(Double.POSITIVE_INFINITY) * supply.allowedDays().share();
    List<List<Overwatering.Flow>> flows = zones.stream().map(Costs::flows).toList();
    double longest = 0;
    double most = 0;
    for (int month = 1; month <= 12; month++) {
      double seconds = 0;
      double volume = 0;
      for (int z = 0; z < zones.size(); z++) {
        double run = overwatering.runShare(flows.get(z), month) * DAY_S;
        seconds += run;
        volume += run * zones.get(z).flowM3PerS();
      }
      longest = Math.max(longest, seconds);
      most = Math.max(most, Math.max(seconds / allowedS, volume / allowedM3));
    }
    return new Peak(longest, Math.max(0, most - 1));
  }

  /** Short name by which an owner chooses it. */
  String key() {
    return policy.key(zones);
  }

  /** Name for readers. */
  String name() {
    return policy.name(zones);
  }

  /** Number of its emitters. */
  int emitters() {
    return zones.stream().mapToInt(z -> z.outlets().size()).sum();
  }

  /** Length of the pipe and tubing that it takes, metres. */
  double pipeM() {
    return goods.list().pipeM();
  }

  boolean keepsRules() {
    return !tooManySorts && zonesShort <= 1e-9 && hoursShort <= 1e-9;
  }

  private double shortness() {
    return keepsRules() ? 0 : zonesShort + hoursShort + (tooManySorts ? 1 : 0);
  }

  /** Whether it goes before another: by rules kept, then by cost. */
  boolean beats(Candidate other) {
    double mine = shortness();
    double others = other.shortness();
    return mine < others - 1e-9
        || mine <= others + 1e-9 && cost.total() < other.cost.total() - 1e-9;
  }

  /**
   * Whether it is no dearer and no less even than another, and better in one of both. Evenness that
   * no one could measure in the field does not count.
   */
  boolean dominates(Candidate other) {
    double evener = emissionUniformity - other.emissionUniformity;
    double cheaper = other.cost.total() - cost.total();
    return cheaper >= 0 && evener >= -MEASURABLE && (cheaper > 0 || evener > MEASURABLE);
  }
}
