package org.grovewright.irrigation;

/**
 * How the emitters of a system are chosen.
 *
 * @param compensating whether emitters that hold their flow over a range of pressure go first
 * @param mixed whether both sorts may stand in one zone
 * @param matched whether each plant gets the emitters that fit its own need best beside those of
 *     the others of its zone, not all main plants of a lateral the same rating
 * @param leastEmitters fewest emitters at a main plant
 * @param leastAtCompanions fewest emitters at a companion
 * @param mostEmitters most emitters at one plant before a larger rating is taken
 * @param peakRunS run time per day at the peak that emitters are counted for, seconds
 * @param sorts how many sorts there may be
 */
record EmitterPolicy(
    boolean compensating,
    boolean mixed,
    boolean matched,
    int leastEmitters,
    int leastAtCompanions,
    int mostEmitters,
    double peakRunS,
    SortLimit sorts) {
  /** The same choices with each plant matched. */
  EmitterPolicy matching() {
    return matched ? this : with(true, sorts);
  }

  /** The same choices with as many sorts as there are. */
  EmitterPolicy ofAnySort() {
    return with(matched, SortLimit.NONE);
  }

  private EmitterPolicy with(boolean match, SortLimit limit) {
    return new EmitterPolicy(
        compensating,
        mixed,
        match,
        leastEmitters,
        leastAtCompanions,
        mostEmitters,
        peakRunS,
        limit);
  }
}
