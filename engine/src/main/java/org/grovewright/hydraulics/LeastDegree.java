package org.grovewright.hydraulics;

import java.util.Arrays;

/**
 * The order of elimination by least degree: the node with the fewest neighbours goes first, and its
 * neighbours become neighbours of each other. Among equals the one whose degree was settled longest
 * ago goes first.
 */
final class LeastDegree {
  /** The nodes in the order of elimination. */
  final int[] order;

  /** For each place in the order, the neighbours left at that time. */
  final int[][] structure;

  private final int[][] neighbours;
  private final int[] degree;
  // doubly linked queues of the nodes of each degree
  private final int[] head;
  private final int[] tail;
  private final int[] next;
  private final int[] previous;

  /**
   * Orders the nodes of a graph.
   *
   * @param neighbours for each node its neighbours in rising order; is consumed
   */
  LeastDegree(int[][] neighbours) {
    int n = neighbours.length;
    this.neighbours = neighbours;
    order = new int[n];
    structure = new int[n][];
    degree = new int[n];
    head = filled(n + 1);
    tail = filled(n + 1);
    next = filled(n);
    previous = filled(n);
    for (int i = 0; i < n; i++) {
      degree[i] = neighbours[i].length;
      append(i);
    }
    run(n);
  }

  private void run(int n) {
    int least = 0;
    int[] scratch = new int[n];
    for (int k = 0; k < n; k++) {
      while (head[least] < 0) {
        least++;
      }
      int node = head[least];
      unlink(node);
      int[] around = neighbours[node];
      order[k] = node;
      structure[k] = around;
      neighbours[node] = null;
      for (int other : around) {
        unlink(other);
        neighbours[other] = merge(neighbours[other], around, node, other, scratch);
        degree[other] = neighbours[other].length;
        append(other);
        least = Math.min(least, degree[other]);
      }
    }
  }

  /** The union of two sorted lists without two members. */
  private static int[] merge(int[] a, int[] b, int without, int orWithout, int[] scratch) {
    int count = 0;
    int i = 0;
    int j = 0;
    while (i < a.length || j < b.length) {
      int value;
      if (j == b.length || i < a.length && a[i] <= b[j]) {
        value = a[i];
        if (j < b.length && b[j] == value) {
          j++;
        }
        i++;
      } else {
        value = b[j++];
      }
      if (value != without && value != orWithout) {
        scratch[count++] = value;
      }
    }
    return Arrays.copyOf(scratch, count);
  }

  private static int[] filled(int size) {
    int[] array = new int[size];
    Arrays.fill(array, -1);
    return array;
  }

  private void append(int node) {
    int d = degree[node];
    previous[node] = tail[d];
    next[node] = -1;
    if (tail[d] < 0) {
      head[d] = node;
    } else {
      next[tail[d]] = node;
    }
    tail[d] = node;
  }

  private void unlink(int node) {
    int d = degree[node];
    if (previous[node] < 0) {
      head[d] = next[node];
    } else {
      next[previous[node]] = next[node];
    }
    if (next[node] < 0) {
      tail[d] = previous[node];
    } else {
      previous[next[node]] = previous[node];
    }
  }
}
