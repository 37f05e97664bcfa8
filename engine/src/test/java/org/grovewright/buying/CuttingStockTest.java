package org.grovewright.buying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class CuttingStockTest {
  private static final long[] NONE = {};

  /**
   * The paper machine of the encyclopaedia article "Cutting stock problem" (read at
   * graphsearch.epfl.ch, concept 826868): 219 rolls of 13 widths from master rolls of 5600 mm; the
   * total of 407160 mm needs at least 73, and 73 are enough.
   */
  @Test
  void solvesThePaperMachine() {
    long[] widths = {1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200};
    int[] counts = {22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20};
    long[] pieces = new long[Arrays.stream(counts).sum()];
    int at = 0;
    for (int i = 0; i < widths.length; i++) {
      Arrays.fill(pieces, at, at + counts[i], widths[i]);
      at += counts[i];
    }
    assertThat(Arrays.stream(pieces).sum()).isEqualTo(407_160);

    CuttingStock cutting = new CuttingStock(pieces, NONE, 5600);
    assertThat(cutting.bought()).isEqualTo(73);
    assertThat(cutting.provenFewest()).isTrue();
    assertFits(cutting, pieces, NONE, 5600);
  }

  /** Fewest of the cutting list in the README of a public repository, emadehsan/csp: 5. */
  @Test
  void solvesASmallPublishedList() {
    long[] pieces = {33, 33, 18, 18, 18, 33, 30, 18, 18, 18, 30, 30, 18, 18, 18, 33, 33, 33, 18};
    long[] all = Arrays.copyOf(pieces, pieces.length + 3);
    Arrays.fill(all, pieces.length, all.length, 33);
    CuttingStock cutting = new CuttingStock(all, NONE, 120);
    assertThat(cutting.bought()).isEqualTo(5);
    assertThat(cutting.provenFewest()).isTrue();
  }

  /** Best fit decreasing needs three lengths of 10 for these, two are enough: 5 3 2 and 4 3 3. */
  @Test
  void beatsBestFitDecreasing() {
    long[] pieces = {5, 4, 3, 3, 3, 2};
    CuttingStock cutting = new CuttingStock(pieces, NONE, 10);
    assertThat(cutting.bought()).isEqualTo(2);
    assertFits(cutting, pieces, NONE, 10);
  }

  @Test
  void usesWhatIsOnHandFirst() {
    long[] pieces = {4000, 3000, 3000};
    CuttingStock cutting = new CuttingStock(pieces, new long[] {6000}, 6000);
    assertThat(cutting.bought()).isEqualTo(1);
    assertThat(new CuttingStock(pieces, new long[] {6000, 4500}, 6000).bought()).isZero();
  }

  @Test
  void refusesAPieceThatIsTooLong() {
    assertThatThrownBy(() -> new CuttingStock(new long[] {7000}, NONE, 6000))
        .hasMessageContaining("7000");
  }

  /** Against a search through every way of cutting, without any bound or order. */
  @Property(tries = 150)
  void isTheFewestForSmallLists(
      @ForAll long seed,
      @ForAll @IntRange(min = 1, max = 8) int n,
      @ForAll @IntRange(max = 2) int there) {
    Random random = new Random(seed);
    long[] pieces = random.longs(n, 1, 13).toArray();
    long[] onHand = random.longs(there, 1, 13).toArray();
    CuttingStock cutting = new CuttingStock(pieces, onHand, 12);

    assertFits(cutting, pieces, onHand, 12);
    assertThat(cutting.provenFewest()).isTrue();
    long[] free = Arrays.copyOf(onHand, there + n);
    assertThat(cutting.bought()).isEqualTo(fewest(pieces, 0, free, there, 0, n));
  }

  private static int fewest(long[] pieces, int i, long[] free, int there, int bought, int best) {
    if (i == pieces.length) {
      return Math.min(bought, best);
    }
    int least = best;
    for (int bin = 0; bin < there + bought; bin++) {
      if (free[bin] >= pieces[i]) {
        free[bin] -= pieces[i];
        least = Math.min(least, fewest(pieces, i + 1, free, there, bought, least));
        free[bin] += pieces[i];
      }
    }
    if (bought + 1 <= least) {
      free[there + bought] = 12 - pieces[i];
      least = Math.min(least, fewest(pieces, i + 1, free, there, bought + 1, least));
      free[there + bought] = 0;
    }
    return least;
  }

  private static void assertFits(CuttingStock cutting, long[] pieces, long[] onHand, long stock) {
    long[] used = new long[onHand.length + cutting.bought()];
    int[] bins = cutting.assignment();
    assertThat(bins).hasSize(pieces.length);
    for (int i = 0; i < pieces.length; i++) {
      used[bins[i]] += pieces[i];
    }
    for (int bin = 0; bin < used.length; bin++) {
      assertThat(used[bin]).isLessThanOrEqualTo(bin < onHand.length ? onHand[bin] : stock);
    }
  }
}
