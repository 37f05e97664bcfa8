package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Filter;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.Regulator;
import org.grovewright.demand.WorkAmount;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences;
import org.grovewright.model.Supply;
import org.grovewright.model.Watering.Run;

/**
 * Finds the sizes of a zone: main, tubing of each lateral and regulator that cost least over the
 * life of the system, goods, work and water given in excess together, and that on the solved
 * network keep every emitter in its working range, the water below the speed limit and the emission
 * uniformity good. Where none do, those that come nearest.
 *
 * <p>Combinations are solved from the cheapest on. The search ends once the goods alone, with the
 * water that equal pressure everywhere would still waste, cost as much as the best found; so within
 * {@link #CLOSE} the best is found, unless {@link #MOST_SOLVES} runs out first.
 */
final class Sizing {
  /** Most networks solved for one zone. */
  private static final int MOST_SOLVES = 40;

  /** Most combinations looked at for one zone. */
  private static final int MOST_PICKS = 3000;

  /** More laterals than this share one size of tubing, to keep the combinations few. */
  private static final int MOST_SIZED_ALONE = 3;

  /** Share of the cost that is not worth another solve. */
  private static final double CLOSE = 0.002;

  private final Grove grove;
  private final Catalogue catalogue;
  private final Rulebook rules;
  private final ZoneNetwork.Site site;
  private final Costs costs;
  private final Preferences.Units units;
  private final Filter filter;

  /**
   * Sizes for zones that share one filter.
   *
   * @param zones all zones of the system
   * @param solvedFlow flow of the largest zone as it was solved with another filter, m3/s; 0 where
   *     none was solved yet
   */
  Sizing(
      Grove grove,
      Catalogue catalogue,
      Rulebook rules,
      ZoneNetwork.Site site,
      Costs costs,
      List<Fitted> zones,
      double solvedFlow) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.rules = rules;
    this.site = site;
    this.costs = costs;
    this.units = grove.preferences().units();
    this.filter = filterFor(zones, solvedFlow);
  }

  /** The filter that all zones share. */
  Filter filter() {
    return filter;
  }

  /**
   * A zone whose plants have their emitters, but whose pipes are still open.
   *
   * @param wish the zone
   * @param served for each lateral, its plants with their emitters
   * @param legs legs of its main
   */
  record Fitted(ZoneWish wish, List<List<LateralLayout.Served>> served, List<List<Point>> legs) {}

  /** The best design of a zone, solved. */
  ZoneResult best(Fitted zone) {
    return new Search(zone).best();
  }

  /** A pipe that may be chosen, and what it costs with its fittings. */
  private record PipeOption(Pipe pipe, double cost) {}

  /** The choice of one zone's sizes. */
  private final class Search {
    private final Fitted zone;
    private final List<List<Point>> legs;
    private final List<List<Line>> lines;
    private final List<PipeOption> mains;
    private final List<List<PipeOption>> tubings;
    private final List<Optional<Regulator>> regulators;
    private final double leastWater;
    private final List<List<Integer>> tooNarrow = new ArrayList<>();
    private int solves;
    private ZoneResult best;
    private double bestCost = Double.POSITIVE_INFINITY;
    private ZoneResult nearest;

    Search(Fitted zone) {
      this.zone = zone;
      legs = zone.legs();
      lines = lines(zone);
      mains = mainOptions();
      tubings = tubingOptions();
      regulators = regulators(zone, nominalFlow(zone));
      leastWater =
          costs.waterPerM3()
              * costs.lifeYears()
              * costs.overwatering().perYearM3(Costs.nominal(zone));
    }

    ZoneResult best() {
      CheapestFirst combinations = new CheapestFirst(optionCosts());
      int looked = 0;
      while (combinations.hasNext() && solves < MOST_SOLVES && looked++ < MOST_PICKS) {
        CheapestFirst.Pick pick = combinations.next();
        if (pick.cost() + leastWater >= bestCost * (1 - CLOSE)) {
          break;
        }
        if (tooNarrow.stream().anyMatch(failed -> noWider(pick.options(), failed))) {
          continue;
        }
        boolean meets = attempt(pick.options(), pick.cost());
        if (!meets && solves == 1 && !widestMeets()) {
          break;
        }
      }
      return best == null ? nearest : best;
    }

    /** Solves a combination; whether it keeps the rules. */
    private boolean attempt(List<Integer> options, double cost) {
      ZoneResult result = ZoneResult.solve(design(options), site);
      solves++;
      if (result.meets(rules)) {
        double whole = cost + costs.waterPerM3() * costs.wastedM3(result);
        if (whole < bestCost) {
          best = result;
          bestCost = whole;
        }
        return true;
      }
      if (nearest == null || result.shortness(rules) < nearest.shortness(rules) - 1e-9) {
        nearest = result;
      }
      if (result.outlets().stream()
          .allMatch(o -> o.pressurePa() <= o.outlet().emitter().maxPressurePa())) {
        tooNarrow.add(options);
      }
      return false;
    }

    /** Whether the widest pipes keep the rules with any regulator; if not, no pipes will. */
    private boolean widestMeets() {
      boolean any = false;
      double[][] all = optionCosts();
      for (int r = 0; r < regulators.size(); r++) {
        List<Integer> widest = new ArrayList<>();
        double cost = 0;
        for (int i = 0; i < all.length; i++) {
          int option = i == 0 ? r : all[i].length - 1;
          widest.add(option);
          cost += all[i][option];
        }
        any |= attempt(widest, cost);
      }
      return any;
    }

    /** Options are listed from narrow to wide, so wider is a greater index. */
    private boolean noWider(List<Integer> options, List<Integer> failed) {
      if (!options.get(0).equals(failed.get(0))) {
        return false;
      }
      for (int i = 1; i < options.size(); i++) {
        if (options.get(i) > failed.get(i)) {
          return false;
        }
      }
      return true;
    }

    private double[][] optionCosts() {
      double[][] all = new double[2 + tubings.size()][];
      all[0] =
          regulators.stream()
              .mapToDouble(r -> r.map(x -> costs.unitPrice(x.key())).orElse(0.0))
              .toArray();
      all[1] = mains.stream().mapToDouble(PipeOption::cost).toArray();
      for (int i = 0; i < tubings.size(); i++) {
        all[2 + i] = tubings.get(i).stream().mapToDouble(PipeOption::cost).toArray();
      }
      return all;
    }

    private ZoneDesign design(List<Integer> options) {
      List<ZoneDesign.LateralDesign> laterals = new ArrayList<>();
      for (int i = 0; i < lines.size(); i++) {
        int from = Math.min(i, tubings.size() - 1);
        Pipe sized = tubings.get(from).get(options.get(2 + from)).pipe();
        laterals.add(lateral(i, zone.wish().laterals().get(i).tubing().orElse(sized)));
      }
      return zoneOf(mains.get(options.get(1)).pipe(), laterals, regulators.get(options.get(0)));
    }

    private ZoneDesign.LateralDesign lateral(int i, Pipe tubing) {
      LateralWish wish = zone.wish().laterals().get(i);
      return new ZoneDesign.LateralDesign(
          wish.id(), wish.row().id(), wish.run(), tubing, lines.get(i), wish.laid());
    }

    private ZoneDesign zoneOf(
        Pipe main, List<ZoneDesign.LateralDesign> laterals, Optional<Regulator> regulator) {
      return new ZoneDesign(zone.wish().id(), legs, main, laterals, regulator, filter);
    }

    private List<PipeOption> mainOptions() {
      Optional<String> given = grove.watering().mainPipeKey();
      List<Pipe> fit = given.map(k -> List.of(catalogue.pipes().get(k))).orElseGet(this::joinable);
      double least = Paths.length(legs.get(0)) > 0 ? boreFor(leastFlow(zone.served())) : 0;
      Pipe any = fit.get(0);
      List<ZoneDesign.LateralDesign> laterals = new ArrayList<>();
      for (int i = 0; i < lines.size(); i++) {
        laterals.add(lateral(i, any));
      }
      List<PipeOption> options = new ArrayList<>();
      for (Pipe pipe : fit) {
        GoodsList goods = new GoodsList();
        List<WorkAmount> work = new ArrayList<>();
        PipeGoods count = new PipeGoods(site, rules, goods, work, new ArrayList<>());
        count.main(zoneOf(pipe, laterals, Optional.empty()));
        if (count.cementJoints() > 0) {
          work.add(new WorkAmount("cement-joint", "", count.cementJoints(), ""));
          count.fitting("cement", pipe, 1, "");
          count.fitting("primer", pipe, 1, "");
        }
        options.add(new PipeOption(pipe, costs.of(goods, work)));
      }
      return useful(options, least);
    }

    /** Mains that the catalogue has the fittings for, or all where it has them for none. */
    private List<Pipe> joinable() {
      List<Pipe> all = pipes(Pipe.Use.MAIN);
      List<Pipe> fit = new ArrayList<>();
      for (Pipe pipe : all) {
        if (List.of("tee", "elbow", "adaptor").stream()
            .allMatch(role -> site.parts().fitting(role, pipe).isPresent())) {
          fit.add(pipe);
        }
      }
      return fit.isEmpty() ? all : fit;
    }

    private List<List<PipeOption>> tubingOptions() {
      List<List<PipeOption>> options = new ArrayList<>();
      if (lines.size() > MOST_SIZED_ALONE) {
        List<Integer> all = IntStream.range(0, lines.size()).boxed().toList();
        options.add(tubingOptions(all));
        return options;
      }
      for (int i = 0; i < lines.size(); i++) {
        options.add(tubingOptions(List.of(i)));
      }
      return options;
    }

    /** Options for laterals that get the same tubing. */
    private List<PipeOption> tubingOptions(List<Integer> laterals) {
      List<LateralWish> wishes = laterals.stream().map(zone.wish().laterals()::get).toList();
      List<Pipe> fit =
          wishes.stream().allMatch(w -> w.tubing().isPresent())
              ? List.of(wishes.get(0).tubing().orElseThrow())
              : pipes(Pipe.Use.LATERAL);
      double least = 0;
      for (int i : laterals) {
        // The fuller of two ends or sides carries at least half.
        double ends = zone.wish().laterals().get(i).run() == Run.DEAD_END ? 1 : 2;
        least = Math.max(least, boreFor(leastFlow(List.of(zone.served().get(i))) / ends));
      }
      List<PipeOption> options = new ArrayList<>();
      for (Pipe pipe : fit) {
        GoodsList goods = new GoodsList();
        List<WorkAmount> work = new ArrayList<>();
        PipeGoods count = new PipeGoods(site, rules, goods, work, new ArrayList<>());
        for (int i : laterals) {
          count.lateral("", lateral(i, zone.wish().laterals().get(i).tubing().orElse(pipe)));
        }
        options.add(new PipeOption(pipe, costs.of(goods, work)));
      }
      return useful(options, least);
    }

    /** Bore below which this flow is too fast. */
    private double boreFor(double flow) {
      return Math.sqrt(flow / (Math.PI / 4 * rules.maxVelocityMPerS())) * (1 - 1e-9);
    }

    /** Options cheapest first, without those too narrow and those that a cheaper one outdoes. */
    private List<PipeOption> useful(List<PipeOption> options, double leastBore) {
      options.sort(Comparator.comparingDouble(PipeOption::cost).thenComparing(o -> o.pipe().key()));
      List<PipeOption> useful = new ArrayList<>();
      double bore = 0;
      for (PipeOption option : options) {
        double wide = option.pipe().insideDiameterM();
        if (wide > bore && wide >= leastBore) {
          useful.add(option);
          bore = wide;
        }
      }
      return useful.isEmpty()
          ? List.of(
              options.stream()
                  .max(Comparator.comparingDouble(o -> o.pipe().insideDiameterM()))
                  .orElseThrow())
          : useful;
    }
  }

  List<List<Line>> lines(Fitted zone) {
    List<List<Line>> lines = new ArrayList<>();
    for (int i = 0; i < zone.served().size(); i++) {
      LateralWish wish = zone.wish().laterals().get(i);
      lines.add(LateralLayout.lay(wish, zone.served().get(i), rules.layoutRules(wish.offsetM())));
    }
    return lines;
  }

  /** Pipes of a use that the owner's unit system sells, or all where it sells none. */
  private List<Pipe> pipes(Pipe.Use use) {
    List<Pipe> fit = new ArrayList<>();
    for (Pipe pipe : catalogue.pipes().values()) {
      if (pipe.use() == use && pipe.market().serves(units)) {
        fit.add(pipe);
      }
    }
    return fit;
  }

  /** Flow that plants draw at the least pressure their emitters work at, m3/s. */
  private static double leastFlow(List<List<LateralLayout.Served>> laterals) {
    double sum = 0;
    for (List<LateralLayout.Served> lateral : laterals) {
      for (LateralLayout.Served plant : lateral) {
        double least = plant.emitter().minPressurePa() / SupplyModel.PASCALS_PER_METRE;
        sum += plant.count() * ZoneNetwork.curveOf(plant.emitter()).flow(least);
      }
    }
    return sum;
  }

  private static double nominalFlow(Fitted zone) {
    double sum = 0;
    for (List<LateralLayout.Served> lateral : zone.served()) {
      for (LateralLayout.Served plant : lateral) {
        sum += plant.count() * plant.emitter().nominalFlowM3PerS();
      }
    }
    return sum;
  }

  /**
   * The filter all zones share: strong enough for the supply, fine enough for every emitter, its
   * screen and its ports large enough for the largest zone.
   */
  private Filter filterFor(List<Fitted> zones, double solvedFlow) {
    if (grove.watering().filterKey().isPresent()) {
      return catalogue.filters().get(grove.watering().filterKey().get());
    }
    double flow = solvedFlow;
    double opening = Double.POSITIVE_INFINITY;
    for (Fitted zone : zones) {
      flow = Math.max(flow, nominalFlow(zone));
      for (List<LateralLayout.Served> lateral : zone.served()) {
        for (LateralLayout.Served plant : lateral) {
          opening = Math.min(opening, plant.emitter().filterOpeningM());
        }
      }
    }
    double needed = flow;
    double widest = opening;
    // A tank has little pressure to spare, so there the loss decides, else the size.
    boolean tank = grove.supply().kind() == Supply.SupplyKind.GRAVITY_TANK;
    Comparator<Filter> order =
        tank
            ? Comparator.comparingDouble(f -> f.lossPa(needed))
            : Comparator.comparingDouble(Filter::ratedFlowM3PerS);
    FilterCheck check = new FilterCheck(site.supply(), rules);
    List<Filter> all = List.copyOf(catalogue.filters().values());
    // What may burst goes before what may clog where there is none that does neither.
    List<Filter> strong = orAll(all.stream().filter(check::bears).toList(), all);
    List<Filter> from =
        orAll(strong.stream().filter(f -> f.openingM() <= widest + 1e-9).toList(), strong);
    return from.stream()
        .filter(f -> check.carries(f, needed))
        .min(order.thenComparing(Filter::key))
        .or(() -> from.stream().max(Comparator.comparingDouble(Filter::ratedFlowM3PerS)))
        .orElseThrow(() -> new IllegalStateException("the catalogue has no filter"));
  }

  private static List<Filter> orAll(List<Filter> some, List<Filter> all) {
    return some.isEmpty() ? all : some;
  }

  /** No regulator where the pressure needs none, else those that fit, the cheapest first. */
  private List<Optional<Regulator>> regulators(Fitted zone, double flow) {
    if (grove.watering().regulatorKey().isPresent()) {
      return List.of(
          Optional.of(catalogue.regulators().get(grove.watering().regulatorKey().get())));
    }
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    double allowed = Double.POSITIVE_INFINITY;
    double wanted = 0;
    double least = Double.NEGATIVE_INFINITY;
    for (List<LateralLayout.Served> lateral : zone.served()) {
      for (LateralLayout.Served plant : lateral) {
        double ground = site.terrain().heightAt(plant.at());
        lowest = Math.min(lowest, ground);
        highest = Math.max(highest, ground);
        EmitterType e = plant.emitter();
        allowed = Math.min(allowed, e.maxPressurePa());
        least = Math.max(least, e.minPressurePa() + ground * SupplyModel.PASCALS_PER_METRE);
        wanted = Math.max(wanted, e.compensating() ? e.minPressurePa() : e.nominalPressurePa());
      }
    }
    double perMetre = SupplyModel.PASCALS_PER_METRE;
    double source = site.supply().elevationM();
    double atRest = (site.supply().curve().staticHead() + source - lowest) * perMetre;
    if (atRest <= allowed) {
      return List.of(Optional.empty());
    }
    double target = wanted + (highest - source + rules.lossAllowanceM()) * perMetre;
    double ceiling = allowed - (source - lowest) * perMetre;
    double floor = least - source * perMetre;
    List<Regulator> fit = new ArrayList<>();
    for (Regulator r : catalogue.regulators().values()) {
      if (r.market().serves(units)
          && r.setPressurePa() <= ceiling
          && r.setPressurePa() >= floor
          && r.minFlowM3PerS() <= flow
          && r.maxFlowM3PerS() >= flow
          && r.maxInletPa() >= site.supply().curve().staticHead() * perMetre) {
        fit.add(r);
      }
    }
    fit.sort(
        Comparator.comparingDouble((Regulator r) -> costs.unitPrice(r.key()))
            .thenComparingDouble(r -> Math.abs(r.setPressurePa() - target))
            .thenComparing(Regulator::key));
    List<Optional<Regulator>> tried = new ArrayList<>();
    fit.forEach(r -> tried.add(Optional.of(r)));
    return tried.isEmpty() ? List.of(Optional.empty()) : tried;
  }
}
