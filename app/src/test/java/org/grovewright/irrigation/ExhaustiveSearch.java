package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.Regulator;
import org.grovewright.model.Planting;
import org.grovewright.model.Watering.Run;

/**
 * Finds the cheapest system of a small grove that keeps every rule by trying all of them: every
 * split of the plants into zones, every run of each lateral, every type and number of emitters at
 * each plant, every main, every tubing of each lateral and every regulator. A system is left
 * unsolved only where a sum that its cost cannot come below is no less than the best cost found:
 * its emitters and regulator, the goods and work of the cheapest pipes with the shortest lines, the
 * least water in excess that any pressures within the working ranges of its emitters would bring.
 */
final class ExhaustiveSearch {
  private final DesignSite site;
  private final List<Pipe> mains = new ArrayList<>();
  private final List<Pipe> tubings = new ArrayList<>();
  private final List<Optional<Regulator>> regulators = new ArrayList<>();

  /** By the very list of plants, for the same lists come with many others. */
  private final IdentityHashMap<List<LateralLayout.Served>, Boolean> oneLineDoes =
      new IdentityHashMap<>();

  private int systems;
  private int solved;

  ExhaustiveSearch(DesignSite site) {
    this.site = site;
    for (Pipe pipe : site.catalogue().pipes().values()) {
      if (pipe.use() == Pipe.Use.MAIN) {
        mains.add(pipe);
      } else if (pipe.use() == Pipe.Use.LATERAL) {
        tubings.add(pipe);
      }
    }
    regulators.add(Optional.empty());
    site.catalogue().regulators().values().forEach(r -> regulators.add(Optional.of(r)));
  }

  /**
   * What was found.
   *
   * @param best the cheapest system that keeps the rules; none if there is none
   * @param undecided whether a split that might be cheaper was left out because its cheapest zones
   *     run too long together
   * @param systems number of systems looked at
   * @param solved number of networks solved
   */
  record Found(Optional<Candidate> best, boolean undecided, int systems, int solved) {}

  Found search() {
    DesignPolicy any =
        new DesignPolicy(
            Optional.of(Run.LOOP),
            new EmitterPolicy(true, false, true, 2, 1, 3, 3600, SortLimit.NONE),
            Set.of());
    ZoneWish whole =
        site.zoning().proposed(l -> 0, Double.POSITIVE_INFINITY, Run.LOOP, l -> l).get(0);
    List<int[]> plants = new ArrayList<>();
    for (int l = 0; l < whole.laterals().size(); l++) {
      LateralWish lateral = whole.laterals().get(l);
      List<Integer> sorted = new ArrayList<>(lateral.plants());
      sorted.sort(
          Comparator.comparingDouble(
              i -> lateral.row().stationOf(site.grove().plantings().get(i).at())));
      for (int plant : sorted) {
        plants.add(new int[] {l, plant});
      }
    }
    Candidate best = null;
    double tooLong = Double.POSITIVE_INFINITY;
    for (int cuts = 0; cuts < 1 << (plants.size() - 1); cuts++) {
      List<ZoneResult> zones = new ArrayList<>();
      boolean all = true;
      for (ZoneWish zone : split(whole, plants, cuts)) {
        ZoneResult cheapest = cheapest(zone);
        all &= cheapest != null;
        if (!all) {
          break;
        }
        zones.add(cheapest);
      }
      if (all) {
        Candidate candidate = site.candidate(any, zones);
        if (candidate.hoursShort() > 1e-9) {
          tooLong = Math.min(tooLong, candidate.cost().total());
        }
        if (candidate.keepsRules()
            && (best == null || candidate.cost().total() < best.cost().total())) {
          best = candidate;
        }
      }
    }
    boolean undecided = tooLong < (best == null ? Double.POSITIVE_INFINITY : best.cost().total());
    return new Found(Optional.ofNullable(best), undecided, systems, solved);
  }

  /** The zones of one split: a bit of cuts for each gap between neighbours on the main's way. */
  private static List<ZoneWish> split(ZoneWish whole, List<int[]> plants, int cuts) {
    List<ZoneWish> zones = new ArrayList<>();
    List<LateralWish> open = new ArrayList<>();
    List<Integer> some = new ArrayList<>();
    for (int i = 0; i < plants.size(); i++) {
      some.add(plants.get(i)[1]);
      boolean last = i == plants.size() - 1;
      boolean cut = last || (cuts >> i & 1) == 1;
      if (cut || plants.get(i + 1)[0] != plants.get(i)[0]) {
        LateralWish lateral = whole.laterals().get(plants.get(i)[0]);
        open.add(lateral.serving(lateral.id() + "-" + i, some));
        some = new ArrayList<>();
      }
      if (cut) {
        zones.add(new ZoneWish("zone-" + (zones.size() + 1), open));
        open = new ArrayList<>();
      }
    }
    return zones;
  }

  /** One system of a zone, and what it costs at least. */
  private record Entry(
      List<Run> runs,
      List<List<LateralLayout.Served>> served,
      Pipe main,
      List<Pipe> tubing,
      Optional<Regulator> regulator,
      double least) {}

  /** Pipes of a zone with the goods they cannot do without. */
  private record Pipes(Pipe main, List<Pipe> tubing, double goods) {}

  private ZoneResult cheapest(ZoneWish zone) {
    List<Entry> entries = new ArrayList<>();
    for (List<Run> runs : product(zone.laterals().size(), List.of(Run.values()))) {
      List<Pipes> pipes = pipes(zone, runs);
      for (List<List<LateralLayout.Served>> served : allEmitters(zone)) {
        if (allowed(zone, runs, served)) {
          for (Optional<Regulator> regulator : regulators) {
            if (regulator.isPresent() && !inRange(regulator.get(), served)) {
              continue;
            }
            double least = leastWith(served, regulator);
            for (Pipes p : pipes) {
              entries.add(
                  new Entry(runs, served, p.main(), p.tubing(), regulator, least + p.goods()));
            }
          }
        }
      }
    }
    entries.sort(Comparator.comparingDouble(Entry::least));
    systems += entries.size();
    ZoneResult best = null;
    double bestCost = Double.POSITIVE_INFINITY;
    for (Entry e : entries) {
      if (e.least() >= bestCost) {
        break;
      }
      ZoneDesign design = design(zone, e.runs(), e.served(), e.main(), e.tubing(), e.regulator());
      ZoneResult result = ZoneResult.solve(design, site.network());
      solved++;
      if (result.meets(site.rules())) {
        double cost = moneyOf(result) + site.costs().waterPerM3() * site.costs().wastedM3(result);
        if (cost < bestCost) {
          best = result;
          bestCost = cost;
        }
      }
    }
    return best;
  }

  /** A regulator works in a range of flow; the flow is taken by the rating of the emitters. */
  private static boolean inRange(Regulator regulator, List<List<LateralLayout.Served>> served) {
    double flow =
        served.stream()
            .flatMap(List::stream)
            .mapToDouble(p -> p.count() * p.emitter().nominalFlowM3PerS())
            .sum();
    return regulator.minFlowM3PerS() <= flow && flow <= regulator.maxFlowM3PerS();
  }

  private double moneyOf(ZoneResult zone) {
    Goods goods = Goods.of(List.of(zone), site);
    return site.costs().of(goods.list(), goods.work());
  }

  /** All pipes with the goods no emitters can do without: shortest lines, no emitters. */
  private List<Pipes> pipes(ZoneWish zone, List<Run> runs) {
    List<List<LateralLayout.Served>> fewest = new ArrayList<>();
    for (LateralWish lateral : zone.laterals()) {
      List<LateralLayout.Served> plants = new ArrayList<>();
      for (int plant : lateral.plants()) {
        plants.add(served(plant, anyEmitter(), leastAt(plant)));
      }
      fewest.add(plants);
    }
    List<Pipes> all = new ArrayList<>();
    for (Pipe main : mains) {
      for (List<Pipe> tubing : product(zone.laterals().size(), tubings)) {
        ZoneDesign design = design(zone, runs, fewest, main, tubing, Optional.empty());
        ZoneResult bare = new ZoneResult(design, null, null, List.of(), 0, 1, 1, 1, 0, "");
        all.add(new Pipes(main, tubing, moneyOf(bare)));
      }
    }
    return all;
  }

  private int leastAt(int plant) {
    return site.zoning().isMain(plant) ? site.rules().minEmitters() : 1;
  }

  private EmitterType anyEmitter() {
    return site.catalogue().emitters().values().iterator().next();
  }

  /** Money for emitters and regulator, and the least water that they can waste. */
  private double leastWith(List<List<LateralLayout.Served>> served, Optional<Regulator> regulator) {
    double money = regulator.map(r -> site.costs().unitPrice(r.key())).orElse(0.0);
    double source = site.network().supply().elevationM();
    double head = site.network().supply().curve().staticHead();
    if (regulator.isPresent()) {
      head = Math.min(head, regulator.get().setPressurePa() / SupplyModel.PASCALS_PER_METRE);
    }
    List<LateralLayout.Served> all = served.stream().flatMap(List::stream).toList();
    double[] low = new double[all.size()];
    double[] high = new double[all.size()];
    for (int i = 0; i < low.length; i++) {
      LateralLayout.Served p = all.get(i);
      money += p.count() * site.costs().unitPrice(p.emitter().key());
      // Emitters may sit up to two metres from the plant's own spot; the ground rises by less than
      // a metre on that way.
      double ground = site.network().terrain().heightAt(p.at()) - 1;
      double most =
          Math.min(
              p.emitter().maxPressurePa() / SupplyModel.PASCALS_PER_METRE, head + source - ground);
      double least = p.emitter().minPressurePa() / SupplyModel.PASCALS_PER_METRE;
      low[i] = p.count() * ZoneNetwork.curveOf(p.emitter()).flow(least);
      high[i] = Math.max(low[i], p.count() * ZoneNetwork.curveOf(p.emitter()).flow(most));
    }
    // The excess is (V/(s q)) x (sum of q) - sum of V for the plant that decides; for any one plant
    // it is least where that plant gives most and all others least.
    double water = 0;
    for (int i = 0; i < low.length; i++) {
      List<Overwatering.Flow> flows = new ArrayList<>();
      for (int j = 0; j < low.length; j++) {
        LateralLayout.Served p = all.get(j);
        flows.add(
            new Overwatering.Flow(
                p.plant(),
                j == i ? high[j] : low[j],
                j == i ? ZoneResult.spread(p.emitter(), p.count()) : 1e9));
      }
      // A spread without bound takes the other plants out of the decision.
      water = Math.max(water, site.costs().overwatering().perYearM3(flows));
    }
    return money + water * site.costs().lifeYears() * site.costs().waterPerM3();
  }

  private boolean allowed(ZoneWish zone, List<Run> runs, List<List<LateralLayout.Served>> served) {
    for (int l = 0; l < runs.size(); l++) {
      LateralWish wish = zone.laterals().get(l);
      if (runs.get(l) == Run.DEAD_END
          && !oneLineDoes.computeIfAbsent(
              served.get(l),
              plants -> new OneSide(site).halfDry(lay(wish, Run.DEAD_END, plants)).isEmpty())) {
        return false;
      }
    }
    return true;
  }

  private List<Line> lay(LateralWish wish, Run run, List<LateralLayout.Served> served) {
    return LateralLayout.lay(
        wish.id(), wish.row().line(), run, served, site.rules().layoutRules(wish.offsetM()));
  }

  private ZoneDesign design(
      ZoneWish zone,
      List<Run> runs,
      List<List<LateralLayout.Served>> served,
      Pipe main,
      List<Pipe> tubing,
      Optional<Regulator> regulator) {
    List<ZoneDesign.LateralDesign> laterals = new ArrayList<>();
    for (int l = 0; l < runs.size(); l++) {
      LateralWish wish = zone.laterals().get(l);
      laterals.add(
          new ZoneDesign.LateralDesign(
              wish.id(),
              wish.row().id(),
              runs.get(l),
              tubing.get(l),
              lay(wish, runs.get(l), served.get(l))));
    }
    return new ZoneDesign(
        zone.id(),
        site.trench().legs(List.of(zone)).get(0),
        main,
        laterals,
        regulator,
        site.catalogue().filters().values().iterator().next());
  }

  /** Every way to give each plant of a zone a type and a number of emitters. */
  private List<List<List<LateralLayout.Served>>> allEmitters(ZoneWish zone) {
    List<List<List<LateralLayout.Served>>> all = new ArrayList<>();
    all.add(List.of());
    for (LateralWish lateral : zone.laterals()) {
      List<List<LateralLayout.Served>> here = new ArrayList<>();
      here.add(List.of());
      for (int plant : lateral.plants()) {
        List<List<LateralLayout.Served>> longer = new ArrayList<>();
        for (List<LateralLayout.Served> before : here) {
          for (EmitterType type : site.catalogue().emitters().values()) {
            for (int count = leastAt(plant); count <= site.rules().maxEmitters(); count++) {
              longer.add(and(before, served(plant, type, count)));
            }
          }
        }
        here = longer;
      }
      List<List<List<LateralLayout.Served>>> more = new ArrayList<>();
      for (List<List<LateralLayout.Served>> before : all) {
        for (List<LateralLayout.Served> one : here) {
          more.add(and(before, one));
        }
      }
      all = more;
    }
    return all;
  }

  private LateralLayout.Served served(int plant, EmitterType type, int count) {
    Planting planting = site.grove().plantings().get(plant);
    return new LateralLayout.Served(plant, planting.id(), planting.at(), type, count);
  }

  private static <T> List<T> and(List<T> before, T one) {
    List<T> longer = new ArrayList<>(before);
    longer.add(one);
    return longer;
  }

  /** All lists of a length whose elements are taken from some options. */
  private static <T> List<List<T>> product(int length, List<T> options) {
    List<List<T>> all = new ArrayList<>();
    all.add(List.of());
    for (int i = 0; i < length; i++) {
      List<List<T>> longer = new ArrayList<>();
      for (List<T> before : all) {
        for (T option : options) {
          longer.add(and(before, option));
        }
      }
      all = longer;
    }
    return all;
  }
}
