package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.model.Preferences;

/**
 * Chooses emitters: a type that works at the pressure there is, a rating that brings the peak need
 * within the run time aimed at, and for each plant a number in proportion to its need, because one
 * valve gives every plant the same minutes.
 */
final class EmitterChoice {
  /** Flows less far apart than this are not worth a sort of their own. */
  private static final double APART = 1.2;

  private final Rulebook rules;
  private final EmitterPolicy policy;
  private final List<EmitterType> fit;
  private final double pressurePa;
  private final Map<EmitterType, Double> flows;

  /**
   * The emitters of the catalogue that work at a pressure, smallest first.
   *
   * @param pressurePa pressure to be expected at the emitters, pascals
   */
  EmitterChoice(
      Catalogue catalogue,
      Rulebook rules,
      Preferences.Units units,
      double pressurePa,
      EmitterPolicy policy) {
    this.rules = rules;
    this.policy = policy;
    this.pressurePa = pressurePa;
    this.flows = new HashMap<>();
    List<EmitterType> compensating = new ArrayList<>();
    List<EmitterType> plain = new ArrayList<>();
    for (EmitterType emitter : catalogue.emitters().values()) {
      if (emitter.minPressurePa() > pressurePa || !emitter.market().serves(units)) {
        continue;
      }
      (emitter.compensating() ? compensating : plain).add(emitter);
    }
    List<EmitterType> first = policy.compensating() ? compensating : plain;
    List<EmitterType> second = policy.compensating() ? plain : compensating;
    List<EmitterType> taken = new ArrayList<>(first.isEmpty() || policy.mixed() ? second : first);
    taken.addAll(policy.mixed() ? first : List.of());
    fit = madeFor(pressurePa, taken);
    if (fit.isEmpty()) {
      // Nothing works at this pressure. The emitter that comes nearest lets the solved network show
      // by how much the supply falls short.
      catalogue.emitters().values().stream()
          .min(
              Comparator.comparingDouble(EmitterType::minPressurePa)
                  .thenComparing(EmitterType::key))
          .ifPresent(fit::add);
    }
    fit.sort(
        Comparator.comparingDouble(EmitterType::nominalFlowM3PerS).thenComparing(EmitterType::key));
  }

  /** Those made for such a pressure; what is made for less than half of it is overdriven there. */
  private static List<EmitterType> madeFor(double pressurePa, List<EmitterType> types) {
    double usual =
        types.stream()
            .filter(e -> e.pattern() == EmitterType.Pattern.DRIPPER)
            .mapToDouble(EmitterType::nominalPressurePa)
            .filter(p -> p <= pressurePa)
            .max()
            .orElse(0);
    return new ArrayList<>(types.stream().filter(e -> e.nominalPressurePa() >= usual / 2).toList());
  }

  private EmitterChoice(EmitterChoice all, List<EmitterType> fit) {
    this.rules = all.rules;
    this.policy = all.policy;
    this.pressurePa = all.pressurePa;
    this.flows = all.flows;
    this.fit = fit;
  }

  /** The same choice from some sorts only; none leaves all. */
  EmitterChoice among(List<EmitterType> sorts) {
    return sorts.isEmpty()
        ? this
        : new EmitterChoice(this, fit.stream().filter(sorts::contains).toList());
  }

  /**
   * Sorts that are worth telling apart: of those that give nearly the same, the cheapest. Bubblers
   * and sprays wash a young tree's soil away and flood what drinks little, so they are left out
   * where drippers are enough.
   *
   * @param enough flow that the thirstiest plant must be able to get, m3/s
   */
  List<EmitterType> ratings(double enough, ToDoubleFunction<String> price) {
    List<EmitterType> drippers =
        fit.stream().filter(e -> e.pattern() == EmitterType.Pattern.DRIPPER).toList();
    double most = drippers.stream().mapToDouble(this::flowOf).max().orElse(0);
    List<EmitterType> from = policy.mostEmitters() * most >= enough ? drippers : fit;
    List<EmitterType> byFlow = new ArrayList<>(from);
    byFlow.sort(Comparator.comparingDouble(this::flowOf).thenComparing(EmitterType::key));
    List<EmitterType> ratings = new ArrayList<>();
    double first = 0;
    for (EmitterType e : byFlow) {
      int last = ratings.size() - 1;
      if (last < 0 || flowOf(e) > first * APART) {
        ratings.add(e);
        first = flowOf(e);
      } else if (price.applyAsDouble(e.key()) < price.applyAsDouble(ratings.get(last).key())) {
        ratings.set(last, e);
      }
    }
    return ratings;
  }

  /** Flow of an emitter at the pressure to be expected, m3/s. */
  double flowOf(EmitterType emitter) {
    return flows.computeIfAbsent(
        emitter, e -> ZoneNetwork.curveOf(e).flow(pressurePa / SupplyModel.PASCALS_PER_METRE));
  }

  /**
   * The smallest rating with which no main plant needs more than the greatest number of emitters;
   * the largest where none does.
   *
   * @param greatestNeed need of the neediest main plant at the peak, m3/s as a mean over the day
   */
  EmitterType forMains(double greatestNeed) {
    for (EmitterType emitter : fit) {
      if (wanted(emitter, greatestNeed) <= policy.mostEmitters()) {
        return emitter;
      }
    }
    return fit.get(fit.size() - 1);
  }

  /** The smallest rating that covers a companion's need with one emitter, or the largest. */
  EmitterType forCompanions(double usualNeed) {
    for (EmitterType emitter : fit) {
      if (wanted(emitter, usualNeed) <= 1) {
        return emitter;
      }
    }
    return fit.get(fit.size() - 1);
  }

  /**
   * All emitters that a plant may have; of those that give the same, the best only.
   *
   * @param given the type that the owner wants; none leaves it open
   * @param price price of an emitter by its key
   */
  List<EmitterMatch.Option> options(
      Optional<EmitterType> given, boolean main, ToDoubleFunction<String> price) {
    List<EmitterMatch.Option> all = new ArrayList<>();
    for (EmitterType emitter : given.map(List::of).orElseGet(this::candidates)) {
      double flow = flowOf(emitter);
      double each = price.applyAsDouble(emitter.key());
      for (int count = least(main);
          count <= Math.max(least(main), policy.mostEmitters());
          count++) {
        all.add(
            new EmitterMatch.Option(
                emitter, count, count * flow, ZoneResult.spread(emitter, count), count * each));
      }
    }
    all.removeIf(option -> all.stream().anyMatch(other -> outdone(option, other)));
    return all;
  }

  /** Types to match from: where evenness is asked for, only those that are made most alike. */
  private List<EmitterType> candidates() {
    if (policy.leastAtCompanions() <= 1) {
      return fit;
    }
    double best = fit.stream().mapToDouble(EmitterType::manufacturingCv).min().orElse(0);
    return fit.stream().filter(e -> e.manufacturingCv() <= best + 1e-9).toList();
  }

  private static boolean outdone(EmitterMatch.Option option, EmitterMatch.Option other) {
    return Math.abs(other.flowM3PerS() / option.flowM3PerS() - 1) < 0.01
        && other.spread() >= option.spread()
        && other.money() <= option.money()
        && (other.spread() > option.spread() || other.money() < option.money());
  }

  private int least(boolean main) {
    return main
        ? Math.max(rules.minEmitters(), policy.leastEmitters())
        : policy.leastAtCompanions();
  }

  /** Number of emitters for a plant. */
  int count(EmitterType emitter, double need, boolean main) {
    int least =
        main ? Math.max(rules.minEmitters(), policy.leastEmitters()) : policy.leastAtCompanions();
    return Math.max(least, Math.min(policy.mostEmitters(), wanted(emitter, need)));
  }

  private int wanted(EmitterType emitter, double need) {
    double perRun = flowOf(emitter) * policy.peakRunS();
    if (perRun <= 0) {
      return need > 0 ? Integer.MAX_VALUE : 0;
    }
    return (int) Math.ceil(need * 86_400 / perRun - 1e-9);
  }
}
