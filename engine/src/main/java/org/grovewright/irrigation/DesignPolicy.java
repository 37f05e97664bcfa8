package org.grovewright.irrigation;

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
 * @param mostEmitters most emitters at one plant before a larger rating is taken
 * @param peakRunS run time per day at the peak that emitters are counted for, seconds
 */
record DesignPolicy(
    Optional<Run> run, boolean compensating, boolean matched, int mostEmitters, double peakRunS) {
  /** The same choices with another run of laterals. */
  DesignPolicy running(Run other) {
    return new DesignPolicy(Optional.of(other), compensating, matched, mostEmitters, peakRunS);
  }

  /** A name for readers, from which the ids of figures are made. */
  String named() {
    return run.map(r -> r.name().toLowerCase(Locale.ROOT).replace('_', ' ')).orElse("as drawn")
        + (compensating ? ", compensating" : ", plain")
        + (matched ? ", matched to each plant" : ", one rating a row")
        + ", up to "
        + mostEmitters
        + " in "
        + Math.round(peakRunS / 60)
        + " min";
  }
}
