package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.grovewright.model.Watering.Run;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/**
 * Designs the system in several ways and keeps the cheapest that keeps every rule. The ways are the
 * runs of laterals and the sorts of emitter; what is left to choose within each is up to {@link
 * Designer} and {@link Sizing}.
 */
final class Alternatives {
  private static final int LEAST_SHOWN = 3;

  private final DesignSite site;
  private final List<Candidate> candidates = new ArrayList<>();
  private final Set<List<ZoneDesign>> seen = new HashSet<>();
  private Candidate planned;

  private Alternatives(DesignSite site) {
    this.site = site;
  }

  /** The sorts of emitter to try, the usual one first. */
  private static List<DesignPolicy> emitters(Optional<Run> run, Rulebook rules) {
    int most = rules.maxEmitters();
    int half = Math.max(rules.minEmitters(), most / 2);
    double usual = rules.peakRunS();
    return List.of(
        new DesignPolicy(run, true, false, most, usual),
        new DesignPolicy(run, true, false, half, usual),
        new DesignPolicy(run, true, true, most, usual),
        new DesignPolicy(run, true, true, most, usual / 2),
        new DesignPolicy(run, false, true, most, usual));
  }

  /**
   * Designs a system for each sort of emitter with loops, then the best of these with the other
   * runs. Ways that come to the same system count once.
   */
  static Alternatives of(DesignSite site) {
    Alternatives ways = new Alternatives(site);
    if (!site.grove().watering().propose()) {
      ways.tryOut(emitters(Optional.empty(), site.rules()).get(0));
      return ways;
    }
    boolean drawn = !site.grove().watering().zones().isEmpty();
    Optional<Run> first = drawn ? Optional.empty() : Optional.of(Run.LOOP);
    emitters(first, site.rules()).forEach(ways::tryOut);
    if (!drawn) {
      DesignPolicy best = ways.planned.policy();
      ways.tryOut(best.running(Run.TWO_SIDED));
      ways.tryOut(best.running(Run.DEAD_END));
    }
    return ways;
  }

  private void tryOut(DesignPolicy policy) {
    List<ZoneResult> zones = new Designer(site, policy).design();
    if (!seen.add(zones.stream().map(ZoneResult::design).toList())) {
      return;
    }
    Candidate candidate = site.candidate(policy, zones);
    candidates.add(candidate);
    if (planned == null || candidate.beats(planned)) {
      planned = candidate;
    }
  }

  /** The one that is planned. */
  Candidate planned() {
    return planned;
  }

  /**
   * Those worth a look, cheapest first: the front of cost and uniformity, the cheapest of each run,
   * and at least three where there are as many.
   */
  List<Alternative> shown() {
    List<Candidate> sorted = new ArrayList<>(candidates);
    sorted.sort(
        Comparator.comparing((Candidate c) -> !c.keepsRules())
            .thenComparingDouble(c -> c.cost().total()));
    Set<Candidate> shown = new LinkedHashSet<>();
    shown.add(planned);
    sorted.stream().filter(this::onFront).forEach(shown::add);
    Map<Optional<Run>, Candidate> cheapest = new LinkedHashMap<>();
    sorted.forEach(c -> cheapest.putIfAbsent(c.policy().run(), c));
    shown.addAll(cheapest.values());
    for (Candidate c : sorted) {
      if (shown.size() < LEAST_SHOWN) {
        shown.add(c);
      }
    }
    return sorted.stream().filter(shown::contains).map(this::alternative).toList();
  }

  private boolean onFront(Candidate candidate) {
    return candidate.keepsRules()
        && candidates.stream().noneMatch(c -> c.keepsRules() && c.dominates(candidate));
  }

  private Alternative alternative(Candidate c) {
    return new Alternative(
        c.policy().named(),
        c.cost(),
        c.emissionUniformity(),
        c.zones().size(),
        c.keepsRules(),
        onFront(c),
        c == planned,
        why(c));
  }

  private String why(Candidate c) {
    if (c == planned) {
      return c.keepsRules()
          ? "Costs least of those that keep every rule."
          : "No way keeps every rule; this one comes nearest.";
    }
    if (c.hoursShort() > 1e-9) {
      return "The allowed hours or the daily limit are too short for it at the peak.";
    }
    if (c.zonesShort() > 1e-9) {
      return "Does not keep pressure, speed or uniformity within the rules.";
    }
    Map<String, Double> more = new LinkedHashMap<>();
    more.put("pipe", c.cost().pipe() - planned.cost().pipe());
    more.put("emitters, fittings and devices", c.cost().fittings() - planned.cost().fittings());
    more.put("work", c.cost().labour() - planned.cost().labour());
    more.put("water given in excess", c.cost().water() - planned.cost().water());
    Map.Entry<String, Double> dearest =
        more.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow();
    Map.Entry<String, Double> saving =
        more.entrySet().stream().min(Map.Entry.comparingByValue()).orElseThrow();
    String text = "Costs more, mostly for " + dearest.getKey();
    text += saving.getValue() < -0.5 ? "; it saves on " + saving.getKey() + "." : ".";
    return c.emissionUniformity() > planned.emissionUniformity() + 1e-9
        ? text + " It waters more evenly."
        : text;
  }

  /** Enters the figures of what is shown under {@code irrigation.alternative.NAME}. */
  static void enter(List<Alternative> shown, Costs costs, Rulebook rules, FigureBook book) {
    String goods = "goods of the design, by the metre or piece, at your price or the typical one";
    for (Alternative a : shown) {
      String id = "irrigation.alternative." + FigureBook.slug(a.name()) + ".";
      LifeCost cost = a.cost();
      book.enter(
          id + "work",
          "Work to build it: " + a.name(),
          cost.workS(),
          Kind.WORK_TIME,
          Working.of(
              "the sum of each task's set-up and its rate times its amount",
              "rates of the catalogue: tasks"));
      book.enter(
          id + "wasted-water",
          "Water given in excess over its life: " + a.name(),
          cost.wastedM3(),
          Kind.WATER_VOLUME,
          Working.of(
              "years x sum over months and zones of"
                  + " (greatest of V / (s q) x sum of q - sum of V) / e,"
                  + " V need, q flow of a plant, s = 1 - 1.27 CV / sqrt(n)",
              "the plant served worst gets its need; s after Keller and Karmeli (1974), from"
                  + " memory; needs of the third year",
              new Input("years", costs.lifeYears(), Kind.NUMBER, "catalogue: constants")));
      book.enter(
          id + "cost",
          "Cost over its life: " + a.name(),
          cost.total(),
          Kind.MONEY,
          Working.of(
              "pipe + fittings + work + water",
              a.why(),
              new Input("pipe and tubing", cost.pipe(), Kind.MONEY, goods),
              new Input("emitters, fittings and devices", cost.fittings(), Kind.MONEY, goods),
              new Input("work", cost.labour(), Kind.MONEY, id + "work"),
              new Input(
                  "value of an hour of work",
                  costs.labourPerS() * 3600,
                  Kind.MONEY,
                  "catalogue: constants, irrigation.labour-value"),
              new Input("water in excess", cost.water(), Kind.MONEY, id + "wasted-water"),
              new Input(
                  "price of a cubic metre of water",
                  costs.waterPerM3(),
                  Kind.MONEY,
                  costs.waterPriceOrigin())));
      book.enter(
          id + "uniformity",
          "Emission uniformity of its least even zone: " + a.name(),
          a.emissionUniformity(),
          Kind.SHARE,
          Working.of(
              "the least of its zones",
              "Keller and Karmeli (1974), taken plant by plant",
              new Input("good from", rules.goodUniformity(), Kind.SHARE, "catalogue: constants")));
    }
  }
}
