package org.grovewright.irrigation;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;

/**
 * Walks all combinations of one option from each of several lists in the order of their summed
 * cost, without making them all first.
 */
final class CheapestFirst {
  private final double[][] costs;
  private final PriorityQueue<Pick> open =
      new PriorityQueue<>(Comparator.comparingDouble(Pick::cost).thenComparing(Pick::compareTo));
  private final Set<List<Integer>> seen = new HashSet<>();

  /**
   * One combination.
   *
   * @param options index of the option of each list
   * @param cost its summed cost
   */
  record Pick(List<Integer> options, double cost) implements Comparable<Pick> {
    @Override
    public int compareTo(Pick other) {
      for (int i = 0; i < options.size(); i++) {
        int order = options.get(i).compareTo(other.options.get(i));
        if (order != 0) {
          return order;
        }
      }
      return 0;
    }
  }

  /**
   * Begins with the cheapest.
   *
   * @param costs for each list, the costs of its options in rising order; no list is empty
   */
  CheapestFirst(double[][] costs) {
    this.costs = costs;
    Integer[] first = new Integer[costs.length];
    Arrays.fill(first, 0);
    add(List.of(first));
  }

  private void add(List<Integer> options) {
    if (seen.add(options)) {
      double cost = 0;
      for (int i = 0; i < costs.length; i++) {
        cost += costs[i][options.get(i)];
      }
      open.add(new Pick(options, cost));
    }
  }

  boolean hasNext() {
    return !open.isEmpty();
  }

  /** The next combination; those that differ from it by one dearer option come later. */
  Pick next() {
    Pick pick = open.remove();
    for (int i = 0; i < costs.length; i++) {
      int dearer = pick.options().get(i) + 1;
      if (dearer < costs[i].length) {
        Integer[] options = pick.options().toArray(Integer[]::new);
        options[i] = dearer;
        add(List.of(options));
      }
    }
    return pick;
  }
}
