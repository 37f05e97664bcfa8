package org.grovewright.irrigation;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.grovewright.model.Watering.Run;

/**
 * The choices that are made for a whole system before its sizes.
 *
 * @param run how laterals of rows with main plants run; empty where the owner drew them
 * @param emitters how emitters are chosen
 * @param cutAfter plants after which another zone is begun, though the supply would carry one
 */
record DesignPolicy(Optional<Run> run, EmitterPolicy emitters, Set<Integer> cutAfter) {
  DesignPolicy {
    cutAfter = Set.copyOf(cutAfter);
  }

  /** The same choices with another run of laterals. */
  DesignPolicy running(Run other) {
    return new DesignPolicy(Optional.of(other), emitters, cutAfter);
  }

  /** The same choices, each plant matched, with another zone begun after a plant. */
  DesignPolicy cutting(int plant) {
    Set<Integer> cuts = new HashSet<>(cutAfter);
    cuts.add(plant);
    return new DesignPolicy(run, emitters.matching(), cuts);
  }

  /** The same choices with as many sorts of emitter as there are. */
  DesignPolicy ofAnySort() {
    return new DesignPolicy(run, emitters.ofAnySort(), cutAfter);
  }

  /**
   * A short name by which an owner chooses a way, and from which the ids of its figures are made.
   *
   * @param zones the zones that came of the choices; they say which sort of emitter was found
   */
  String key(List<ZoneResult> zones) {
    return String.join(
        "-",
        run.map(DesignPolicy::runKey).orElse("as-drawn"),
        sort(zones),
        emitters.matched() ? "matched" : "alike",
        emitters.leastEmitters()
            + "-to-"
            + emitters.mostEmitters()
            + (emitters.leastAtCompanions() > 1 ? "-and-" + emitters.leastAtCompanions() : ""),
        String.valueOf(zones.size()),
        (zones.size() == 1 ? "zone" : "zones") + (emitters.sorts().limits() ? "" : "-any-sorts"));
  }

  /** A name for readers. */
  String name(List<ZoneResult> zones) {
    return run.map(DesignPolicy::runName).orElse("Lines as drawn")
        + ", "
        + sort(zones)
        + " emitters"
        + (emitters.matched() ? " matched to each plant" : " of one rating a row")
        + (emitters.sorts().limits() ? "" : ", any number of sorts")
        + ", "
        + (emitters.leastEmitters() < emitters.mostEmitters()
            ? emitters.leastEmitters() + " to "
            : "")
        + emitters.mostEmitters()
        + " at a tree, "
        + (emitters.leastAtCompanions() > 1
            ? emitters.leastAtCompanions() + " or more at a companion, "
            : "")
        + zones.size()
        + (zones.size() == 1 ? " zone" : " zones");
  }

  private static String runKey(Run run) {
    return run == Run.DEAD_END
        ? "one-sided"
        : run.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static String runName(Run run) {
    return switch (run) {
      case DEAD_END -> "One line a row where that is enough";
      case LOOP -> "A loop round each row";
      case TWO_SIDED -> "Two lines a row";
    };
  }

  private static String sort(List<ZoneResult> zones) {
    boolean compensating = false;
    boolean plain = false;
    for (ZoneResult zone : zones) {
      for (ZoneResult.OutletResult o : zone.outlets()) {
        compensating |= o.outlet().emitter().compensating();
        plain |= !o.outlet().emitter().compensating();
      }
    }
    return compensating && plain ? "mixed" : compensating ? "compensating" : "plain";
  }
}
