package org.grovewright.irrigation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Filter;

/**
 * Parts of designs that are found once for several groves which differ in nothing but where plants
 * stand: while one plant is moved, other zones stay as they are, and what a plant needs does not
 * change. Each part is kept under all that it depends on, so a design made with what is known is
 * the same as one made without. For one thread.
 */
public final class KnownDesigns {
  /** Zones of all ways to water a large grove, twice over. */
  private static final int MOST_ZONES = 200;

  private static final int MOST_MATCHES = 2000;

  private final Map<SizedZone, ZoneResult> sized = recent(MOST_ZONES);
  private final Map<MatchedZone, MatchedEmitters> matched = recent(MOST_MATCHES);
  private final Map<StagedZone, StagedSite> staged = recent(MOST_ZONES);

  private static <K, V> Map<K, V> recent(int most) {
    return new LinkedHashMap<>(16, 0.75f, true) {
      private static final long serialVersionUID = 1L;

      @Override
      protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
        return size() > most;
      }
    };
  }

  /** What the sizes of a zone depend on: its plants with places and emitters, and the head. */
  private record SizedZone(
      String id,
      List<LateralWish> laterals,
      List<List<Place>> served,
      Filter filter,
      ZoneNetwork.Fittings fittings) {}

  /** A plant with its emitters, named by their key. */
  private record Place(int plant, double x, double y, String emitter, int count) {}

  /**
   * What the emitters of a zone depend on besides the needs of its plants. Where exactly they stand
   * is not part of it.
   *
   * @param policy how emitters are chosen
   * @param laterals the zone's laterals
   * @param sorts sorts of emitter that there are, by key
   * @param pressurePa pressure to be expected
   * @param leastFlow flow that the regulator needs, m3/s
   * @param flowLimit flow that the zone may draw, m3/s
   * @param longestShare share of a day that it may run
   */
  record MatchedZone(
      EmitterPolicy policy,
      List<LateralWish> laterals,
      List<String> sorts,
      double pressurePa,
      double leastFlow,
      double flowLimit,
      double longestShare) {}

  /**
   * Emitters that were matched to the plants of a zone.
   *
   * @param options what each plant has, in the order of the zone's laterals
   * @param money what they and their water come to over the life
   */
  record MatchedEmitters(List<EmitterMatch.Option> options, double money) {}

  /** A zone as it was solved, with the sorts that may be on the site. */
  private record StagedZone(
      String id, ZoneNetwork network, SortLimit limit, Set<EmitterType> onSite) {
    @Override
    public boolean equals(Object other) {
      // A network is known by being the very same one; comparing its parts would take long.
      return other instanceof StagedZone zone
          && zone.network == network
          && zone.id.equals(id)
          && zone.limit.equals(limit)
          && zone.onSite.equals(onSite);
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(network);
    }
  }

  /** A staged zone, and the sorts that are on the site with it. */
  record StagedSite(EmitterStaging.Staged zone, Set<EmitterType> onSite) {}

  ZoneResult sized(
      Sizing.Fitted zone, Filter filter, ZoneNetwork.Fittings fittings, Supplier<ZoneResult> find) {
    List<List<Place>> served =
        zone.served().stream()
            .map(lateral -> lateral.stream().map(KnownDesigns::place).toList())
            .toList();
    return find(
        sized,
        new SizedZone(zone.wish().id(), zone.wish().laterals(), served, filter, fittings),
        find);
  }

  private static Place place(LateralLayout.Served plant) {
    return new Place(
        plant.plant(), plant.at().x(), plant.at().y(), plant.emitter().key(), plant.count());
  }

  MatchedEmitters matched(MatchedZone zone, Supplier<MatchedEmitters> find) {
    return find(matched, zone, find);
  }

  StagedSite staged(
      ZoneResult zone, SortLimit limit, Set<EmitterType> onSite, Supplier<StagedSite> find) {
    return find(staged, new StagedZone(zone.design().id(), zone.network(), limit, onSite), find);
  }

  private static <K, V> V find(Map<K, V> known, K key, Supplier<V> find) {
    V value = known.get(key);
    if (value == null) {
      value = find.get();
      known.put(key, value);
    }
    return value;
  }
}
