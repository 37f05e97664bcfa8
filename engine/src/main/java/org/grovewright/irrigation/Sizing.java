package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Filter;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.Regulator;
import org.grovewright.catalogue.TypicalPrice;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences;
import org.grovewright.model.Stock;
import org.grovewright.model.Supply;

/**
 * Finds the sizes of a zone: the cheapest pairing of main and tubing, with a regulator where one is
 * needed, that on the solved network keeps every emitter in its working range, the water below the
 * speed limit and the emission uniformity good. Where none does, the pairing that comes nearest.
 */
final class Sizing {
  private final Grove grove;
  private final Catalogue catalogue;
  private final Rulebook rules;
  private final ZoneNetwork.Site site;

  private final Preferences.Units units;
  private final Filter filter;

  /**
   * Sizes for zones that share one filter.
   *
   * @param zones all zones of the system
   */
  Sizing(
      Grove grove, Catalogue catalogue, Rulebook rules, ZoneNetwork.Site site, List<Fitted> zones) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.rules = rules;
    this.site = site;
    this.units = grove.preferences().units();
    this.filter = filterFor(zones);
  }

  /**
   * A zone whose plants have their emitters, but whose pipes are still open.
   *
   * @param wish the zone
   * @param served for each lateral, its plants with their emitters
   */
  record Fitted(ZoneWish wish, List<List<LateralLayout.Served>> served) {}

  /** The best design of a zone, solved. */
  ZoneResult best(Fitted zone) {
    List<List<Point>> main = mainLegs(zone.wish());
    List<List<Line>> lines = lines(zone);
    double flow = nominalFlow(zone);
    List<Optional<Regulator>> regulators = regulators(zone, flow);
    ZoneResult nearest = null;
    for (Optional<Regulator> regulator : regulators) {
      for (Sizes sizes : pairings(zone, main, lines)) {
        ZoneResult result = ZoneResult.solve(design(zone, main, lines, sizes, regulator), site);
        if (result.meets(rules)) {
          return result;
        }
        if (nearest == null || result.shortness(rules) < nearest.shortness(rules) - 1e-9) {
          nearest = result;
        }
      }
    }
    return nearest;
  }

  private record Sizes(Pipe main, Pipe tubing, double cost) {}

  private ZoneDesign design(
      Fitted zone,
      List<List<Point>> main,
      List<List<Line>> lines,
      Sizes sizes,
      Optional<Regulator> regulator) {
    List<ZoneDesign.LateralDesign> laterals = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      LateralWish wish = zone.wish().laterals().get(i);
      laterals.add(
          new ZoneDesign.LateralDesign(
              wish.id(),
              wish.row().id(),
              wish.run(),
              wish.tubing().orElse(sizes.tubing()),
              lines.get(i)));
    }
    return new ZoneDesign(zone.wish().id(), main, sizes.main(), laterals, regulator, filter);
  }

  private List<List<Point>> mainLegs(ZoneWish zone) {
    List<Point> path = new ArrayList<>();
    path.add(grove.supply().at());
    path.addAll(grove.watering().mainRoute());
    List<List<Point>> legs = new ArrayList<>();
    for (LateralWish lateral : zone.laterals()) {
      Point feed = lateral.row().line().get(0);
      path.add(feed);
      legs.add(List.copyOf(path));
      path.clear();
      path.add(feed);
    }
    return legs;
  }

  private List<List<Line>> lines(Fitted zone) {
    List<List<Line>> lines = new ArrayList<>();
    for (int i = 0; i < zone.served().size(); i++) {
      LateralWish wish = zone.wish().laterals().get(i);
      lines.add(
          LateralLayout.lay(
              wish.id(),
              wish.row().line(),
              wish.run(),
              zone.served().get(i),
              rules.layoutRules(wish.offsetM())));
    }
    return lines;
  }

  /** Pairings of main and tubing, cheapest first. */
  private List<Sizes> pairings(Fitted zone, List<List<Point>> main, List<List<Line>> lines) {
    double mainM = main.stream().mapToDouble(Paths::length).sum();
    double tubingM = lines.stream().flatMap(List::stream).mapToDouble(Line::lengthM).sum();
    boolean allGiven = zone.wish().laterals().stream().allMatch(l -> l.tubing().isPresent());
    List<Pipe> tubings =
        allGiven
            ? List.of(zone.wish().laterals().get(0).tubing().orElseThrow())
            : pipes(Pipe.Use.LATERAL);
    List<Pipe> mains =
        grove
            .watering()
            .mainPipeKey()
            .map(key -> List.of(catalogue.pipes().get(key)))
            .orElseGet(() -> pipes(Pipe.Use.MAIN));
    List<Sizes> all = new ArrayList<>();
    for (Pipe m : mains) {
      for (Pipe t : tubings) {
        all.add(new Sizes(m, t, mainM * pricePerM(m) + tubingM * pricePerM(t)));
      }
    }
    all.sort(
        Comparator.comparingDouble(Sizes::cost)
            .thenComparing(s -> s.main().key())
            .thenComparing(s -> s.tubing().key()));
    return all;
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

  private double pricePerM(Pipe pipe) {
    Stock.Price own = grove.stock().prices().get(pipe.key());
    if (own != null) {
      return own.amount() / own.packSize();
    }
    TypicalPrice typical = catalogue.prices().get(pipe.key());
    // Plastic pipe is sold roughly by its weight, so bore stands in for a price not known.
    return typical == null ? pipe.insideDiameterM() * 50 : typical.amount() / typical.packSize();
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
   * The filter all zones share: fine enough for every emitter, wide enough for the largest zone.
   */
  private Filter filterFor(List<Fitted> zones) {
    if (grove.watering().filterKey().isPresent()) {
      return catalogue.filters().get(grove.watering().filterKey().get());
    }
    double flow = 0;
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
            ? Comparator.comparingDouble(f -> lossAt(f, needed))
            : Comparator.comparingDouble(Filter::ratedFlowM3PerS);
    List<Filter> fine =
        catalogue.filters().values().stream().filter(f -> f.openingM() <= widest + 1e-9).toList();
    List<Filter> from = fine.isEmpty() ? List.copyOf(catalogue.filters().values()) : fine;
    return from.stream()
        .filter(f -> f.ratedFlowM3PerS() >= needed)
        .min(order.thenComparing(Filter::key))
        .or(() -> from.stream().max(Comparator.comparingDouble(Filter::ratedFlowM3PerS)))
        .orElseThrow(() -> new IllegalStateException("the catalogue has no filter"));
  }

  private static double lossAt(Filter filter, double flow) {
    double share = flow / filter.ratedFlowM3PerS();
    return filter.lossAtRatedPa() * share * share;
  }

  /** No regulator where the pressure needs none, else those that fit, the likeliest first. */
  private List<Optional<Regulator>> regulators(Fitted zone, double flow) {
    if (grove.watering().regulatorKey().isPresent()) {
      return List.of(
          Optional.of(catalogue.regulators().get(grove.watering().regulatorKey().get())));
    }
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    double allowed = Double.POSITIVE_INFINITY;
    double wanted = 0;
    for (List<LateralLayout.Served> lateral : zone.served()) {
      for (LateralLayout.Served plant : lateral) {
        double ground = site.terrain().heightAt(plant.at());
        lowest = Math.min(lowest, ground);
        highest = Math.max(highest, ground);
        EmitterType e = plant.emitter();
        allowed = Math.min(allowed, e.maxPressurePa());
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
    List<Regulator> fit = new ArrayList<>();
    for (Regulator r : catalogue.regulators().values()) {
      if (r.market().serves(units)
          && r.setPressurePa() <= ceiling
          && r.minFlowM3PerS() <= flow
          && r.maxFlowM3PerS() >= flow) {
        fit.add(r);
      }
    }
    fit.sort(
        Comparator.comparingDouble((Regulator r) -> Math.abs(r.setPressurePa() - target))
            .thenComparing(Regulator::key));
    List<Optional<Regulator>> tried = new ArrayList<>();
    fit.stream().limit(3).forEach(r -> tried.add(Optional.of(r)));
    return tried.isEmpty() ? List.of(Optional.empty()) : tried;
  }
}
