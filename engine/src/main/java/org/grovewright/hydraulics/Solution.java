package org.grovewright.hydraulics;

import java.util.List;

/** Heads and flows that keep mass and energy throughout a network. A solution never changes. */
public final class Solution {
  private final Network network;
  private final double[] head;
  private final double[] flow;
  private final double[] supplied;
  private final double[] groupFlow;
  private final double[] outflow;
  private final byte[] state;
  private final boolean[] cutOff;
  private final int iterations;
  private final double massResidual;
  private final double energyResidual;
  private final List<HydraulicProblem> notices;

  Solution(
      Network network,
      double[] head,
      double[] flow,
      double[] supplied,
      double[] groupFlow,
      double[] outflow,
      byte[] state,
      boolean[] cutOff,
      int iterations,
      double massResidual,
      double energyResidual,
      List<HydraulicProblem> notices) {
    this.network = network;
    this.head = head;
    this.flow = flow;
    this.supplied = supplied;
    this.groupFlow = groupFlow;
    this.outflow = outflow;
    this.state = state;
    this.cutOff = cutOff;
    this.iterations = iterations;
    this.massResidual = massResidual;
    this.energyResidual = energyResidual;
    this.notices = List.copyOf(notices);
  }

  /** The network that was solved; edits made after preparing it do not show in it. */
  public Network network() {
    return network;
  }

  /** Total head at a node, in m above the datum. */
  public double head(String nodeId) {
    return head[network.nodeIndex(nodeId)];
  }

  /** Pressure at a node in m of water; 0 at the surface of a reservoir. */
  public double pressure(String nodeId) {
    return pressure(network.nodeIndex(nodeId));
  }

  /** Pressure in m of water at the node with a place in {@link Network#nodes}. */
  public double pressure(int node) {
    Node it = network.nodes().get(node);
    return it instanceof Node.Reservoir ? 0 : head[node] - it.elevation();
  }

  /** Flow through a link in m3/s; negative where it runs from end to start. */
  public double flow(String linkId) {
    return flow[network.linkIndex(linkId)];
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
    return diameter == 0 ? 0 : Math.abs(flow[at]) / Friction.area(diameter);
  }

  /** Head lost from the start of a link to its end, in m; negative for a gain. */
  public double headLoss(String linkId) {
    Link link = network.links().get(network.linkIndex(linkId));
    return head(link.from()) - head(link.to());
  }

  /** Flow that a reservoir or source gives to the network, in m3/s; negative where it takes. */
  public double supplied(String nodeId) {
    return supplied[network.nodeIndex(nodeId)];
  }

  /** Flow out of all emitters at a node together, in m3/s. */
  public double outflow(String nodeId) {
    return outflow[network.nodeIndex(nodeId)];
  }

  /** Flow of one emitter of a group, in m3/s. */
  public double emitterFlow(String groupId) {
    return groupFlow[network.emitterIndex(groupId)];
  }

  /** Heads in m in the order of {@link Network#nodes}. */
  public double[] heads() {
    return head.clone();
  }

  /** Flows in m3/s in the order of {@link Network#links}. */
  public double[] flows() {
    return flow.clone();
  }

  /** Flow of one emitter of each group in m3/s, in the order of {@link Network#emitters}. */
  public double[] emitterFlows() {
    return groupFlow.clone();
  }

  /** True where no water can reach a node because of closed links. */
  public boolean isCutOff(String nodeId) {
    return cutOff[network.nodeIndex(nodeId)];
  }

  /** True for a regulator that holds its set pressure. */
  public boolean isRegulating(String linkId) {
    return state[network.linkIndex(linkId)] == GradientMethod.REGULATING;
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
    return head[node];
  }

  double flowAt(int link) {
    return flow[link];
  }

  double suppliedAt(int node) {
    return supplied[node];
  }

  byte stateAt(int link) {
    return state[link];
  }
}
