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
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Watering.Run;
import org.grovewright.quantity.FigureBook;

/**
 * Designs the system in several ways and keeps the cheapest that keeps every rule, or the one the
 * owner chose. The ways are the runs of laterals and the sorts of emitter; what is left to choose
 * within each is up to {@link Designer} and {@link Sizing}.
 */
final class Alternatives {
  private static final int LEAST_SHOWN = 3;

  /**
   * Where no more plants than this share a valve, one emitter more or less is so large a step that
   * plain emitters are tried beside compensating ones.
   */
  private static final int FEW_PLANTS = 6;

  /** A way that costs more than this times the best is not cut into more zones. */
  private static final double WORTH_MORE_ZONES = 1.3;

  private final DesignSite site;
  private final DesignMemory memory;
  private final List<Candidate> candidates = new ArrayList<>();
  private final Set<List<ZoneDesign>> seen = new HashSet<>();
  private final Set<String> keys = new HashSet<>();
  private Candidate best;

  private Alternatives(DesignSite site) {
    this.site = site;
    this.memory = new DesignMemory(site);
  }

  /** The ways to choose emitters that are tried, the usual one first. */
  private static List<EmitterPolicy> emitters(DesignSite site) {
    Rulebook rules = site.rules();
    int least = rules.minEmitters();
    int most = rules.maxEmitters();
    double usual = rules.peakRunS();
    int more = Math.min(most, 2 * least);
    SortLimit sorts = SortLimit.of(site.grove().watering().wishes(), rules);
    List<EmitterPolicy> ways =
        new ArrayList<>(
            List.of(
                new EmitterPolicy(true, false, false, least, 1, most, usual, sorts),
                new EmitterPolicy(true, false, true, least, 1, most, usual, sorts),
                new EmitterPolicy(true, false, true, more, 2, most, usual, sorts),
                new EmitterPolicy(true, false, true, most, 3, most, usual, sorts),
                new EmitterPolicy(false, false, true, least, 1, most, usual, sorts)));
    if (site.grove().plantings().size() <= FEW_PLANTS) {
      ways.add(new EmitterPolicy(true, true, true, least, 1, most, usual, sorts));
    }
    return ways;
  }

  /**
   * Designs a system for each way to choose emitters with loops, then those that cost little more
   * than the best with more zones as long as that helps, then the best with the other runs, and
   * last the best with as many sorts of emitter as there are, which shows what few sorts cost. Ways
   * that come to the same system count once.
   */
  static Alternatives of(DesignSite site) {
    Alternatives ways = new Alternatives(site);
    if (!site.grove().watering().propose()) {
      ways.tryOut(new DesignPolicy(Optional.empty(), emitters(site).get(0), Set.of()));
      return ways;
    }
    boolean drawn = !site.grove().watering().zones().isEmpty();
    Optional<Run> first = drawn ? Optional.empty() : Optional.of(Run.LOOP);
    for (EmitterPolicy emitters : emitters(site)) {
      ways.tryOut(new DesignPolicy(first, emitters, Set.of()));
    }
    if (!drawn) {
      List.copyOf(ways.candidates).forEach(ways::tryMoreZones);
      DesignPolicy policy = ways.best.policy();
      ways.tryOut(policy.running(Run.TWO_SIDED));
      ways.tryOut(policy.running(Run.DEAD_END));
    }
    if (ways.best.policy().emitters().matched()) {
      ways.tryOut(ways.best.policy().ofAnySort());
    }
    return ways;
  }

  /**
   * Begins further zones in a way that is not far from the best, as long as that makes it cheaper.
   */
  private void tryMoreZones(Candidate from) {
    Candidate way = from;
    while (way != null && way.cost().total() < best.cost().total() * WORTH_MORE_ZONES) {
      DesignPolicy policy = way.policy();
      Optional<Integer> after = new Designer(site, policy, memory).worthwhileCut();
      Candidate cut = after.map(plant -> tryOut(policy.cutting(plant))).orElse(null);
      way = cut != null && cut.beats(way) ? cut : null;
    }
  }

  /** Designs by a policy; null where that comes to a system that was there before. */
  private Candidate tryOut(DesignPolicy policy) {
    List<ZoneResult> zones = new Designer(site, policy, memory).design();
    if (!seen.add(zones.stream().map(ZoneResult::design).toList())
        || !keys.add(policy.key(zones))) {
      return null;
    }
    Candidate candidate = site.candidate(policy, zones);
    candidates.add(candidate);
    if (best == null || candidate.beats(best)) {
      best = candidate;
    }
    return candidate;
  }

  /** The one that is planned: the owner's choice, else the best. */
  Candidate planned() {
    return chosen().orElse(best);
  }

  private Optional<Candidate> chosen() {
    return site.grove()
        .watering()
        .choose()
        .flatMap(key -> candidates.stream().filter(c -> c.key().equals(key)).findFirst());
  }

  /** Remarks on a choice that there is not, and on rules that no way keeps. */
  List<Finding> remarks() {
    List<Finding> remarks = new ArrayList<>();
    Optional<String> wanted = site.grove().watering().choose();
    if (wanted.isPresent() && chosen().isEmpty()) {
      remarks.add(
          Finding.of(
              "irrigation.no-such-way",
              Severity.SHORTFALL,
              "watering",
              "There is no way to build the watering called "
                  + wanted.get()
                  + ", so the cheapest is planned. For choose write one of: "
                  + String.join(", ", candidates.stream().map(Candidate::key).toList())
                  + "."));
    }
    if (site.grove().watering().propose() && !best.zones().isEmpty()) {
      site.costs().hourAssumed().ifPresent(remarks::add);
    }
    boolean any = best.zones().isEmpty() || best.keepsRules();
    if (!any && site.grove().watering().propose()) {
      remarks.add(reasons().noneFits(candidates.size()));
    }
    return remarks;
  }

  private WayReasons reasons() {
    return new WayReasons(best, site.costs(), site.rules());
  }

  /**
   * Those worth a look, cheapest first, with their figures entered: the front of cost and
   * uniformity, what more sorts of emitter would bring, the cheapest of each run, and at least
   * three where there are as many.
   */
  List<Alternative> shown(FigureBook book) {
    List<Candidate> sorted = new ArrayList<>(candidates);
    sorted.sort(
        Comparator.comparing((Candidate c) -> !c.keepsRules())
            .thenComparingDouble(c -> c.cost().total()));
    Set<Candidate> shown = new LinkedHashSet<>();
    shown.add(best);
    shown.add(planned());
    sorted.stream().filter(this::onFront).forEach(shown::add);
    sorted.stream().filter(Candidate::tooManySorts).forEach(shown::add);
    Map<Optional<Run>, Candidate> cheapest = new LinkedHashMap<>();
    sorted.forEach(c -> cheapest.putIfAbsent(c.policy().run(), c));
    shown.addAll(cheapest.values());
    for (Candidate c : sorted) {
      if (shown.size() < LEAST_SHOWN) {
        shown.add(c);
      }
    }
    WayReasons reasons = reasons();
    WayFigures figures = new WayFigures(site.catalogue(), site.costs(), site.rules(), book);
    List<Alternative> list = new ArrayList<>();
    for (Candidate c : sorted) {
      if (shown.contains(c)) {
        Alternative alternative = alternative(c, reasons.of(c));
        list.add(alternative);
        figures.enter(c, alternative, best);
      }
    }
    return list;
  }

  private boolean onFront(Candidate candidate) {
    return candidate.keepsRules()
        && candidates.stream().noneMatch(c -> c.keepsRules() && c.dominates(candidate));
  }

  private Alternative alternative(Candidate c, Finding why) {
    return new Alternative(
        c.key(),
        c.name(),
        c.cost(),
        c.emissionUniformity(),
        c.peakRunS(),
        c.zones().size(),
        c.keepsRules(),
        onFront(c),
        c == planned(),
        why);
  }
}
