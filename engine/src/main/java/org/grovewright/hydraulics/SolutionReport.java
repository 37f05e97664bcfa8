package org.grovewright.hydraulics;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.hydraulics.HydraulicProblem.Kind;

/** Turns the solver's arrays into a solution in the order of the network, with its notices. */
final class SolutionReport {
  private final Network network;
  private final GradientMethod method;
  private final Layout layout;

  /** For each emitter group the place of its node in the network. */
  private final int[] groupNode;

  SolutionReport(Network network, GradientMethod method) {
    this.network = network;
    this.method = method;
    layout = method.layout;
    groupNode = new int[method.emitterNode.length];
    for (int g = 0; g < groupNode.length; g++) {
      groupNode[g] = layout.nodeOf[method.emitterNode[g]];
    }
  }

  /**
   * The solution that the method has arrived at.
   *
   * @throws HydraulicException if a fixed demand is cut off
   */
  Solution solution() {
    List<HydraulicProblem> notices = new ArrayList<>();
    double[] head = new double[layout.ofNode.length];
    boolean[] cutOff = new boolean[head.length];
    for (int i = 0; i < head.length; i++) {
      head[i] = method.head[layout.ofNode[i]];
      cutOff[i] = method.cutOff[layout.ofNode[i]];
    }
    nodeNotices(head, cutOff, notices);
    double[] flow = new double[layout.ofLink.length];
    byte[] state = new byte[flow.length];
    for (int i = 0; i < flow.length; i++) {
      int l = layout.ofLink[i];
      flow[i] = method.flow[l];
      state[i] = method.state[l];
      if (method.oneWay[l]) {
        // rounding may leave a one-way link the least bit below zero
        flow[i] = Math.max(0, flow[i]);
        linkNotice(network.links().get(i), state[i], flow[i], notices);
      }
    }
    double[] groupFlow = new double[groupNode.length];
    double[] outflow = new double[head.length];
    for (int g = 0; g < groupFlow.length; g++) {
      int node = method.emitterNode[g];
      int count = method.emitters.count(g);
      double group = method.emitters.flow(g, method.head[node] - method.elevation[node]);
      groupFlow[g] = count == 0 ? 0 : group / count;
      outflow[groupNode[g]] += group;
    }
    return new Solution(
        network,
        head,
        flow,
        supplied(),
        groupFlow,
        outflow,
        state,
        cutOff,
        method.steps,
        method.massResidual,
        method.energyResidual,
        notices);
  }

  private double[] supplied() {
    double[] supplied = new double[layout.ofNode.length];
    for (int i = 0; i < supplied.length; i++) {
      int node = layout.ofNode[i];
      if (layout.supplyLink[i] >= 0) {
        supplied[i] = Math.max(0, method.flow[layout.supplyLink[i]]);
      } else if (node >= layout.unknowns) {
        for (int e = layout.adjacency.start(node); e < layout.adjacency.start(node + 1); e++) {
          int l = layout.adjacency.link(e);
          supplied[i] += layout.tail[l] == node ? method.flow[l] : -method.flow[l];
        }
      }
    }
    return supplied;
  }

  private void nodeNotices(double[] head, boolean[] cutOff, List<HydraulicProblem> notices) {
    List<HydraulicProblem> fatal = new ArrayList<>();
    for (int i = 0; i < head.length; i++) {
      double demand = method.demand[layout.ofNode[i]];
      if (cutOff[i]) {
        String id = network.nodes().get(i).id();
        if (demand != 0) {
          String message = "node " + id + " has a fixed demand but is cut off by closed valves";
          fatal.add(new HydraulicProblem(Kind.CUT_OFF, id, message));
        } else {
          String message = "node " + id + " gets no water: closed valves cut it off";
          notices.add(new HydraulicProblem(Kind.CUT_OFF, id, message));
        }
      } else if (demand > 0
          && head[i] < method.elevation[layout.ofNode[i]] - Solver.ENERGY_TOLERANCE) {
        String id = network.nodes().get(i).id();
        String message = "the fixed demand at node " + id + " draws its pressure below zero";
        notices.add(new HydraulicProblem(Kind.NEGATIVE_PRESSURE, id, message));
      }
    }
    if (!fatal.isEmpty()) {
      throw new HydraulicException(fatal);
    }
  }

  private static void linkNotice(
      Link link, byte state, double flow, List<HydraulicProblem> notices) {
    String id = link.id();
    if (link instanceof Link.PressureRegulator && state == GradientMethod.OPEN) {
      String message = "regulator " + id + " is fully open: less than its set pressure arrives";
      notices.add(new HydraulicProblem(Kind.REGULATOR_STARVED, id, message));
    } else if (link instanceof Link.Pump && flow <= Solver.MASS_TOLERANCE) {
      String message = "pump " + id + " cannot lift against the pressure behind it";
      notices.add(new HydraulicProblem(Kind.PUMP_OVERCOME, id, message));
    }
  }

  /** What to say where no steady flow was found. */
  HydraulicProblem notConverged() {
    int node = layout.nodeOf[method.worstNode()];
    String part = network.nodes().get(Math.max(node, 0)).id();
    int link = layout.linkOf[method.worstLink()];
    String through = link < 0 ? "a supply" : "link " + network.links().get(link).id();
    return new HydraulicProblem(
        Kind.NOT_CONVERGED,
        part,
        "no steady flow was found after "
            + method.steps
            + " steps; the flows at node "
            + part
            + " and the loss along "
            + through
            + " fit least, by "
            + method.massResidual
            + " m3/s and "
            + method.energyResidual
            + " m");
  }
}
