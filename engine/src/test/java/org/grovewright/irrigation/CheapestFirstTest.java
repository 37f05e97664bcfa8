package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Every combination comes once, and never a dearer one before a cheaper. */
class CheapestFirstTest {
  @Test
  void walksTheWholeProductInRisingOrderOfCost() {
    Random random = new Random(7);
    for (int round = 0; round < 50; round++) {
      double[][] costs = new double[1 + random.nextInt(4)][];
      int product = 1;
      for (int i = 0; i < costs.length; i++) {
        costs[i] = random.doubles(1 + random.nextInt(4), 0, 100).sorted().toArray();
        product *= costs[i].length;
      }
      CheapestFirst walk = new CheapestFirst(costs);
      List<CheapestFirst.Pick> picks = new ArrayList<>();
      while (walk.hasNext()) {
        picks.add(walk.next());
      }
      assertThat(picks).hasSize(product);
      assertThat(picks.stream().map(CheapestFirst.Pick::options).distinct()).hasSize(product);
      assertThat(picks.stream().map(CheapestFirst.Pick::cost).toList()).isSorted();
    }
  }
}
