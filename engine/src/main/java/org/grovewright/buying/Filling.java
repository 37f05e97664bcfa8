package org.grovewright.buying;

import java.util.ArrayList;
import java.util.List;

/**
 * The set of pieces not yet cut that fills one length best, by depth first search within a fixed
 * number of steps.
 */
final class Filling {
  private static final int STEPS = 20_000;

  private final long[] sorted;
  private final int[] bins;
  private final List<Integer> chosen = new ArrayList<>();
  private List<Integer> fullest = List.of();
  private long leastSlack;
  private long capacity;
  private int held = -1;
  private int tries;

  Filling(long[] sorted, int[] bins, long capacity) {
    this.sorted = sorted;
    this.bins = bins;
    this.capacity = capacity;
  }

  /** Fixes that the longest piece that fits is in the set. */
  void holdLongest() {
    for (int k = 0; k < sorted.length && held < 0; k++) {
      if (bins[k] < 0 && sorted[k] <= capacity) {
        hold(k);
      }
    }
  }

  /** Fixes that a piece, which must fit, is in the set. */
  void hold(int k) {
    held = k;
    chosen.add(k);
    capacity -= sorted[k];
    fullest = List.of(k);
  }

  List<Integer> fullest() {
    leastSlack = capacity;
    search(0, capacity);
    return fullest;
  }

  private void search(int from, long slack) {
    if (slack < leastSlack) {
      leastSlack = slack;
      fullest = List.copyOf(chosen);
    }
    long tried = -1;
    for (int k = from; k < sorted.length && leastSlack > 0 && tries < STEPS; k++) {
      boolean free = bins[k] < 0 && k != held;
      if (free && sorted[k] <= slack && sorted[k] != tried) {
        tried = sorted[k];
        tries++;
        chosen.add(k);
        search(k + 1, slack - sorted[k]);
        chosen.remove(chosen.size() - 1);
      }
    }
  }
}
