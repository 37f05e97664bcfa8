package org.grovewright.hydraulics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.grovewright.hydraulics.HydraulicProblem.Kind;

/** Turns the solver's arrays into a solution in the order of the network, with its notices. */
final class SolutionReport {
  private final Network network;
  private final GradientMethod method;
  private final Layout layout;

  /** Places in the network of the links that let water through one way only, rising. */
  private final int[] oneWay;

  SolutionReport(Network network, GradientMethod method) {
    this.network = network;
    this.method = method;
    layout = method.layout;
    oneWay =
        IntStream.concat(Arrays.stream(method.stateful), Arrays.stream(method.regulators))
            .map(l -> layout.linkOf[l])
            .filter(i -> i >= 0)
            .sorted()
            .toArray();
  }

  /**
   * The solution that the method has arrived at.
   *
   * @throws HydraulicException if a fixed demand is cut off
   */
  Solution solution() {
    List<HydraulicProblem> notices = new ArrayList<>();
    if (method.anyCutOff || !network.demands().isEmpty()) {
      nodeNotices(notices);
    }
    linkNotices(notices);
    return new Solution(network, method, notices);
  }

  private void nodeNotices(List<HydraulicProblem> notices) {
    List<HydraulicProblem> fatal = new ArrayList<>();
    for (int i = 0; i < layout.ofNode.length; i++) {
      int node = layout.ofNode[i];
      double demand = method.demand[node];
      if (method.cutOff[node]) {
        String id = network.nodes().get(i).id();
        if (demand != 0) {
          String message = "node " + id + " has a fixed demand but is cut off by closed valves";
          fatal.add(new HydraulicProblem(Kind.CUT_OFF, id, message));
        } else {
          String message = "node " + id + " gets no water: closed valves cut it off";
          notices.add(new HydraulicProblem(Kind.CUT_OFF, id, message));
        }
      } else if (demand > 0
          && method.head[node] < method.elevation[node] - Solver.ENERGY_TOLERANCE) {
        String id = network.nodes().get(i).id();
        String message = "the fixed demand at node " + id + " draws its pressure below zero";
        notices.add(new HydraulicProblem(Kind.NEGATIVE_PRESSURE, id, message));
      }
    }
    if (!fatal.isEmpty()) {
      throw new HydraulicException(fatal);
    }
  }

  private void linkNotices(List<HydraulicProblem> notices) {
    for (int i : oneWay) {
      Link link = network.links().get(i);
      int l = layout.ofLink[i];
      String id = link.id();
      if (link instanceof Link.PressureRegulator && method.state[l] == GradientMethod.OPEN) {
        String message = "regulator " + id + " is fully open: less than its set pressure arrives";
        notices.add(new HydraulicProblem(Kind.REGULATOR_STARVED, id, message));
      } else if (link instanceof Link.Pump && method.flow[l] <= Solver.MASS_TOLERANCE) {
        String message = "pump " + id + " cannot lift against the pressure behind it";
        notices.add(new HydraulicProblem(Kind.PUMP_OVERCOME, id, message));
      }
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
