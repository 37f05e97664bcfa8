package org.grovewright.hydraulics;

import java.util.Arrays;
import java.util.List;

/** Heads and flows that keep mass and energy throughout a network. A solution never changes. */
public final class Solution {
  private final Network network;

  /** How the arrays are numbered; what is asked for is looked up when it is asked for. */
  private final Layout layout;

  private final double[] head;
  private final double[] flow;
  private final byte[] state;
  private final boolean[] cutOff;

  /** For each group of emitters its whole flow, in the order of the network. */
  private final double[] groupFlow;

  /** For each node the flow of all emitters there; found when first asked for. */
  private volatile double[] outflow;

  private final int iterations;
  private final double massResidual;
  private final double energyResidual;
  private final List<HydraulicProblem> notices;

  /** Takes over what a method has arrived at. */
  Solution(Network network, GradientMethod method, List<HydraulicProblem> notices) {
    this.network = network;
    layout = method.layout;
    head = method.head.clone();
    flow = method.flow.clone();
    state = method.state.clone();
    cutOff = method.cutOff.clone();
    groupFlow = method.emitterFlow.clone();
    iterations = method.steps;
    massResidual = method.massResidual;
    energyResidual = method.energyResidual;
    this.notices = List.copyOf(notices);
    for (int l : method.stateful) {
      // rounding may leave a one-way link the least bit below zero
      flow[l] = Math.max(0, flow[l]);
    }
    for (int l : method.regulators) {
      flow[l] = Math.max(0, flow[l]);
    }
  }

  /** The network that was solved; edits made after preparing it do not show in it. */
  public Network network() {
    return network;
  }

  /** Total head at a node, in m above the datum. */
  public double head(String nodeId) {
    return headAt(network.nodeIndex(nodeId));
  }

  /** Pressure at a node in m of water; 0 at the surface of a reservoir. */
  public double pressure(String nodeId) {
    return pressure(network.nodeIndex(nodeId));
  }

  /** Pressure in m of water at the node with a place in {@link Network#nodes}. */
  public double pressure(int node) {
    Node it = network.nodes().get(node);
    return it instanceof Node.Reservoir ? 0 : headAt(node) - it.elevation();
  }

  /** Flow through a link in m3/s; negative where it runs from end to start. */
  public double flow(String linkId) {
    return flowAt(network.linkIndex(linkId));
  }

  /** Mean speed in a pipe or open regulator in m/s, never negative; 0 for parts without a bore. */
  public double velocity(String linkId) {
    int at = network.linkIndex(linkId);
    Link link = network.links().get(at);
    double diameter = 0;
    if (link instanceof Link.Pipe pipe) {
      diameter = pipe.diameter();
    } else if (link instanceof Link.PressureRegulator valve) {
      diameter = valve.diameter();
    }
    return diameter == 0 ? 0 : Math.abs(flowAt(at)) / Friction.area(diameter);
  }

  /** Head lost from the start of a link to its end, in m; negative for a gain. */
  public double headLoss(String linkId) {
    Link link = network.links().get(network.linkIndex(linkId));
    return head(link.from()) - head(link.to());
  }

  /** Flow that a reservoir or source gives to the network, in m3/s; negative where it takes. */
  public double supplied(String nodeId) {
    return suppliedAt(network.nodeIndex(nodeId));
  }

  /** Flow out of all emitters at a node together, in m3/s. */
  public double outflow(String nodeId) {
    double[] known = outflow;
    if (known == null) {
      known = new double[layout.ofNode.length];
      for (int g = 0; g < groupFlow.length; g++) {
        known[network.nodeOfEmitter(g)] += groupFlow[g];
      }
      outflow = known;
    }
    return known[network.nodeIndex(nodeId)];
  }

  /** Flow of one emitter of a group, in m3/s. */
  public double emitterFlow(String groupId) {
    return emitterFlowAt(network.emitterIndex(groupId));
  }

  /** Heads in m in the order of {@link Network#nodes}. */
  public double[] heads() {
    double[] heads = new double[layout.ofNode.length];
    Arrays.setAll(heads, this::headAt);
    return heads;
  }

  /** Flows in m3/s in the order of {@link Network#links}. */
  public double[] flows() {
    double[] flows = new double[layout.ofLink.length];
    Arrays.setAll(flows, this::flowAt);
    return flows;
  }

  /** Flow of one emitter of each group in m3/s, in the order of {@link Network#emitters}. */
  public double[] emitterFlows() {
    double[] flows = new double[groupFlow.length];
    Arrays.setAll(flows, this::emitterFlowAt);
    return flows;
  }

  /** True where no water can reach a node because of closed links. */
  public boolean isCutOff(String nodeId) {
    return cutOff[layout.ofNode[network.nodeIndex(nodeId)]];
  }

  /** True for a regulator that holds its set pressure. */
  public boolean isRegulating(String linkId) {
    return stateAt(network.linkIndex(linkId)) == GradientMethod.REGULATING;
  }

  /** Steps of Newton's method that were taken. */
  public int iterations() {
    return iterations;
  }

  /** Largest difference of inflow and outflow at any node, in m3/s. */
  public double massResidual() {
    return massResidual;
  }

  /** Largest difference of the head lost along a link and the loss its flow causes, in m. */
  public double energyResidual() {
    return energyResidual;
  }

  /** What is worth knowing about this solution, such as parts cut off by closed valves. */
  public List<HydraulicProblem> notices() {
    return notices;
  }

  double headAt(int node) {
    return head[layout.ofNode[node]];
  }

  double flowAt(int link) {
    return flow[layout.ofLink[link]];
  }

  byte stateAt(int link) {
    return state[layout.ofLink[link]];
  }

  double suppliedAt(int node) {
    if (layout.supplyLink[node] >= 0) {
      return flow[layout.supplyLink[node]];
    }
    int known = layout.ofNode[node];
    if (known < layout.unknowns) {
      return 0;
    }
    double supplied = 0;
    for (int e = layout.adjacency.start(known); e < layout.adjacency.start(known + 1); e++) {
      int l = layout.adjacency.link(e);
      supplied += layout.tail[l] == known ? flow[l] : -flow[l];
    }
    return supplied;
  }

  private double emitterFlowAt(int group) {
    int count = network.emitters().get(group).count();
    return count == 0 ? 0 : groupFlow[group] / count;
  }
}
