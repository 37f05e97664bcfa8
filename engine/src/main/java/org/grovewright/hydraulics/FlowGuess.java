package org.grovewright.hydraulics;

import java.util.Arrays;

/**
 * A first guess of heads and flows. Water is sent from the sources along the shortest way in number
 * of pipes, which in a loop meets about half way round, where the flow in truth is small.
 */
final class FlowGuess {
  private final GradientMethod method;
  private final Layout layout;
  private final int[] order;
  private final int[] parentLink;
  private final double[] staticHead;
  private int reached;

  private FlowGuess(GradientMethod method) {
    this.method = method;
    this.layout = method.layout;
    order = new int[layout.heads];
    parentLink = new int[layout.heads];
    staticHead = new double[layout.heads];
  }

  /** Sets heads, flows and states of a method to a first guess. Owner-shut links stay shut. */
  static void apply(GradientMethod method) {
    FlowGuess guess = new FlowGuess(method);
    for (int l = 0; l < method.state.length; l++) {
      if (method.state[l] != GradientMethod.SHUT) {
        boolean regulates = !Double.isNaN(method.setHead[l]);
        method.state[l] = regulates ? GradientMethod.REGULATING : GradientMethod.OPEN;
      }
      method.flow[l] = 0;
    }
    method.findCutOff();
    guess.spread();
    guess.gather();
    guess.heads();
  }

  private void spread() {
    Arrays.fill(parentLink, -2);
    for (int i = layout.unknowns; i < layout.heads; i++) {
      parentLink[i] = -1;
      staticHead[i] = method.head[i];
      order[reached++] = i;
    }
    flood(0, true);
    // what only a check valve turned the other way leads to
    flood(0, false);
  }

  private void flood(int begin, boolean onlyForward) {
    Adjacency adjacency = layout.adjacency;
    for (int at = begin; at < reached; at++) {
      int node = order[at];
      for (int e = adjacency.start(node); e < adjacency.start(node + 1); e++) {
        int l = adjacency.link(e);
        int other = adjacency.node(e);
        boolean forward = layout.tail[l] == node;
        boolean barred =
            method.state[l] == GradientMethod.SHUT || onlyForward && method.oneWay[l] && !forward;
        if (parentLink[other] == -2 && !barred) {
          parentLink[other] = l;
          double carried = staticHead[node] + (forward ? method.laws.headAdded(l) : 0);
          if (method.state[l] == GradientMethod.REGULATING) {
            carried = Math.min(carried, method.setHead[l]);
          }
          staticHead[other] = carried;
          order[reached++] = other;
        }
      }
    }
  }

  private void gather() {
    double[] need = new double[layout.heads];
    for (int i = 0; i < need.length; i++) {
      need[i] = method.demand[i];
    }
    for (int g = 0; g < method.emitterNode.length; g++) {
      int node = method.emitterNode[g];
      if (!method.cutOff[node]) {
        double pressure = 0.8 * (staticHead[node] - method.elevation[node]);
        need[node] += method.emitters.flow(g, pressure);
      }
    }
    boolean[] inTree = new boolean[method.flow.length];
    for (int at = reached - 1; at >= 0; at--) {
      int node = order[at];
      int l = parentLink[node];
      if (l >= 0) {
        inTree[l] = true;
        boolean forward = layout.tip[l] == node;
        method.flow[l] = forward ? need[node] : -need[node];
        need[forward ? layout.tail[l] : layout.tip[l]] += need[node];
      }
    }
    for (int l = 0; l < inTree.length; l++) {
      if (!inTree[l] && method.state[l] == GradientMethod.OPEN) {
        method.flow[l] =
            0.5 * Math.min(Math.abs(need[layout.tail[l]]), Math.abs(need[layout.tip[l]]));
      }
      if (method.oneWay[l] && method.state[l] == GradientMethod.OPEN && !(method.flow[l] > 0)) {
        method.flow[l] = 1e-5;
      }
    }
  }

  private void heads() {
    double[] loss = new double[method.flow.length];
    double[] slope = new double[method.flow.length];
    method.laws.evaluate(method.flow, loss, slope);
    for (int at = 0; at < reached; at++) {
      int node = order[at];
      int l = parentLink[node];
      if (l < 0 || method.cutOff[node]) {
        continue;
      }
      boolean forward = layout.tip[l] == node;
      int before = forward ? layout.tail[l] : layout.tip[l];
      double guess = method.head[before] - (forward ? loss[l] : -loss[l]);
      if (method.state[l] == GradientMethod.REGULATING) {
        guess = staticHead[node];
      }
      double ground = method.elevation[node];
      double least = ground + 0.3 * (staticHead[node] - ground);
      method.head[node] = Math.max(guess, least);
    }
  }
}
