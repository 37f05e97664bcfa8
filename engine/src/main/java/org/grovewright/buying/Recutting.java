package org.grovewright.buying;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Betters a cutting plan: takes the pieces of a few lengths out again, cuts them anew from the same
 * lengths, and keeps the result if the off-cuts are no more evenly spread than before, until some
 * length is not needed any more. The lengths are picked by a fixed seed, so that the same pieces
 * always give the same plan.
 *
 * <p>The idea is that of ruin and recreate (Schrimpf and others, Record breaking optimization
 * results using the ruin and recreate principle, 2000, from memory).
 */
final class Recutting {
  private static final int ROUNDS = 4000;
  private static final int MOST_LENGTHS = 6;
  private static final long SEED = 73;

  private final long[] sorted;
  private final long[] onHand;
  private final long stock;
  private final SplittableRandom random = new SplittableRandom(SEED);
  private int[] bins;
  private int count;

  /**
   * Takes a plan.
   *
   * @param sorted lengths of the pieces, longest first
   * @param onHand lengths already there, which come first
   * @param stock length of what is bought
   * @param bins the length each piece is cut from
   */
  Recutting(long[] sorted, long[] onHand, long stock, int[] bins) {
    this.sorted = sorted;
    this.onHand = onHand;
    this.stock = stock;
    this.bins = bins.clone();
    this.count = onHand.length;
    for (int bin : bins) {
      count = Math.max(count, bin + 1);
    }
  }

  /** The best plan found; the search ends early when only {@code bound} lengths are bought. */
  int[] improved(int bound) {
    for (int round = 0; round < ROUNDS && count > onHand.length + bound; round++) {
      recut(picked());
      dropEmpty();
    }
    return bins;
  }

  private long capacity(int bin) {
    return bin < onHand.length ? onHand[bin] : stock;
  }

  private long slack(int[] of, int bin) {
    long slack = capacity(bin);
    for (int k = 0; k < sorted.length; k++) {
      slack -= of[k] == bin ? sorted[k] : 0;
    }
    return slack;
  }

  private List<Integer> picked() {
    List<Integer> all = new ArrayList<>();
    for (int bin = 0; bin < count; bin++) {
      all.add(bin);
    }
    List<Integer> picked = new ArrayList<>();
    int number = Math.min(count, 2 + random.nextInt(MOST_LENGTHS - 1));
    while (picked.size() < number) {
      picked.add(all.remove(random.nextInt(all.size())));
    }
    return picked;
  }

  private void recut(List<Integer> picked) {
    int[] next = bins.clone();
    int left = 0;
    for (int k = 0; k < next.length; k++) {
      if (picked.contains(next[k])) {
        next[k] = -1;
        left++;
      }
    }
    double before = 0;
    double after = 0;
    for (int bin : picked) {
      before += Math.pow((double) slack(bins, bin), 2);
      Filling filling = new Filling(sorted, next, capacity(bin));
      int held = left > 0 ? anyLeft(next, left) : -1;
      if (held >= 0 && sorted[held] <= capacity(bin)) {
        filling.hold(held);
      }
      for (int k : filling.fullest()) {
        next[k] = bin;
        left--;
      }
      after += Math.pow((double) slack(next, bin), 2);
    }
    if (left == 0 && after >= before) {
      bins = next;
    }
  }

  private int anyLeft(int[] next, int left) {
    int skip = random.nextInt(left);
    for (int k = 0; k < next.length; k++) {
      if (next[k] < 0 && skip-- == 0) {
        return k;
      }
    }
    return -1;
  }

  /** A bought length from which nothing is cut is not bought. */
  private void dropEmpty() {
    for (int bin = count - 1; bin >= onHand.length; bin--) {
      if (slack(bins, bin) == stock) {
        for (int k = 0; k < bins.length; k++) {
          bins[k] -= bins[k] > bin ? 1 : 0;
        }
        count--;
      }
    }
  }
}
