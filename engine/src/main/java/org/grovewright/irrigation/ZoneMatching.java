package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Regulator;
import org.grovewright.model.Supply;

/**
 * Gives the plants of a zone the emitters that {@link EmitterMatch} finds among few sorts, and says
 * which few sorts serve the zones of a system best.
 */
final class ZoneMatching {
  private static final double DAY_S = 86_400;

  /** Sorts of which all combinations are tried. */
  private static final int MOST_COMBINED = 6;

  private final DesignSite with;
  private final EmitterChoice choice;
  private final EmitterPolicy policy;
  private final Map<OptionKey, List<EmitterMatch.Option>> options = new HashMap<>();
  private final Map<MatchKey, Matched> known = new HashMap<>();

  ZoneMatching(DesignSite with, EmitterPolicy policy) {
    this.with = with;
    this.policy = policy;
    this.choice =
        new EmitterChoice(
            with.catalogue(),
            with.rules(),
            with.grove().preferences().units(),
            with.expectedPressurePa(),
            policy);
  }

  /** The emitters that are chosen from. */
  EmitterChoice choice() {
    return choice;
  }

  /** What the emitters of a zone depend on. */
  private record MatchKey(
      List<List<Integer>> plants, List<EmitterType> sorts, double flowLimit, int zones) {}

  private record OptionKey(Optional<EmitterType> given, boolean main, List<EmitterType> sorts) {}

  /** The emitters of a zone, by lateral, and what they and their water come to over the life. */
  private record Matched(List<List<LateralLayout.Served>> served, double money) {}

  /**
   * The sorts of emitter that the zones of a system share, so few as the policy wants, and of all
   * so few those with which emitters and water cost least; none where there is no limit.
   *
   * @param usual for each zone its plants by lateral with their usual emitters
   * @param flowLimit flow that a zone may draw, m3/s
   */
  List<EmitterType> sorts(
      List<ZoneWish> zones, List<List<List<LateralLayout.Served>>> usual, double flowLimit) {
    if (!policy.sorts().limits()) {
      return List.of();
    }
    double enough = 0;
    for (List<List<LateralLayout.Served>> zone : usual) {
      for (List<LateralLayout.Served> lateral : zone) {
        for (LateralLayout.Served p : lateral) {
          enough = Math.max(enough, with.peakNeed()[p.plant()] / longestShare(zones.size()));
        }
      }
    }
    List<EmitterType> all = choice.ratings(enough, with.costs()::unitPrice);
    if (all.size() > MOST_COMBINED) {
      all = mostUsed(all, zones, usual, flowLimit);
    }
    if (all.size() <= policy.sorts().perZone()) {
      return all;
    }
    List<EmitterType> best = all;
    double least = Double.POSITIVE_INFINITY;
    for (List<EmitterType> some : combinations(all, policy.sorts().inAll())) {
      double money = 0;
      for (int z = 0; z < zones.size(); z++) {
        if (usual.get(z).stream().anyMatch(lateral -> !lateral.isEmpty())) {
          money += money(zones.get(z), usual.get(z), some, flowLimit, zones.size());
        }
      }
      if (money < least) {
        least = money;
        best = some;
      }
    }
    return best;
  }

  /** Those sorts that most plants would have if all of them were there. */
  private List<EmitterType> mostUsed(
      List<EmitterType> all,
      List<ZoneWish> zones,
      List<List<List<LateralLayout.Served>>> usual,
      double flowLimit) {
    Map<EmitterType, Integer> plants = new LinkedHashMap<>();
    all.forEach(sort -> plants.put(sort, 0));
    for (int z = 0; z < zones.size(); z++) {
      if (usual.get(z).stream().anyMatch(lateral -> !lateral.isEmpty())) {
        for (List<LateralLayout.Served> lateral :
            matched(zones.get(z), usual.get(z), all, flowLimit, zones.size()).served()) {
          lateral.forEach(p -> plants.computeIfPresent(p.emitter(), (sort, n) -> n + 1));
        }
      }
    }
    Set<EmitterType> kept = new HashSet<>();
    plants.entrySet().stream()
        .sorted(Comparator.comparingInt((Map.Entry<EmitterType, Integer> e) -> -e.getValue()))
        .limit(MOST_COMBINED)
        .forEach(entry -> kept.add(entry.getKey()));
    return all.stream().filter(kept::contains).toList();
  }

  /** All lists of so many, or of all where there are no more. */
  private static <T> List<List<T>> combinations(List<T> all, int number) {
    if (number >= all.size()) {
      return List.of(all);
    }
    List<List<T>> combinations = new ArrayList<>();
    for (int bits = 0; bits < 1 << all.size(); bits++) {
      if (Integer.bitCount(bits) == number) {
        List<T> some = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
          if ((bits >> i & 1) == 1) {
            some.add(all.get(i));
          }
        }
        combinations.add(some);
      }
    }
    return combinations;
  }

  /**
   * The emitters of a zone.
   *
   * @param usual its plants, by lateral, with the emitters they have where the owner fixed them
   * @param sorts sorts that the system has; none leaves them open
   * @param flowLimit flow that it may draw, m3/s
   * @param zones number of zones that share the hours of a day
   */
  List<List<LateralLayout.Served>> of(
      ZoneWish zone,
      List<List<LateralLayout.Served>> usual,
      List<EmitterType> sorts,
      double flowLimit,
      int zones) {
    return best(zone, usual, sorts, flowLimit, zones).served();
  }

  /** What emitters and water of a zone come to over the life, were the pressure the same at all. */
  double money(
      ZoneWish zone,
      List<List<LateralLayout.Served>> usual,
      List<EmitterType> sorts,
      double flowLimit,
      int zones) {
    return best(zone, usual, sorts, flowLimit, zones).money();
  }

  private Matched best(
      ZoneWish zone,
      List<List<LateralLayout.Served>> usual,
      List<EmitterType> sorts,
      double flowLimit,
      int zones) {
    Matched best = null;
    for (List<EmitterType> some : combinations(sorts, policy.sorts().perZone())) {
      Matched matched = matched(zone, usual, some, flowLimit, zones);
      if (best == null || matched.money() < best.money()) {
        best = matched;
      }
    }
    return best;
  }

  private Matched matched(
      ZoneWish zone,
      List<List<LateralLayout.Served>> usual,
      List<EmitterType> sorts,
      double flowLimit,
      int zones) {
    List<List<Integer>> plants = zone.laterals().stream().map(LateralWish::plants).toList();
    return known.computeIfAbsent(
        new MatchKey(plants, sorts, flowLimit, zones),
        key -> match(zone, usual, sorts, flowLimit, zones));
  }

  private Matched match(
      ZoneWish zone,
      List<List<LateralLayout.Served>> usual,
      List<EmitterType> sorts,
      double flowLimit,
      int zones) {
    KnownDesigns.MatchedEmitters best = emitters(zone, usual, sorts, flowLimit, zones);
    List<List<LateralLayout.Served>> matched = new ArrayList<>();
    int next = 0;
    for (List<LateralLayout.Served> lateral : usual) {
      List<LateralLayout.Served> here = new ArrayList<>();
      for (LateralLayout.Served p : lateral) {
        EmitterMatch.Option option = best.options().get(next++);
        here.add(
            new LateralLayout.Served(p.plant(), p.id(), p.at(), option.type(), option.count()));
      }
      matched.add(here);
    }
    return new Matched(matched, best.money());
  }

  private KnownDesigns.MatchedEmitters emitters(
      ZoneWish zone,
      List<List<LateralLayout.Served>> usual,
      List<EmitterType> sorts,
      double flowLimit,
      int zones) {
    double drawn = 0;
    for (List<LateralLayout.Served> lateral : usual) {
      for (LateralLayout.Served p : lateral) {
        drawn += p.count() * choice.flowOf(p.emitter());
      }
    }
    double least = leastFlow(usual);
    double most = Math.max(flowLimit, drawn);
    double longest = longestShare(zones);
    return with.known()
        .matched(
            new KnownDesigns.MatchedZone(
                policy,
                zone.laterals(),
                sorts.stream().map(EmitterType::key).toList(),
                with.expectedPressurePa(),
                least,
                most,
                longest),
            () -> {
              List<EmitterMatch.Plant> plants = plants(zone, usual, sorts, longest);
              EmitterMatch.Choice found =
                  new EmitterMatch(plants, with.costs().monthlyFlowValue(), least, most)
                      .best(longest);
              List<EmitterMatch.Option> theirs = new ArrayList<>();
              for (int i = 0; i < plants.size(); i++) {
                theirs.add(plants.get(i).options().get(found.options()[i]));
              }
              return new KnownDesigns.MatchedEmitters(theirs, found.money());
            });
  }

  /** Flow that a regulator needs, where the pressure at rest calls for one; else 0. */
  private double leastFlow(List<List<LateralLayout.Served>> usual) {
    SupplyModel supply = with.network().supply();
    double lowest = Double.POSITIVE_INFINITY;
    double allowed = Double.POSITIVE_INFINITY;
    for (List<LateralLayout.Served> lateral : usual) {
      for (LateralLayout.Served p : lateral) {
        lowest = Math.min(lowest, with.network().terrain().heightAt(p.at()));
        allowed = Math.min(allowed, p.emitter().maxPressurePa());
      }
    }
    double atRest = supply.curve().staticHead() + supply.elevationM() - lowest;
    if (atRest * SupplyModel.PASCALS_PER_METRE <= allowed) {
      return 0;
    }
    double least = Double.POSITIVE_INFINITY;
    for (Regulator regulator : with.catalogue().regulators().values()) {
      if (regulator.market().serves(with.grove().preferences().units())
          && regulator.setPressurePa() <= allowed) {
        least = Math.min(least, regulator.minFlowM3PerS());
      }
    }
    return Double.isInfinite(least) ? 0 : least;
  }

  private List<EmitterMatch.Plant> plants(
      ZoneWish zone,
      List<List<LateralLayout.Served>> usual,
      List<EmitterType> sorts,
      double longestShare) {
    List<EmitterMatch.Plant> plants = new ArrayList<>();
    for (int l = 0; l < usual.size(); l++) {
      for (LateralLayout.Served p : usual.get(l)) {
        plants.add(plant(zone.laterals().get(l), p, sorts, longestShare));
      }
    }
    return plants;
  }

  /** Share of a day that each of so many zones may run, less what roots cannot use. */
  private double longestShare(int zones) {
    Supply supply = with.grove().supply();
    double allowed =
        supply.allowedHours().isEmpty()
            ? DAY_S
            : supply.allowedHours().stream().mapToDouble(Supply.Hours::seconds).sum();
    return allowed
        * supply.allowedDays().share()
        / DAY_S
        / Math.max(1, zones)
        * with.rules().efficiency();
  }

  private EmitterMatch.Plant plant(
      LateralWish lateral,
      LateralLayout.Served usual,
      List<EmitterType> sorts,
      double longestShare) {
    boolean main = with.zoning().isMain(usual.plant());
    Optional<EmitterType> given = main ? lateral.emitter() : lateral.companionEmitter();
    double[] need = with.costs().overwatering().needs(usual.plant());
    if (main && lateral.count().isPresent()) {
      int count = usual.count();
      double flow = count * choice.flowOf(usual.emitter());
      double spread = ZoneResult.spread(usual.emitter(), count);
      return new EmitterMatch.Plant(
          need, List.of(new EmitterMatch.Option(usual.emitter(), count, flow, spread, 0)));
    }
    List<EmitterMatch.Option> all =
        options.computeIfAbsent(
            new OptionKey(given, main, sorts),
            key ->
                choice
                    .among(key.sorts())
                    .options(key.given(), key.main(), with.costs()::unitPrice));
    return new EmitterMatch.Plant(need, inTime(all, need, longestShare));
  }

  /** Those that bring the need within the longest run; the strongest where none does. */
  private static List<EmitterMatch.Option> inTime(
      List<EmitterMatch.Option> all, double[] need, double longestShare) {
    double greatest = 0;
    for (double n : need) {
      greatest = Math.max(greatest, n);
    }
    List<EmitterMatch.Option> fit = new ArrayList<>();
    EmitterMatch.Option strongest = all.get(0);
    for (EmitterMatch.Option option : all) {
      if (option.sure() * longestShare >= greatest) {
        fit.add(option);
      }
      strongest = option.sure() > strongest.sure() ? option : strongest;
    }
    return fit.isEmpty() ? List.of(strongest) : fit.size() == all.size() ? all : fit;
  }
}
