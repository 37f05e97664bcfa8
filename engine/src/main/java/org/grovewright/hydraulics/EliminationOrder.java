package org.grovewright.hydraulics;

import java.util.Arrays;

/**
 * The order in which nodes are eliminated from the linear system, and the pattern that this leaves.
 *
 * <p>A run is a row of nodes with at most two neighbours each: a lateral with its emitters, dead
 * end or loop. Runs are folded up whole, so that only their two ends stay and are joined, or not
 * even that at a dead end. This makes ends and tees of submains into nodes of runs in their turn,
 * and so on until only true meshes are left, which are taken by least degree. Within a run every
 * second node goes first, then every second of those left: the steps of a round do not wait for
 * each other, and a change at one node reaches only about as many others as the run can be halved.
 * A run has consecutive numbers, so that the solver works on one lateral at a time.
 */
final class EliminationOrder {
  private static final int NONE = -1;

  /** For each node its place in the order. */
  final int[] rank;

  /** For each place in the order, where its column starts in {@link #row}; and the end of all. */
  final int[] columnStart;

  /** The places that the nodes are joined to when they go, in rising order for each column. */
  int[] row;

  private final int[] order;
  private int eliminated;
  private int rows;

  /** The neighbours of a node, without repetition: {@code degree} of them from {@code start} on. */
  private final int[] start;

  private final int[] degree;
  private final int[] neighbour;

  /** For each node the pass in which it belongs to a run. */
  private final int[] passOf;

  private int pass;
  private int[] candidates;
  private int[] nextCandidates;
  private int nextCount;
  private final int[] run;

  /** Orders the nodes from 0 to n - 1 of a graph given by the ends of its links. */
  EliminationOrder(int n, int[] from, int[] to) {
    rank = new int[n];
    order = new int[n];
    columnStart = new int[n + 1];
    row = new int[2 * n + 16];
    start = new int[n + 1];
    degree = new int[n];
    neighbour = new int[2 * from.length];
    passOf = new int[n];
    candidates = new int[n];
    nextCandidates = new int[n];
    run = new int[n];
    listNeighbours(n, from, to);
    foldRuns(n);
    if (eliminated < n) {
      orderMeshes(n);
    }
    numberRows(n);
  }

  private void listNeighbours(int n, int[] from, int[] to) {
    for (int l = 0; l < from.length; l++) {
      start[from[l] + 1]++;
      start[to[l] + 1]++;
    }
    for (int i = 0; i < n; i++) {
      start[i + 1] += start[i];
    }
    for (int l = 0; l < from.length; l++) {
      int a = from[l];
      int b = to[l];
      if (a != b) {
        neighbour[start[a] + degree[a]++] = b;
        neighbour[start[b] + degree[b]++] = a;
      }
    }
    int[] seenAt = new int[n];
    Arrays.fill(seenAt, NONE);
    for (int i = 0; i < n; i++) {
      int kept = start[i];
      for (int at = start[i]; at < start[i] + degree[i]; at++) {
        int other = neighbour[at];
        if (seenAt[other] != i) {
          seenAt[other] = i;
          neighbour[kept++] = other;
        }
      }
      degree[i] = kept - start[i];
    }
  }

  private void foldRuns(int n) {
    int count = 0;
    for (int i = 0; i < n; i++) {
      if (degree[i] <= 2) {
        candidates[count++] = i;
      }
    }
    while (count > 0) {
      pass++;
      for (int c = 0; c < count; c++) {
        passOf[candidates[c]] = pass;
      }
      nextCount = 0;
      for (int c = 0; c < count; c++) {
        if (passOf[candidates[c]] == pass) {
          foldRunOf(candidates[c]);
        }
      }
      int[] swap = candidates;
      candidates = nextCandidates;
      nextCandidates = swap;
      count = nextCount;
    }
  }

  private void foldRunOf(int member) {
    int first = member;
    int before = degree[member] == 2 ? neighbour[start[member] + 1] : NONE;
    int left = next(first, before);
    while (left != NONE && passOf[left] == pass && left != member) {
      before = first;
      first = left;
      left = next(first, before);
    }
    boolean ring = left == member;
    if (ring) {
      // nothing but this ring: one of its nodes stands for both ends of the others
      left = member;
      first = neighbour[start[member]];
      passOf[member] = 0;
    }
    int size = 0;
    before = left;
    int at = first;
    while (at != NONE && passOf[at] == pass) {
      passOf[at] = 0;
      run[size++] = at;
      int following = next(at, before);
      before = at;
      at = following;
    }
    int last = run[size - 1];
    eliminateRun(size, left, at);
    if (ring) {
      eliminate(member, NONE, NONE);
    } else {
      joinEnds(left, first, last, at);
    }
  }

  /** The neighbour of a node of a run on the side away from another. */
  private int next(int node, int from) {
    int begin = start[node];
    for (int at = begin; at < begin + degree[node]; at++) {
      if (neighbour[at] != from) {
        return neighbour[at];
      }
    }
    return NONE;
  }

  private void eliminateRun(int size, int left, int right) {
    int live = size;
    while (live > 0) {
      int kept = 0;
      for (int t = 0; t < live; t++) {
        if (t % 2 == 0) {
          eliminate(run[t], t == 0 ? left : run[t - 1], t + 1 == live ? right : run[t + 1]);
        } else {
          run[kept++] = run[t];
        }
      }
      live = kept;
    }
  }

  private void eliminate(int node, int one, int other) {
    if (rows + 2 > row.length) {
      row = Arrays.copyOf(row, 2 * row.length);
    }
    order[eliminated] = node;
    if (one != NONE) {
      row[rows++] = one;
    }
    if (other != NONE && other != one) {
      row[rows++] = other;
    }
    columnStart[++eliminated] = rows;
  }

  /** Leaves the ends of a run that is gone joined to each other. */
  private void joinEnds(int left, int first, int last, int right) {
    if (left != NONE && right != NONE && left != right && place(left, right) == NONE) {
      neighbour[place(left, first)] = right;
      neighbour[place(right, last)] = left;
      return;
    }
    if (left != NONE) {
      part(left, first);
    }
    if (right != NONE) {
      part(right, last);
    }
  }

  private int place(int node, int other) {
    for (int at = start[node]; at < start[node] + degree[node]; at++) {
      if (neighbour[at] == other) {
        return at;
      }
    }
    return NONE;
  }

  private void part(int node, int other) {
    int at = place(node, other);
    neighbour[at] = neighbour[start[node] + --degree[node]];
    if (degree[node] == 2) {
      nextCandidates[nextCount++] = node;
    }
  }

  private void orderMeshes(int n) {
    int[] number = new int[n];
    int[] nodeOf = new int[n - eliminated];
    boolean[] gone = new boolean[n];
    for (int k = 0; k < eliminated; k++) {
      gone[order[k]] = true;
    }
    int size = 0;
    for (int i = 0; i < n; i++) {
      if (!gone[i]) {
        nodeOf[size] = i;
        number[i] = size++;
      }
    }
    int[][] neighbours = new int[size][];
    for (int m = 0; m < size; m++) {
      int node = nodeOf[m];
      neighbours[m] = new int[degree[node]];
      for (int a = 0; a < degree[node]; a++) {
        neighbours[m][a] = number[neighbour[start[node] + a]];
      }
      Arrays.sort(neighbours[m]);
    }
    LeastDegree meshes = new LeastDegree(neighbours);
    for (int k = 0; k < size; k++) {
      int[] around = meshes.structure[k];
      if (rows + around.length > row.length) {
        row = Arrays.copyOf(row, 2 * (rows + around.length));
      }
      for (int other : around) {
        row[rows++] = nodeOf[other];
      }
      order[eliminated++] = nodeOf[meshes.order[k]];
      columnStart[eliminated] = rows;
    }
  }

  private void numberRows(int n) {
    for (int k = 0; k < n; k++) {
      rank[order[k]] = k;
    }
    row = Arrays.copyOf(row, rows);
    for (int a = 0; a < rows; a++) {
      row[a] = rank[row[a]];
    }
    for (int k = 0; k < n; k++) {
      int begin = columnStart[k];
      int end = columnStart[k + 1];
      if (end - begin > 2) {
        Arrays.sort(row, begin, end);
      } else if (end - begin == 2 && row[begin] > row[begin + 1]) {
        int swap = row[begin];
        row[begin] = row[begin + 1];
        row[begin + 1] = swap;
      }
    }
  }
}
