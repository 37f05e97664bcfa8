package org.grovewright.hydraulics;

import java.util.Arrays;

/**
 * A first guess of heads and flows. Water is sent from the sources along the shortest way in number
 * of pipes, which in a loop meets about half way round, where the flow in truth is small.
 *
 * <p>The ways only depend on which links are shut and are kept until that changes.
 */
final class FlowGuess {
  private final GradientMethod method;
  private final Layout layout;

  /** Nodes in the order in which the water reaches them. */
  private final int[] order;

  /** For each place in the order the link and the node the water comes from; -1 for a source. */
  private final int[] viaLink;

  private final int[] fromNode;
  private final boolean[] inTree;
  private final boolean[] reachedNode;
  private final boolean[] shutBefore;
  private final double[] staticHead;
  private final double[] need;
  private int reached;

  FlowGuess(GradientMethod method) {
    this.method = method;
    this.layout = method.layout;
    order = new int[layout.heads];
    viaLink = new int[layout.heads];
    fromNode = new int[layout.heads];
    inTree = new boolean[method.flow.length];
    reachedNode = new boolean[layout.heads];
    shutBefore = new boolean[method.flow.length];
    staticHead = new double[layout.heads];
    need = new double[layout.heads];
  }

  /**
   * Sets heads, flows, losses and states of the method to a first guess. Owner-shut links stay
   * shut.
   */
  void apply() {
    boolean same = reached > 0;
    Arrays.fill(method.stopped, false);
    method.anyStopped = false;
    for (int l = 0; l < method.state.length; l++) {
      boolean shut = method.state[l] == GradientMethod.SHUT;
      same &= shut == shutBefore[l];
      shutBefore[l] = shut;
      if (!shut) {
        boolean regulates = !Double.isNaN(method.setHead[l]);
        method.state[l] = regulates ? GradientMethod.REGULATING : GradientMethod.OPEN;
      }
    }
    method.findCutOff();
    if (!same) {
      spread();
    }
    carryHeads();
    gather();
    method.laws.evaluate(method.flow, method.loss, method.slope);
    settleHeads();
  }

  private void spread() {
    reached = 0;
    Arrays.fill(inTree, false);
    Arrays.fill(reachedNode, false);
    for (int i = layout.unknowns; i < layout.heads; i++) {
      reach(i, -1, -1);
    }
    flood(true);
    if (reached < layout.heads) {
      // what only a check valve turned the other way leads to
      flood(false);
    }
  }

  private void reach(int node, int link, int from) {
    reachedNode[node] = true;
    viaLink[reached] = link;
    fromNode[reached] = from;
    order[reached++] = node;
    if (link >= 0) {
      inTree[link] = true;
    }
  }

  private void flood(boolean onlyForward) {
    Adjacency adjacency = layout.adjacency;
    for (int at = 0; at < reached; at++) {
      int node = order[at];
      for (int e = adjacency.start(node); e < adjacency.start(node + 1); e++) {
        int l = adjacency.link(e);
        boolean against = onlyForward && method.oneWay[l] && layout.tail[l] != node;
        if (!reachedNode[adjacency.node(e)] && !shutBefore[l] && !against) {
          reach(adjacency.node(e), l, node);
        }
      }
    }
  }

  /** Finds the head each node would have if nothing flowed. */
  private void carryHeads() {
    for (int at = 0; at < reached; at++) {
      int node = order[at];
      int l = viaLink[at];
      if (l < 0) {
        staticHead[node] = method.head[node];
        continue;
      }
      double carried = staticHead[fromNode[at]];
      if (method.oneWay[l] && layout.tip[l] == node) {
        carried += method.laws.headAdded(l);
        if (method.state[l] == GradientMethod.REGULATING) {
          carried = Math.min(carried, method.setHead[l]);
        }
      }
      staticHead[node] = carried;
    }
  }

  /** Sends what every node takes at most of its static pressure along its way. */
  private void gather() {
    System.arraycopy(method.demand, 0, need, 0, need.length);
    for (int g = 0; g < method.emitterNode.length; g++) {
      int node = method.emitterNode[g];
      if (!method.cutOff[node]) {
        double pressure = 0.8 * (staticHead[node] - method.elevation[node]);
        need[node] += method.emitters.flow(g, pressure);
      }
    }
    for (int at = reached - 1; at >= 0; at--) {
      int node = order[at];
      int l = viaLink[at];
      if (l >= 0) {
        method.flow[l] = layout.tip[l] == node ? need[node] : -need[node];
        need[fromNode[at]] += need[node];
      }
    }
    for (int l = 0; l < inTree.length; l++) {
      if (!inTree[l]) {
        double ends = Math.min(Math.abs(need[layout.tail[l]]), Math.abs(need[layout.tip[l]]));
        method.flow[l] = method.state[l] == GradientMethod.OPEN ? 0.5 * ends : 0;
      }
      if (method.oneWay[l] && method.state[l] == GradientMethod.OPEN && !(method.flow[l] > 0)) {
        method.flow[l] = 1e-5;
      }
    }
  }

  /** Takes the losses of the guessed flows off the heads, within reason. */
  private void settleHeads() {
    for (int at = 0; at < reached; at++) {
      int node = order[at];
      int l = viaLink[at];
      if (l < 0 || method.cutOff[node]) {
        continue;
      }
      boolean forward = layout.tip[l] == node;
      double guess = method.head[fromNode[at]] - (forward ? method.loss[l] : -method.loss[l]);
      if (method.state[l] == GradientMethod.REGULATING) {
        guess = staticHead[node];
      }
      double ground = method.elevation[node];
      double least = ground + 0.3 * (staticHead[node] - ground);
      method.head[node] = Math.max(guess, least);
    }
  }
}
