package org.grovewright.irrigation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Pipe;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Watering.Run;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/**
 * Turns plants, needs and supply into zones with every size chosen.
 *
 * <p>Emitters come first, from the pressure there is and the need at the peak; then zones, from
 * what the supply carries; then pipe sizes and regulator, by trial on the solved network. Where the
 * supply turns out too weak for a proposed zone, or the slope too uneven, the zone is halved.
 */
final class Designer {
  /**
   * A zone is halved only where the worse half falls short by less than this share of the whole.
   */
  private static final double HELPS = 0.8;

  /** Zones of more plants than this are cut at few places only. */
  private static final int MOST_CUTS = 10;

  private final Grove grove;
  private final DesignSite with;
  private final DesignPolicy policy;
  private final double[] peakNeed;
  private final Rulebook rules;
  private final ZoneNetwork.Site site;
  private final Zoning zoning;
  private EmitterChoice choice;
  private final ZoneMatching matching;
  private final double flowLimitM3PerS;
  private final DesignMemory memory;
  private List<EmitterType> sorts = List.of();

  /** A designer for a grove that keeps to a policy. */
  Designer(DesignSite with, DesignPolicy policy, DesignMemory memory) {
    this.with = with;
    this.policy = policy;
    this.grove = with.grove();
    this.peakNeed = with.peakNeed();
    this.rules = with.rules();
    this.site = with.network();
    this.zoning = with.zoning();
    this.memory = memory;
    this.matching = memory.matching(policy.emitters());
    this.choice = matching.choice();
    this.flowLimitM3PerS = flowLimit();
  }

  /** Zones with all sizes chosen, each solved. */
  List<ZoneResult> design() {
    if (policy.run().isEmpty()) {
      chooseSorts(zoning.asDrawn());
      return solve(zoning.asDrawn());
    }
    return solve(numbered(divided(proposed())));
  }

  private List<ZoneWish> proposed() {
    List<ZoneWish> zones =
        zoning.cut(
            zoning.proposed(this::flowOf, flowLimitM3PerS, policy.run().orElseThrow(), this::sided),
            policy.cutAfter());
    chooseSorts(zones);
    return zones;
  }

  private void chooseSorts(List<ZoneWish> zones) {
    sorts = matching.sorts(zones, zones.stream().map(this::usual).toList(), flowLimitM3PerS);
    choice = matching.choice().among(sorts);
  }

  private List<List<LateralLayout.Served>> usual(ZoneWish zone) {
    return zone.laterals().stream().map(this::served).toList();
  }

  /**
   * The plant after which to begin another zone so that most is saved on emitters and water, if
   * that seems to outweigh the further valve and main. Pressures are taken to be the same at all
   * plants; the solved network has the last word.
   */
  Optional<Integer> worthwhileCut() {
    List<ZoneWish> zones = proposed();
    int more = zones.size() + 1;
    if (more > rules.mostZones()) {
      return Optional.empty();
    }
    double valve = valveMoney(more) - valveMoney(zones.size());
    double best = 0;
    Integer after = null;
    for (ZoneWish zone : zones) {
      double whole = money(zone, more);
      for (int plant : cuts(zone)) {
        List<ZoneWish> parts = zoning.cut(List.of(zone), Set.of(plant));
        double saved = whole - valve - with.trench().moneyBeside(zones, parts.get(1));
        for (ZoneWish part : parts) {
          saved -= money(part, more);
        }
        if (saved > best) {
          best = saved;
          after = plant;
        }
      }
    }
    return Optional.ofNullable(after);
  }

  /** Plants of a zone after which it may be cut; of a large zone, ends and middles of rows. */
  private List<Integer> cuts(ZoneWish zone) {
    List<Integer> all = new ArrayList<>();
    List<Integer> few = new ArrayList<>();
    for (LateralWish lateral : zone.laterals()) {
      List<Integer> along = zoning.alongRow(lateral);
      // What the owner laid as one line is not cut; a zone may end with it.
      List<Integer> plants =
          lateral.whole() && !along.isEmpty()
              ? along.subList(along.size() - 1, along.size())
              : along;
      all.addAll(plants);
      if (plants.size() > 1) {
        few.add(plants.get((plants.size() - 1) / 2));
      }
      if (!plants.isEmpty()) {
        few.add(plants.get(plants.size() - 1));
      }
    }
    List<Integer> cuts = all.size() > MOST_CUTS ? few : all;
    return cuts.isEmpty() ? cuts : cuts.subList(0, cuts.size() - 1);
  }

  private double money(ZoneWish zone, int zones) {
    return matching.money(zone, usual(zone), sorts, flowLimitM3PerS, zones);
  }

  private double valveMoney(int zones) {
    return site.parts().timers(grove.supply().kind(), zones).stream()
        .mapToDouble(part -> with.costs().unitPrice(part.key()))
        .sum();
  }

  /** The lateral, or a loop in its place where one line would leave a tree half dry. */
  private LateralWish sided(LateralWish lateral) {
    if (lateral.run() != Run.DEAD_END || lateral.whole()) {
      return lateral;
    }
    List<Line> lines =
        LateralLayout.lay(lateral, served(lateral), rules.layoutRules(lateral.offsetM()));
    return new OneSide(with).halfDry(lines).isEmpty() ? lateral : lateral.running(Run.LOOP);
  }

  /**
   * A zone with what is known of how far it falls short, so that no zone is solved for it twice.
   */
  private record Judged(ZoneWish zone, double shortness) {}

  /** Zones of which each keeps every rule, or cannot be helped by being halved. */
  private List<ZoneWish> divided(List<ZoneWish> zones) {
    Deque<Judged> open = new ArrayDeque<>();
    zones.forEach(zone -> open.add(judged(zone)));
    List<ZoneWish> done = new ArrayList<>();
    while (!open.isEmpty()) {
      Judged whole = open.pop();
      boolean full = done.size() + open.size() + 2 > rules.mostZones();
      List<ZoneWish> halves =
          full || whole.shortness() <= 1e-9 ? List.of() : zoning.halved(whole.zone());
      List<Judged> parts = halves.stream().map(this::judged).toList();
      if (!parts.isEmpty() && worst(parts) < whole.shortness() * HELPS) {
        open.push(parts.get(1));
        open.push(parts.get(0));
      } else {
        done.add(whole.zone());
      }
    }
    return done;
  }

  private Judged judged(ZoneWish zone) {
    double shortness = solve(List.of(zone)).stream().mapToDouble(z -> z.shortness(rules)).sum();
    return new Judged(zone, shortness);
  }

  private static double worst(List<Judged> zones) {
    return zones.stream().mapToDouble(Judged::shortness).max().orElse(0);
  }

  private static List<ZoneWish> numbered(List<ZoneWish> zones) {
    List<ZoneWish> numbered = new ArrayList<>();
    for (ZoneWish zone : zones) {
      numbered.add(new ZoneWish("zone-" + (numbered.size() + 1), zone.laterals()));
    }
    return numbered;
  }

  private List<ZoneResult> solve(List<ZoneWish> zones) {
    List<ZoneWish> watered = new ArrayList<>();
    List<List<List<LateralLayout.Served>>> plants = new ArrayList<>();
    for (ZoneWish zone : zones) {
      List<List<LateralLayout.Served>> served = served(zone, zones.size());
      if (served.stream().anyMatch(s -> !s.isEmpty())) {
        watered.add(zone);
        plants.add(served);
      }
    }
    List<List<List<Point>>> legs = with.trench().legs(watered);
    List<Sizing.Fitted> fitted = new ArrayList<>();
    for (int i = 0; i < watered.size(); i++) {
      fitted.add(new Sizing.Fitted(watered.get(i), plants.get(i), legs.get(i)));
    }
    List<ZoneResult> results = sized(fitted, 0);
    double flow = FilterCheck.largestFlow(results);
    FilterCheck check = new FilterCheck(site.supply(), rules);
    // Emitters that do not compensate may give more than they are rated for.
    return results.isEmpty() || check.carries(results.get(0).design().filter(), flow)
        ? results
        : sized(fitted, flow);
  }

  /** The zones with all sizes, behind a filter for a flow that was solved before. */
  private List<ZoneResult> sized(List<Sizing.Fitted> fitted, double solvedFlow) {
    Sizing sizing =
        new Sizing(grove, with.catalogue(), rules, site, with.costs(), fitted, solvedFlow);
    List<ZoneResult> results = new ArrayList<>();
    for (Sizing.Fitted zone : fitted) {
      ZoneResult best = memory.sized(zone, sizing.filter(), () -> sizing.best(zone));
      results.add(best.named(zone.wish().id()));
    }
    return results;
  }

  /**
   * The plants of a zone with their emitters, by lateral.
   *
   * @param zones number of zones that share the hours of a day
   */
  private List<List<LateralLayout.Served>> served(ZoneWish zone, int zones) {
    List<List<LateralLayout.Served>> usual = usual(zone);
    if (!policy.emitters().matched() || usual.stream().allMatch(List::isEmpty)) {
      return usual;
    }
    return matching.of(zone, usual, sorts, flowLimitM3PerS, zones);
  }

  /** The plants of a lateral with emitters counted for the usual run at the peak. */
  private List<LateralLayout.Served> served(LateralWish lateral) {
    double greatest = 0;
    double companions = 0;
    int companionCount = 0;
    for (int plant : lateral.plants()) {
      if (zoning.isMain(plant)) {
        greatest = Math.max(greatest, peakNeed[plant]);
      } else {
        companions += peakNeed[plant];
        companionCount++;
      }
    }
    double greatestNeed = greatest;
    EmitterType main = lateral.emitter().orElseGet(() -> choice.forMains(greatestNeed));
    double usual = companionCount == 0 ? 0 : companions / companionCount;
    EmitterType small = lateral.companionEmitter().orElseGet(() -> choice.forCompanions(usual));
    List<LateralLayout.Served> served = new ArrayList<>();
    for (int i : lateral.plants()) {
      Planting plant = grove.plantings().get(i);
      boolean isMain = zoning.isMain(i);
      EmitterType emitter = isMain ? main : small;
      int count =
          isMain && lateral.count().isPresent()
              ? lateral.count().getAsInt()
              : choice.count(emitter, peakNeed[i], isMain);
      served.add(new LateralLayout.Served(i, plant.id(), plant.at(), emitter, count));
    }
    return served;
  }

  private double flowOf(LateralWish lateral) {
    return served(lateral).stream().mapToDouble(p -> p.count() * choice.flowOf(p.emitter())).sum();
  }

  /** Flow a zone may draw so that enough pressure is left at the highest plant, m3/s. */
  private double flowLimit() {
    EmitterType usual = choice.forMains(max(peakNeed));
    double rise = with.highestPlantM() - site.supply().elevationM();
    double atEmitter = usual.minPressurePa() / SupplyModel.PASCALS_PER_METRE;
    double spare = site.supply().curve().staticHead() - rise - atEmitter;
    double needed = rise + atEmitter + Math.min(rules.lossAllowanceM(), spare / 2);
    double carried = site.supply().curve().flowAt(Math.max(0, needed));
    if (Double.isInfinite(carried)) {
      // A tank's own level does not fall with flow; what limits it is the pipe, so start from the
      // speed limit in the widest main and let the solved network say what really arrives.
      double widest =
          with.catalogue().pipes().values().stream()
              .filter(p -> p.use() == Pipe.Use.MAIN)
              .mapToDouble(Pipe::insideDiameterM)
              .max()
              .orElse(0.025);
      carried = Math.PI / 4 * widest * widest * rules.maxVelocityMPerS();
    }
    double least = 2 * usual.nominalFlowM3PerS();
    return Math.max(least, rules.supplyShare() * carried);
  }

  private static double max(double[] values) {
    double most = 0;
    for (double v : values) {
      most = Math.max(most, v);
    }
    return most;
  }

  /** Remarks on zones that do not keep every rule. */
  static List<Finding> remarks(List<ZoneResult> zones, Grove grove, Rulebook rules) {
    List<Finding> remarks = new ArrayList<>();
    for (ZoneResult zone : zones) {
      String id = zone.design().id();
      ZoneResult.OutletResult weakest = zone.weakest();
      String plant = grove.plantings().get(weakest.outlet().plant()).id();
      if (weakest.pressurePa() < weakest.outlet().emitter().minPressurePa() * (1 - 1e-9)) {
        remarks.add(
            Finding.of(
                "irrigation.pressure-too-low",
                Severity.SHORTFALL,
                id,
                "Only {0} reaches the emitters at "
                    + plant
                    + ", which need {1}. The supply cannot carry this zone: give it fewer plants,"
                    + " wider pipe or emitters for less pressure.",
                new Quantity(weakest.pressurePa(), Kind.PRESSURE),
                new Quantity(weakest.outlet().emitter().minPressurePa(), Kind.PRESSURE)));
      }
      if (zone.outlets().stream()
          .anyMatch(o -> o.pressurePa() > o.outlet().emitter().maxPressurePa())) {
        remarks.add(
            Finding.of(
                "irrigation.pressure-too-high",
                Severity.SHORTFALL,
                id,
                "The pressure rises to {0}, more than the emitters are made for. Fit a regulator.",
                new Quantity(zone.maxPressurePa(), Kind.PRESSURE)));
      }
      if (rules.evenness().shortness(zone) > 1e-9) {
        remarks.add(
            Finding.of(
                "irrigation.uneven",
                Severity.SHORTFALL,
                id,
                "The plants of this zone are watered unevenly: the emission uniformity is {0}, and"
                    + " {1} counts as good. "
                    + plant
                    + " gets least.",
                new Quantity(zone.emissionUniformity(), Kind.SHARE),
                new Quantity(rules.evenness().of(zone).good(), Kind.SHARE)));
      }
      if (zone.maxVelocityMPerS() > rules.maxVelocityMPerS() + 1e-9) {
        remarks.add(
            Finding.of(
                "irrigation.too-fast",
                Severity.SHORTFALL,
                id,
                "Water runs at {0} in "
                    + zone.fastestPipe()
                    + "; above {1} it hammers and wears. Choose a wider pipe.",
                new Quantity(zone.maxVelocityMPerS(), Kind.VELOCITY),
                new Quantity(rules.maxVelocityMPerS(), Kind.VELOCITY)));
      }
    }
    return remarks;
  }
}
