package org.grovewright.hydraulics;

import java.util.Arrays;

/**
 * The order in which nodes are eliminated from the linear system, by least degree: the node with
 * the fewest neighbours goes first, and its neighbours become neighbours of each other.
 *
 * <p>Ends of laterals have one neighbour and nodes in a run of emitters two, so pipes are folded up
 * from their ends and runs collapse to a single connection before any real junction is touched: the
 * work for them is the same as that of a hand-written chain elimination. Among equals the one whose
 * degree was settled longest ago goes first, which takes every second node of a run and leaves
 * steps that do not wait for each other.
 */
final class EliminationOrder {
  /** The nodes in the order of elimination. */
  final int[] order;

  /** For each place in the order, the neighbours left at that time (node numbers). */
  final int[][] structure;

  private final int[][] neighbours;
  private final int[] degree;
  // doubly linked queues of the nodes of each degree
  private final int[] head;
  private final int[] tail;
  private final int[] next;
  private final int[] previous;

  EliminationOrder(int n, int[] from, int[] to) {
    order = new int[n];
    structure = new int[n][];
    neighbours = distinctNeighbours(n, from, to);
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

  private static int[][] distinctNeighbours(int n, int[] from, int[] to) {
    Adjacency adjacency = new Adjacency(n, from, to);
    int[][] result = new int[n][];
    for (int i = 0; i < n; i++) {
      int first = adjacency.start(i);
      int[] all = new int[adjacency.start(i + 1) - first];
      for (int at = 0; at < all.length; at++) {
        all[at] = adjacency.node(first + at);
      }
      Arrays.sort(all);
      int count = 0;
      for (int at = 0; at < all.length; at++) {
        if (all[at] != i && (count == 0 || all[at] != all[count - 1])) {
          all[count++] = all[at];
        }
      }
      result[i] = count == all.length ? all : Arrays.copyOf(all, count);
    }
    return result;
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
