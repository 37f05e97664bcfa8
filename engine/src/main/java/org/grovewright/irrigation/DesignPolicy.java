package org.grovewright.irrigation;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.grovewright.model.Watering.Run;

/**
 * The choices that are made for a whole system before its sizes.
 *
 * @param run how laterals of rows with main plants run; empty where the owner drew them
 * @param compensating whether emitters that hold their flow over a range of pressure go first
 * @param matched whether each plant gets the rating that fits its own need best, not all main
 *     plants of a lateral the same
 * @param leastEmitters fewest emitters at a main plant
 * @param leastAtCompanions fewest emitters at a companion
 * @param mostEmitters most emitters at one plant before a larger rating is taken
 * @param peakRunS run time per day at the peak that emitters are counted for, seconds
 */
record DesignPolicy(
    Optional<Run> run,
    boolean compensating,
    boolean matched,
    int leastEmitters,
    int leastAtCompanions,
    int mostEmitters,
    double peakRunS) {
  /** The same choices with another run of laterals. */
  DesignPolicy running(Run other) {
    return new DesignPolicy(
        Optional.of(other),
        compensating,
        matched,
        leastEmitters,
        leastAtCompanions,
        mostEmitters,
        peakRunS);
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
        matched ? "matched" : "alike",
        leastEmitters
            + "-to-"
            + mostEmitters
            + (leastAtCompanions > 1 ? "-and-" + leastAtCompanions : ""),
        "in",
        String.valueOf(Math.round(peakRunS / 60)));
  }

  /** A name for readers. */
  String name(List<ZoneResult> zones) {
    return run.map(DesignPolicy::runName).orElse("Lines as drawn")
        + ", "
        + sort(zones)
        + " emitters"
        + (matched ? " matched to each plant" : " of one rating a row")
        + ", "
        + (leastEmitters < mostEmitters ? leastEmitters + " to " : "")
        + mostEmitters
        + " at a tree, "
        + (leastAtCompanions > 1 ? leastAtCompanions + " or more at a companion, " : "")
        + "counted for "
        + Math.round(peakRunS / 60)
        + " minutes a day";
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
