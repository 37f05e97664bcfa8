package org.grovewright.irrigation;

import org.grovewright.model.Watering;

/**
 * How many sorts of emitter an owner is ready to keep apart. Every sort more fits the plants a
 * little better, and is one more to buy, to keep spare and to mistake for another.
 *
 * @param perZone most sorts behind one valve
 * @param inAll most sorts in the whole system
 */
record SortLimit(int perZone, int inAll) {
  /** As many as there are. */
  static final SortLimit NONE = new SortLimit(Integer.MAX_VALUE, Integer.MAX_VALUE);

  /** What the owner wants, or else what is usual. */
  static SortLimit of(Watering.Wishes wishes, Rulebook rules) {
    int inAll = wishes.emitterSortsInAll().orElse(rules.sortsInAll());
    int perZone = wishes.emitterSorts().orElse(Math.min(inAll, rules.sortsPerZone()));
    return new SortLimit(perZone, Math.max(inAll, perZone));
  }

  /** Whether there is a limit. */
  boolean limits() {
    return inAll < Integer.MAX_VALUE;
  }
}
