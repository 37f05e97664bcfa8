package org.grovewright.buying;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * One-dimensional cutting stock: pieces of given lengths from stock of one length, with lengths on
 * hand used first, so that the fewest are bought. Lengths are whole millimetres.
 *
 * <p>Two heuristics give a plan: best fit decreasing, and filling one length after another with the
 * set of pieces that leaves the least off-cut (the idea of Gupta and Ho, A new heuristic algorithm
 * for the one-dimensional bin-packing problem, 1999, from memory). A lower bound on the number
 * bought (total length, and for equal stock the bound L2 of Martello and Toth, Knapsack Problems,
 * 1990, from memory) often proves the plan best; where it does not, {@link Recutting} and then
 * branch and bound search on, each within a fixed number of steps.
 */
final class CuttingStock {
  private static final int SEARCH_STEPS = 300_000;

  private final long[] sorted;
  private final long[] onHand;
  private final long stock;
  private final int[] assignment;
  private int[] best;
  private int bestBought;
  private boolean proven;
  private int steps;

  /**
   * Solves one problem.
   *
   * @param pieces lengths of the pieces, mm, each more than 0 and at most the stock's
   * @param onHand lengths already there, mm
   * @param stock length of what is bought, mm
   * @throws IllegalArgumentException if a piece is not longer than 0 or does not fit
   */
  CuttingStock(long[] pieces, long[] onHand, long stock) {
    for (long piece : pieces) {
      if (piece <= 0 || piece > stock) {
        throw new IllegalArgumentException(
            "a piece of " + piece + " mm cannot be cut from a length of " + stock + " mm");
      }
    }
    Integer[] order = new Integer[pieces.length];
    for (int i = 0; i < order.length; i++) {
      order[i] = i;
    }
    Arrays.sort(order, Comparator.<Integer>comparingLong(i -> -pieces[i]).thenComparing(i -> i));
    this.sorted = Arrays.stream(order).mapToLong(i -> pieces[i]).toArray();
    this.onHand = onHand.clone();
    this.stock = stock;
    solve();
    this.assignment = new int[pieces.length];
    for (int k = 0; k < order.length; k++) {
      assignment[order[k]] = best[k];
    }
  }

  /**
   * The length each piece is cut from: those on hand come first, in their order, then those bought.
   */
  int[] assignment() {
    return assignment.clone();
  }

  /** How many lengths are bought. */
  int bought() {
    return bestBought;
  }

  /** Whether it is proved that no fewer would do. */
  boolean provenFewest() {
    return proven;
  }

  private void solve() {
    keep(bestFitDecreasing());
    keep(leastSlack(true));
    keep(leastSlack(false));
    int bound = lowerBound();
    if (bestBought > bound) {
      keep(new Recutting(sorted, onHand, stock, best).improved(bound));
    }
    proven = bestBought <= bound || branch(bound);
  }

  private void keep(int[] bins) {
    int bought = 0;
    for (int bin : bins) {
      bought = Math.max(bought, bin + 1 - onHand.length);
    }
    if (best == null || bought < bestBought) {
      best = bins;
      bestBought = bought;
    }
  }

  private int[] bestFitDecreasing() {
    List<Long> free = new ArrayList<>();
    for (long length : onHand) {
      free.add(length);
    }
    int[] bins = new int[sorted.length];
    for (int k = 0; k < sorted.length; k++) {
      int chosen = -1;
      for (int bin = 0; bin < free.size(); bin++) {
        boolean fits = free.get(bin) >= sorted[k];
        if (fits && (chosen < 0 || free.get(bin) < free.get(chosen))) {
          chosen = bin;
        }
      }
      if (chosen < 0) {
        chosen = free.size();
        free.add(stock);
      }
      free.set(chosen, free.get(chosen) - sorted[k]);
      bins[k] = chosen;
    }
    return bins;
  }

  /** Fills one length after another as full as can be, with or without the longest piece in it. */
  private int[] leastSlack(boolean holdLongest) {
    int[] bins = new int[sorted.length];
    Arrays.fill(bins, -1);
    int left = sorted.length;
    for (int bin = 0; left > 0; bin++) {
      Filling filling = new Filling(sorted, bins, bin < onHand.length ? onHand[bin] : stock);
      if (holdLongest) {
        filling.holdLongest();
      }
      for (int k : filling.fullest()) {
        bins[k] = bin;
        left--;
      }
    }
    return bins;
  }

  private int lowerBound() {
    long total = Arrays.stream(sorted).sum() - Arrays.stream(onHand).sum();
    int bound = (int) Math.max(0, ceilDiv(total, stock));
    return onHand.length == 0 ? Math.max(bound, boundL2()) : bound;
  }

  /**
   * For each threshold t: pieces longer than stock - t share their length with none of t or more,
   * pieces over a half need one each, and those from t to a half fill what these leave.
   */
  private int boundL2() {
    int bound = (int) Arrays.stream(sorted).filter(p -> 2 * p > stock).count();
    for (long threshold : sorted) {
      if (2 * threshold > stock) {
        continue;
      }
      int alone = 0;
      int overHalf = 0;
      long middle = 0;
      for (long piece : sorted) {
        if (piece > stock - threshold) {
          alone++;
        } else if (2 * piece > stock) {
          overHalf++;
          middle -= stock - piece;
        } else if (piece >= threshold) {
          middle += piece;
        }
      }
      bound = Math.max(bound, alone + overHalf + (int) Math.max(0, ceilDiv(middle, stock)));
    }
    return bound;
  }

  private static long ceilDiv(long a, long b) {
    return -Math.floorDiv(-a, b);
  }

  /** Returns whether the search ran to its end or met the bound. */
  private boolean branch(int bound) {
    long[] rest = new long[sorted.length + 1];
    for (int k = sorted.length - 1; k >= 0; k--) {
      rest[k] = rest[k + 1] + sorted[k];
    }
    long[] free = Arrays.copyOf(onHand, onHand.length + sorted.length);
    search(0, rest, free, 0, new int[sorted.length], bound);
    return steps < SEARCH_STEPS || bestBought <= bound;
  }

  private void search(int k, long[] rest, long[] free, int bought, int[] bins, int bound) {
    if (bestBought <= bound || steps >= SEARCH_STEPS) {
      return;
    }
    steps++;
    if (k == sorted.length) {
      keep(bins.clone());
      return;
    }
    int open = onHand.length + bought;
    long usable = 0;
    for (int bin = 0; bin < open; bin++) {
      usable += free[bin] >= sorted[sorted.length - 1] ? free[bin] : 0;
    }
    if (bought + Math.max(0, ceilDiv(rest[k] - usable, stock)) >= bestBought) {
      return;
    }
    // Equal pieces are interchangeable: the later one never goes into an earlier length.
    int from = k > 0 && sorted[k] == sorted[k - 1] ? bins[k - 1] : 0;
    for (int bin = from; bin < open; bin++) {
      if (free[bin] >= sorted[k] && !seenBefore(free, from, bin)) {
        free[bin] -= sorted[k];
        bins[k] = bin;
        search(k + 1, rest, free, bought, bins, bound);
        free[bin] += sorted[k];
      }
    }
    if (bought + 1 < bestBought) {
      free[open] = stock - sorted[k];
      bins[k] = open;
      search(k + 1, rest, free, bought + 1, bins, bound);
      free[open] = 0;
    }
  }

  private static boolean seenBefore(long[] free, int from, int bin) {
    for (int other = from; other < bin; other++) {
      if (free[other] == free[bin]) {
        return true;
      }
    }
    return false;
  }
}
