package org.grovewright.hydraulics;

/** For every node the links at it and the nodes at their other ends, in flat arrays. */
final class Adjacency {
  private final int[] start;
  private final int[] link;
  private final int[] node;

  /** Indexes links given by their end nodes, each from 0 to {@code nodes - 1}. */
  Adjacency(int nodes, int[] from, int[] to) {
    start = new int[nodes + 1];
    for (int l = 0; l < from.length; l++) {
      start[from[l] + 1]++;
      start[to[l] + 1]++;
    }
    for (int i = 0; i < nodes; i++) {
      start[i + 1] += start[i];
    }
    link = new int[2 * from.length];
    node = new int[2 * from.length];
    int[] next = start.clone();
    for (int l = 0; l < from.length; l++) {
      int a = next[from[l]]++;
      link[a] = l;
      node[a] = to[l];
      int b = next[to[l]]++;
      link[b] = l;
      node[b] = from[l];
    }
  }

  /** First place of a node's entries; its last is before the start of the next node. */
  int start(int ofNode) {
    return start[ofNode];
  }

  /** Link at a place. */
  int link(int at) {
    return link[at];
  }

  /** Node at the other end of the link at a place. */
  int node(int at) {
    return node[at];
  }
}
