package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Species;
import org.grovewright.irrigation.Programme.PlantSupply;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.model.Row;

/**
 * Looks for the one change that brings a plant which gets far too much nearest to its need, and
 * leaves no other plant short: other emitters, another valve, or one more emitter at the plant that
 * sets the minutes. Minutes are taken as they are planned, in proportion.
 */
final class Remedies {
  /** A change that leaves more than this share of what a plant gets now is not worth the work. */
  private static final double HELPS = 0.85;

  private static final double YEAR_S = 365.25 * 86_400;

  private final Grove grove;
  private final Catalogue catalogue;
  private final WateringSystem system;
  private final List<PlantSupply> supplies;
  private final int fewest;
  private final int most;
  private final double efficiency;

  /** What an emitter gives at one place for one unit of flow, by zone, year and month. */
  private final Map<RunKey, Double> perFlow = new HashMap<>();

  private final Map<Integer, Map<String, Map<Integer, Double>>> flows = new HashMap<>();

  private record RunKey(String zone, int year, int month) {}

  /** Remedies for a programme. */
  Remedies(Grove grove, Catalogue catalogue, WateringSystem system, List<PlantSupply> supplies) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.system = system;
    this.supplies = supplies;
    this.fewest = (int) catalogue.constant("irrigation.min-emitters-per-main-plant").value();
    this.most = (int) catalogue.constant("irrigation.max-emitters-per-plant").value();
    this.efficiency = catalogue.constant("irrigation.application-efficiency").value();
    for (PlantSupply s : supplies) {
      double flow = flow(s.zone(), s.year(), s.plant());
      if (flow > 0) {
        perFlow.put(new RunKey(s.zone(), s.year(), s.month()), s.getsM3PerS() / flow);
      }
    }
  }

  /**
   * A change.
   *
   * @param words sentences; {@code {4}} stands for the amount, {@code {5}} for the distance
   * @param amount what the plant would get in its wettest month, m3/s; for a valve of its own the
   *     water saved at the supply in that year, m3
   * @param ownValve whether it is a valve of its own
   * @param awayM distance of the plant from the line it is to hang on, metres; 0 where it stays on
   *     its own
   */
  record Remedy(String words, double amount, boolean ownValve, double awayM) {
    Remedy(String words, double amount, boolean ownValve) {
      this(words, amount, ownValve, 0);
    }
  }

  /** The change that helps most in the month of a supply. */
  Remedy of(PlantSupply wet) {
    List<Remedy> found = new ArrayList<>();
    for (ZoneResult zone : system.zonesIn(wet.year())) {
      refitted(wet, zone).ifPresent(found::add);
    }
    atTheNeediest(wet).ifPresent(found::add);
    Remedy best = null;
    for (Remedy remedy : found) {
      if (remedy.amount() < HELPS * wet.getsM3PerS()
          && (best == null || remedy.amount() < best.amount() * (1 - 1e-9))) {
        best = remedy;
      }
    }
    return best == null ? ownValve(wet) : best;
  }

  /** Emitters at one plant, in words, and what they give, m3/s. */
  private record Fit(String words, double flowM3PerS) {
    /** This, or the fewest of a sort that give what is wanted if that is less. */
    Fit lesser(EmitterType sort, double each, double wanted, int from, int most) {
      for (int count = from; count <= most; count++) {
        double flow = count * each;
        if (flow >= wanted * (1 - 1e-9)) {
          return flow < flowM3PerS ? new Fit(count + " \u00d7 " + sort.name(), flow) : this;
        }
      }
      return this;
    }
  }

  /** Other emitters for the plant on a valve: the least flow that still meets its need. */
  private Optional<Remedy> refitted(PlantSupply wet, ZoneResult zone) {
    String id = zone.design().id();
    double wanted = 0;
    for (PlantSupply s : supplies) {
      if (s.plant() == wet.plant() && s.year() == wet.year() && s.needsM3PerS() > 0) {
        double run = perFlow.getOrDefault(new RunKey(id, s.year(), s.month()), 0.0);
        wanted = Math.max(wanted, run > 0 ? s.needsM3PerS() / run : Double.POSITIVE_INFINITY);
      }
    }
    boolean same = id.equals(wet.zone());
    Fit fit = new Fit("", Double.POSITIVE_INFINITY);
    String species = grove.plantings().get(wet.plant()).speciesKey();
    boolean main = catalogue.species().get(species).role() == Species.Role.MAIN;
    int from = main ? fewest : 1;
    Map<EmitterType, Double> has = sorts(zone);
    for (Map.Entry<EmitterType, Double> sort : has.entrySet()) {
      fit = fit.lesser(sort.getKey(), sort.getValue(), wanted, from, most);
    }
    // Another rating is one more thing to buy and to tell apart: only where it helps clearly more.
    Fit bought = new Fit("", HELPS * fit.flowM3PerS());
    for (EmitterType sort : catalogue.emitters().values()) {
      if (!has.containsKey(sort) && LikeSorts.fit(sort, has.keySet(), zone, grove)) {
        double flow = LikeSorts.flowM3PerS(sort, zone);
        bought = bought.lesser(sort, flow, wanted, from, most);
      }
    }
    if (!bought.words().isEmpty()) {
      fit = bought;
    }
    double run = perFlow.getOrDefault(new RunKey(id, wet.year(), wet.month()), 0.0);
    if (fit.words().isEmpty()) {
      return Optional.empty();
    }
    String words =
        same
            ? "With "
                + fit.words()
                + " in that year it would get {4} then, and no less than it needs in"
                + " any month."
            : "On the valve of "
                + id
                + " with "
                + fit.words()
                + " it would get {4} then, and no less than"
                + " it needs in any month of that year. The nearest line of that valve runs {5}"
                + " from the plant, and a tube must be led there.";
    return Optional.of(
        new Remedy(words, fit.flowM3PerS() * run, false, same ? 0 : awayM(wet.plant(), zone)));
  }

  /** Distance of a plant from the nearest line of a zone, metres. */
  private double awayM(int plant, ZoneResult zone) {
    Point at = grove.plantings().get(plant).at();
    double least = Double.POSITIVE_INFINITY;
    for (ZoneDesign.LateralDesign lateral : zone.design().laterals()) {
      for (Line line : lateral.lines()) {
        least = Math.min(least, new Row("", line.path()).distanceTo(at));
      }
    }
    return least;
  }

  /** Flow of one emitter of each sort that a zone has, m3/s. */
  private static Map<EmitterType, Double> sorts(ZoneResult zone) {
    Map<EmitterType, Double> flows = new LinkedHashMap<>();
    for (ZoneResult.OutletResult o : zone.outlets()) {
      flows.putIfAbsent(o.outlet().emitter(), o.flowM3PerS());
    }
    return flows;
  }

  /** One more emitter at the plant that sets the minutes of the month. */
  private Optional<Remedy> atTheNeediest(PlantSupply wet) {
    PlantSupply neediest = null;
    double first = 0;
    double second = 0;
    for (PlantSupply s : supplies) {
      if (!s.zone().equals(wet.zone()) || s.year() != wet.year() || s.month() != wet.month()) {
        continue;
      }
      double flow = flow(s.zone(), s.year(), s.plant());
      double wants = flow > 0 ? s.needsM3PerS() / flow : 0;
      if (wants > first) {
        second = first;
        first = wants;
        neediest = s;
      } else {
        second = Math.max(second, wants);
      }
    }
    if (neediest == null || neediest.plant() == wet.plant()) {
      return Optional.empty();
    }
    int has = 0;
    for (ZoneResult zone : system.zonesIn(wet.year())) {
      for (ZoneResult.OutletResult o : zone.outlets()) {
        has += o.outlet().plant() == neediest.plant() ? 1 : 0;
      }
    }
    if (has >= most) {
      return Optional.empty();
    }
    double after = Math.max(second, first * has / (has + 1));
    // Where the minutes do not reach the neediest, they only fall once its wish is below them.
    double given = first * neediest.share();
    double kept = given < first ? Math.min(1, after / given) : after / first;
    String plant = grove.plantings().get(neediest.plant()).id();
    return Optional.of(
        new Remedy(
            "One more emitter at "
                + plant
                + ", which sets the minutes then, would shorten them and bring it down to {4}.",
            wet.getsM3PerS() * kept,
            false));
  }

  private Remedy ownValve(PlantSupply wet) {
    double saved = 0;
    for (PlantSupply s : supplies) {
      if (s.plant() == wet.plant() && s.year() == wet.year()) {
        saved += Math.max(0, s.getsM3PerS() - s.needsM3PerS()) / efficiency * YEAR_S / 12;
      }
    }
    return new Remedy(
        "No other emitters and no other valve of the plan bring it much nearer to its need; a valve"
            + " of its own would, and would save {4} of water in that year.",
        saved, true);
  }

  private double flow(String zone, int year, int plant) {
    return flows
        .computeIfAbsent(
            year,
            y -> {
              Map<String, Map<Integer, Double>> byZone = new HashMap<>();
              system.zonesIn(y).forEach(z -> byZone.put(z.design().id(), z.plantFlows()));
              return byZone;
            })
        .getOrDefault(zone, Map.of())
        .getOrDefault(plant, 0.0);
  }
}
