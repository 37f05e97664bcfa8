package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Regulator;
import org.grovewright.model.Point;
import org.grovewright.model.Watering;

/**
 * Gives young plants fewer or smaller emitters than the design has for the last year planned, and
 * says when the others are added. The last year stays as designed.
 *
 * <p>The first emitters are those nearest to the stem, where the young roots are; later ones drip
 * farther out.
 */
final class EmitterStaging {
  private static final int YEARS = WateringSystem.DESIGN_YEAR;

  /** Ratings less far apart than this are not worth telling apart in the field. */
  private static final double APART = 1.5;

  private final DesignSite with;
  private final double[][][] need;
  private final Map<String, Watering.Lateral> drawn = new HashMap<>();
  private final SortLimit limit;
  private final Set<EmitterType> onSite = new LinkedHashSet<>();

  /**
   * Staging for the plants of a grove.
   *
   * @param planned the way to water whose zones are staged
   * @param need need of each plant by year and month, m3/s as a mean of the month
   */
  EmitterStaging(DesignSite with, Candidate planned, double[][][] need) {
    this.with = with;
    this.need = need;
    this.limit = planned.policy().emitters().sorts();
    planned.zones().forEach(zone -> onSite.addAll(sorts(zone.design())));
    for (Watering.Zone zone : with.grove().watering().zones()) {
      zone.laterals().forEach(lateral -> drawn.put(lateral.rowId(), lateral));
    }
  }

  private static Set<EmitterType> sorts(ZoneDesign zone) {
    Set<EmitterType> sorts = new LinkedHashSet<>();
    zone.allOutlets().forEach(outlet -> sorts.add(outlet.emitter()));
    return sorts;
  }

  /**
   * A zone with its emitters staged.
   *
   * @param design the zone; in the last year it has the same emitters as before
   * @param mixedNeeds what staging brings; none where nothing comes out of some emitter
   */
  record Staged(ZoneDesign design, Optional<MixedNeeds> mixedNeeds) {}

  /** A plant with its full emitters, nearest first. */
  private record Full(int plant, boolean fixed, boolean typeGiven, List<Outlet> outlets) {
    EmitterType type() {
      return outlets.get(0).emitter();
    }
  }

  /** What plants must share to be treated as one kind. */
  private record Kind(
      boolean main,
      boolean fixed,
      boolean typeGiven,
      EmitterType type,
      int count,
      long flow,
      List<Double> need) {}

  Staged of(ZoneResult zone) {
    KnownDesigns.StagedSite staged =
        with.known()
            .staged(
                zone,
                limit,
                Set.copyOf(onSite),
                () -> new KnownDesigns.StagedSite(staged(zone), Set.copyOf(onSite)));
    onSite.addAll(staged.onSite());
    return staged.zone();
  }

  private Staged staged(ZoneResult zone) {
    Map<Integer, Double> flows = zone.plantFlows();
    if (flows.isEmpty() || flows.values().stream().anyMatch(flow -> flow <= 0)) {
      return new Staged(zone.design(), Optional.empty());
    }
    Map<Kind, List<Full>> alike = new LinkedHashMap<>();
    for (Full plant : plants(zone.design())) {
      alike.computeIfAbsent(kind(plant, flows), k -> new ArrayList<>()).add(plant);
    }
    List<List<Full>> kinds = List.copyOf(alike.values());
    List<EmitterOption.Rated> sorts = sortsFor(zone);
    List<StagedChoice.Group> groups = new ArrayList<>();
    for (List<Full> kind : kinds) {
      groups.add(group(kind, sorts, flows));
    }
    StagedChoice.Outcome outcome = StagedChoice.best(groups, limits(zone.design()));
    Map<Integer, EmitterOption> chosen = new HashMap<>();
    for (int k = 0; k < kinds.size(); k++) {
      for (Full plant : kinds.get(k)) {
        chosen.put(plant.plant(), outcome.options().get(k));
      }
    }
    MixedNeeds mixed =
        new MixedNeeds(
            zone.design().id(), effect(outcome.before(), kinds), effect(outcome.after(), kinds));
    return new Staged(staged(zone.design(), chosen), Optional.of(mixed));
  }

  private List<Full> plants(ZoneDesign zone) {
    List<Full> plants = new ArrayList<>();
    for (ZoneDesign.LateralDesign lateral : zone.laterals()) {
      Map<Integer, List<Outlet>> byPlant = new LinkedHashMap<>();
      for (Line line : lateral.lines()) {
        for (Outlet outlet : line.outlets()) {
          byPlant.computeIfAbsent(outlet.plant(), p -> new ArrayList<>()).add(outlet);
        }
      }
      Optional<Watering.Lateral> wish = Optional.ofNullable(drawn.get(lateral.rowId()));
      byPlant.forEach(
          (plant, outlets) -> {
            boolean main = with.zoning().isMain(plant);
            boolean counted = main && wish.isPresent() && wish.get().emittersPerPlant().isPresent();
            boolean fixed = counted || outlets.stream().map(Outlet::emitter).distinct().count() > 1;
            boolean typeGiven =
                wish.flatMap(w -> main ? w.emitterKey() : w.companionEmitterKey()).isPresent();
            outlets.sort(
                Comparator.comparingDouble((Outlet o) -> distance(o, plant))
                    .thenComparing(Outlet::id));
            plants.add(new Full(plant, fixed, typeGiven, outlets));
          });
    }
    return plants;
  }

  /** Distance from the stem, in steps that make places on either side of a row equally far. */
  private double distance(Outlet outlet, int plant) {
    Point stem = with.grove().plantings().get(plant).at();
    return Math.rint(outlet.at().distanceTo(stem) * 1e6);
  }

  private Kind kind(Full plant, Map<Integer, Double> flows) {
    return new Kind(
        with.zoning().isMain(plant.plant()),
        plant.fixed(),
        plant.typeGiven(),
        plant.type(),
        plant.outlets().size(),
        Math.round(Math.log(flows.get(plant.plant())) * 50),
        Arrays.stream(need[plant.plant()]).flatMapToDouble(Arrays::stream).boxed().toList());
  }

  private StagedChoice.Group group(
      List<Full> kind, List<EmitterOption.Rated> sorts, Map<Integer, Double> flows) {
    Full first = kind.get(0);
    int count = first.outlets().size();
    EmitterOption.Rated full =
        new EmitterOption.Rated(first.type(), flows.get(first.plant()) / count);
    EmitterOption always = EmitterOption.constant(full, count, YEARS);
    int least = with.zoning().isMain(first.plant()) ? with.rules().minEmitters() : 1;
    List<EmitterOption> options =
        first.fixed()
            ? List.of(always)
            : EmitterOption.all(
                full, count, first.typeGiven() ? List.of() : smaller(sorts, full), least, YEARS);
    return new StagedChoice.Group(kind.size(), need[first.plant()], always, options);
  }

  /**
   * Types that young plants of a zone may start with, each with its flow there, smallest first:
   * those that the zone has, and as many others as may be added, those of other zones first.
   */
  private List<EmitterOption.Rated> sortsFor(ZoneResult zone) {
    Set<EmitterType> has = sorts(zone.design());
    List<EmitterType> others = new ArrayList<>();
    for (EmitterType e : with.catalogue().emitters().values()) {
      if (!has.contains(e) && LikeSorts.fit(e, has, zone, with.grove())) {
        others.add(e);
      }
    }
    others.sort(
        Comparator.comparing((EmitterType e) -> !onSite.contains(e))
            .thenComparingDouble(EmitterType::nominalFlowM3PerS)
            .thenComparing(EmitterType::key));
    List<EmitterType> may = new ArrayList<>(has);
    for (EmitterType e : others) {
      boolean distinct =
          !limit.limits() || may.stream().allMatch(o -> apart(o, e) || o.pattern() != e.pattern());
      if (may.size() < limit.perZone()
          && distinct
          && (onSite.contains(e) || onSite.size() < limit.inAll())) {
        may.add(e);
        if (limit.limits()) {
          onSite.add(e);
        }
      }
    }
    may.sort(
        Comparator.comparingDouble(EmitterType::nominalFlowM3PerS).thenComparing(EmitterType::key));
    return may.stream()
        .map(e -> new EmitterOption.Rated(e, LikeSorts.flowM3PerS(e, zone)))
        .toList();
  }

  private static boolean apart(EmitterType a, EmitterType b) {
    double ratio = a.nominalFlowM3PerS() / b.nominalFlowM3PerS();
    return ratio >= APART || ratio <= 1 / APART;
  }

  /** Those of the same sort with clearly smaller ratings. */
  private static List<EmitterOption.Rated> smaller(
      List<EmitterOption.Rated> sorts, EmitterOption.Rated full) {
    EmitterType type = full.type();
    List<EmitterOption.Rated> smaller = new ArrayList<>();
    double last = 0;
    for (EmitterOption.Rated sort : sorts) {
      EmitterType e = sort.type();
      if (LikeSorts.same(e, type)
          && e.nominalFlowM3PerS() >= APART * last
          && type.nominalFlowM3PerS() >= APART * e.nominalFlowM3PerS()) {
        last = e.nominalFlowM3PerS();
        smaller.add(sort);
      }
    }
    return smaller;
  }

  private StagedChoice.Limits limits(ZoneDesign zone) {
    Rulebook rules = with.rules();
    return new StagedChoice.Limits(
        zone.regulator().map(Regulator::minFlowM3PerS).orElse(0.0),
        rules.peakRunS() / rules.efficiency(),
        rules.efficiency(),
        rules.tooMuch(),
        rules.leastExcessM3PerS(),
        rules.emitterWorthM3());
  }

  private static MixedNeeds.Effect effect(StagedChoice.Score score, List<List<Full>> kinds) {
    int plant = score.group() < 0 ? -1 : kinds.get(score.group()).get(0).plant();
    return new MixedNeeds.Effect(
        Arrays.stream(score.volume()).boxed().toList(), score.worst(), plant, score.year());
  }

  private ZoneDesign staged(ZoneDesign zone, Map<Integer, EmitterOption> chosen) {
    List<ZoneDesign.LateralDesign> laterals = new ArrayList<>();
    Map<String, List<Outlet>> staged = new HashMap<>();
    for (Full plant : plants(zone)) {
      EmitterOption option = chosen.get(plant.plant());
      for (int i = 0; i < plant.outlets().size(); i++) {
        Outlet outlet = plant.outlets().get(i);
        List<Outlet> inTurn = new ArrayList<>();
        if (i < option.starters().size()) {
          StagedEmitter starter = option.starters().get(i);
          // Numbered in hundreds, apart from those that take its place.
          inTurn.add(outlet.staged(outlet.id() + "00", starter));
        }
        inTurn.add(outlet.staged(outlet.id(), option.stay().get(i)));
        staged.put(outlet.id(), inTurn);
      }
    }
    for (ZoneDesign.LateralDesign lateral : zone.laterals()) {
      List<Line> lines = new ArrayList<>();
      for (Line line : lateral.lines()) {
        List<Outlet> outlets =
            line.outlets().stream().flatMap(o -> staged.get(o.id()).stream()).toList();
        lines.add(new Line(line.id(), line.path(), line.closed(), outlets));
      }
      laterals.add(
          new ZoneDesign.LateralDesign(
              lateral.id(),
              lateral.rowId(),
              lateral.run(),
              lateral.tubing(),
              lines,
              lateral.laid()));
    }
    return new ZoneDesign(
        zone.id(),
        zone.main(),
        zone.mainPipe(),
        laterals,
        zone.regulator(),
        zone.filter(),
        zone.year());
  }
}
