package org.grovewright.irrigation;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.grovewright.catalogue.Filter;
import org.grovewright.model.Point;

/**
 * What the designs of one grove have in common, so that nothing is matched or solved twice: ways
 * that differ in the run of their laterals match the same plants, and ways that differ in one zone
 * share the others.
 */
final class DesignMemory {
  private final DesignSite site;
  private final Map<EmitterPolicy, ZoneMatching> matchings = new HashMap<>();
  private final Map<Sized, ZoneResult> solved = new HashMap<>();

  DesignMemory(DesignSite site) {
    this.site = site;
  }

  /** What the best sizes of a zone depend on. */
  private record Sized(
      List<LateralWish> laterals,
      List<List<LateralLayout.Served>> served,
      List<List<Point>> legs,
      Filter filter) {}

  /** The matching of emitters by a policy. */
  ZoneMatching matching(EmitterPolicy policy) {
    return matchings.computeIfAbsent(policy, p -> new ZoneMatching(site, p));
  }

  /** The best sizes of a zone, found once. */
  ZoneResult sized(Sizing.Fitted zone, Filter filter, Supplier<ZoneResult> find) {
    Sized key = new Sized(zone.wish().laterals(), zone.served(), zone.legs(), filter);
    ZoneResult known = solved.get(key);
    if (known == null) {
      known = site.known().sized(zone, filter, site.network().fittings(), find);
      solved.put(key, known);
    }
    return known;
  }
}
