package org.grovewright.hydraulics;

import java.util.Arrays;

/**
 * How the parts of a network are numbered for the solver. Nodes whose head is sought come first, in
 * the order of elimination, then the nodes whose head is known. Links are in the order in which
 * their first node is eliminated, so that the solver walks through memory in one direction. A
 * source with a supply curve becomes a node of known head and a link to it.
 */
final class Layout {
  /** Number of sought heads. */
  final int unknowns;

  /** Number of sought and known heads. */
  final int heads;

  /** For each node of the network its number here. */
  final int[] ofNode;

  /** For each link of the network its number here. */
  final int[] ofLink;

  /** For each node of the network the number of its supply's link here, or -1. */
  final int[] supplyLink;

  /** For each link here the numbers of its ends. */
  final int[] tail;

  final int[] tip;

  /** For each link here the place of its entry in the matrix. */
  final int[] place;

  /** For each node here the place in the network, or -1 for the known head behind a supply. */
  final int[] nodeOf;

  /** For each link here the place in the network, or -1 for a supply's link. */
  final int[] linkOf;

  final Adjacency adjacency;

  private final SparseFactor pattern;

  Layout(Network network) {
    int nodes = network.nodes().size();
    int realLinks = network.links().size();
    int unknownCount = 0;
    int supplies = 0;
    int lastSource = -1;
    int[] first = new int[nodes];
    for (int i = 0; i < nodes; i++) {
      Node node = network.nodes().get(i);
      first[i] = node instanceof Node.Reservoir ? -1 : unknownCount++;
      if (node instanceof Node.Source) {
        supplies++;
        lastSource = i;
      }
    }
    unknowns = unknownCount;
    heads = nodes + supplies;
    int links = realLinks + supplies;

    // ends of links among the unknowns, for the order of elimination
    int[] from = new int[links];
    int[] to = new int[links];
    int inner = 0;
    int[] innerFrom = new int[realLinks];
    int[] innerTo = new int[realLinks];
    for (int l = 0; l < realLinks; l++) {
      from[l] = network.startOf(l);
      to[l] = network.endOf(l);
      if (first[from[l]] >= 0 && first[to[l]] >= 0) {
        innerFrom[inner] = first[from[l]];
        innerTo[inner++] = first[to[l]];
      }
    }
    EliminationOrder elimination =
        new EliminationOrder(
            unknowns, Arrays.copyOf(innerFrom, inner), Arrays.copyOf(innerTo, inner));
    int[] rank = elimination.rank;
    ofNode = new int[nodes];
    nodeOf = new int[heads];
    Arrays.fill(nodeOf, -1);
    int known = unknowns;
    for (int i = 0; i < nodes; i++) {
      ofNode[i] = first[i] >= 0 ? rank[first[i]] : known++;
      nodeOf[ofNode[i]] = i;
    }
    supplyLink = new int[nodes];
    Arrays.fill(supplyLink, -1);
    for (int l = 0; l < realLinks; l++) {
      from[l] = ofNode[from[l]];
      to[l] = ofNode[to[l]];
    }
    int next = realLinks;
    for (int i = 0; i <= lastSource; i++) {
      if (network.nodes().get(i) instanceof Node.Source) {
        from[next] = known++;
        to[next] = ofNode[i];
        supplyLink[i] = next++;
      }
    }

    int[] sorted = byFirstEliminated(from, to);
    tail = new int[links];
    tip = new int[links];
    linkOf = new int[links];
    ofLink = new int[realLinks];
    int[] newNumber = new int[links];
    for (int l = 0; l < links; l++) {
      int old = sorted[l];
      tail[l] = from[old];
      tip[l] = to[old];
      newNumber[old] = l;
      linkOf[l] = old < realLinks ? old : -1;
      if (old < realLinks) {
        ofLink[old] = l;
      }
    }
    for (int i = 0; i <= lastSource; i++) {
      if (supplyLink[i] >= 0) {
        supplyLink[i] = newNumber[supplyLink[i]];
      }
    }
    pattern = new SparseFactor(elimination.columnStart, elimination.row, heads - unknowns);
    place = new int[links];
    for (int l = 0; l < links; l++) {
      int early = Math.min(tail[l], tip[l]);
      int late = Math.max(tail[l], tip[l]);
      place[l] = late >= unknowns ? pattern.sparePlace() : pattern.place(late, early);
    }
    adjacency = new Adjacency(heads, tail, tip);
  }

  /** An empty matrix of this pattern. */
  SparseFactor newFactor() {
    return pattern.blank();
  }

  /** Link numbers in the order of the lower-numbered end, by counting. */
  private int[] byFirstEliminated(int[] from, int[] to) {
    int[] start = new int[heads + 1];
    for (int l = 0; l < from.length; l++) {
      start[Math.min(from[l], to[l]) + 1]++;
    }
    for (int i = 0; i < heads; i++) {
      start[i + 1] += start[i];
    }
    int[] sorted = new int[from.length];
    for (int l = 0; l < from.length; l++) {
      sorted[start[Math.min(from[l], to[l])]++] = l;
    }
    return sorted;
  }
}
