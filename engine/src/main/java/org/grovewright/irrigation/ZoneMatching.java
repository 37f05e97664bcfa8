package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Regulator;
import org.grovewright.model.Supply;

/** Gives the plants of a zone the emitters that {@link EmitterMatch} finds. */
final class ZoneMatching {
  private static final double DAY_S = 86_400;

  private final DesignSite with;
  private final EmitterChoice choice;
  private final Map<OptionKey, List<EmitterMatch.Option>> options = new HashMap<>();
  private final Map<MatchKey, List<List<LateralLayout.Served>>> known = new HashMap<>();

  ZoneMatching(DesignSite with, EmitterChoice choice) {
    this.with = with;
    this.choice = choice;
  }

  /** What the emitters of a zone depend on within one design. */
  private record MatchKey(List<LateralWish> laterals, int zones) {}

  private record OptionKey(Optional<EmitterType> given, boolean main) {}

  /**
   * The emitters of a zone.
   *
   * @param usual its plants, by lateral, with the emitters they have where the owner fixed them
   * @param flowLimit flow that it may draw, m3/s
   * @param zones number of zones that share the hours of a day
   */
  List<List<LateralLayout.Served>> of(
      ZoneWish zone, List<List<LateralLayout.Served>> usual, double flowLimit, int zones) {
    return known.computeIfAbsent(
        new MatchKey(zone.laterals(), zones), key -> matched(zone, usual, flowLimit, zones));
  }

  private List<List<LateralLayout.Served>> matched(
      ZoneWish zone, List<List<LateralLayout.Served>> usual, double flowLimit, int zones) {
    List<EmitterMatch.Plant> plants = plants(zone, usual, zones);
    int[] chosen = match(plants, usual, flowLimit).best(longestShare(zones)).options();
    List<List<LateralLayout.Served>> matched = new ArrayList<>();
    int next = 0;
    for (List<LateralLayout.Served> lateral : usual) {
      List<LateralLayout.Served> here = new ArrayList<>();
      for (LateralLayout.Served p : lateral) {
        EmitterMatch.Option option = plants.get(next).options().get(chosen[next]);
        here.add(
            new LateralLayout.Served(p.plant(), p.id(), p.at(), option.type(), option.count()));
        next++;
      }
      matched.add(here);
    }
    return matched;
  }

  /** What emitters and water of a zone come to over the life, were the pressure the same at all. */
  double money(ZoneWish zone, List<List<LateralLayout.Served>> usual, double flowLimit, int zones) {
    return match(plants(zone, usual, zones), usual, flowLimit).best(longestShare(zones)).money();
  }

  private EmitterMatch match(
      List<EmitterMatch.Plant> plants, List<List<LateralLayout.Served>> usual, double flowLimit) {
    double drawn = 0;
    for (List<LateralLayout.Served> lateral : usual) {
      for (LateralLayout.Served p : lateral) {
        drawn += p.count() * choice.flowOf(p.emitter());
      }
    }
    return new EmitterMatch(
        plants, with.costs().monthlyFlowValue(), leastFlow(usual), Math.max(flowLimit, drawn));
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
      ZoneWish zone, List<List<LateralLayout.Served>> usual, int zones) {
    List<EmitterMatch.Plant> plants = new ArrayList<>();
    for (int l = 0; l < usual.size(); l++) {
      for (LateralLayout.Served p : usual.get(l)) {
        plants.add(plant(zone.laterals().get(l), p, zones));
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

  private EmitterMatch.Plant plant(LateralWish lateral, LateralLayout.Served usual, int zones) {
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
            new OptionKey(given, main),
            key -> choice.options(key.given(), key.main(), with.costs()::unitPrice));
    return new EmitterMatch.Plant(need, inTime(all, need, longestShare(zones)));
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
    return fit.isEmpty() ? List.of(strongest) : fit;
  }
}
