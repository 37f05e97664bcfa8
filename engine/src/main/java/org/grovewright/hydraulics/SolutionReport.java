package org.grovewright.hydraulics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.grovewright.hydraulics.HydraulicProblem.Kind;

/** Turns the solver's arrays into a solution in the order of the network, with its notices. */
final class SolutionReport {
  private static final double LITRES_PER_HOUR = 3.6e6;

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
    List<HydraulicProblem> idle = idlePumps();
    // nothing flows past a pump that stands still, which is the likelier reason
    String by = idle.isEmpty() ? "closed valves" : "pumps that stand still or closed valves";
    List<HydraulicProblem> fatal = new ArrayList<>();
    for (int i = 0; i < layout.ofNode.length; i++) {
      int node = layout.ofNode[i];
      double demand = method.demand[node];
      if (method.cutOff[node]) {
        String id = network.nodes().get(i).id();
        if (demand != 0) {
          String message = "node " + id + " has a fixed demand but is cut off by " + by;
          fatal.add(new HydraulicProblem(Kind.CUT_OFF, id, message));
        } else {
          String message = "node " + id + " gets no water: " + by + " cut it off";
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
      fatal.addAll(0, idle);
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
      } else if (link instanceof Link.Pump pump && isOverrun(pump.curve(), method.flow[l])) {
        notices.add(overrun(pump, method.flow[l]));
      }
    }
    notices.addAll(idlePumps());
  }

  /** The pumps that give nothing although they were not shut. */
  private List<HydraulicProblem> idlePumps() {
    List<HydraulicProblem> idle = new ArrayList<>();
    for (int i : oneWay) {
      int l = layout.ofLink[i];
      if (!(network.links().get(i) instanceof Link.Pump pump)
          || method.state[l] == GradientMethod.SHUT
          || method.flow[l] > Solver.MASS_TOLERANCE) {
        continue;
      }
      String message = "pump " + pump.id() + " cannot lift against the pressure behind it";
      if (method.stopped[l]) {
        message =
            "pump "
                + pump.id()
                + " stands still: to run it would have to lift more than the "
                + rounded(pump.curve().mostHead())
                + " m at which its curve begins; it needs a curve that begins at less flow, more to"
                + " flow out behind it, or a pump for less water";
      }
      idle.add(new HydraulicProblem(Kind.PUMP_OVERCOME, pump.id(), message));
    }
    return idle;
  }

  /** Whether more flows than the curve tells of, by more than the flows are exact. */
  private static boolean isOverrun(PumpCurve curve, double flow) {
    return flow > curve.mostFlow() + Solver.MASS_TOLERANCE;
  }

  /** More water through a pump than its curve tells of. */
  private static HydraulicProblem overrun(Link.Pump pump, double flow) {
    PumpCurve curve = pump.curve();
    double head = curve.headAt(flow);
    String given = rounded(flow * LITRES_PER_HOUR) + " L/h";
    String message;
    if (head < 0) {
      message =
          "more water is drawn through pump "
              + pump.id()
              + " than it can pump: at "
              + given
              + " it lifts nothing but takes "
              + rounded(-head)
              + " m away; draw less than "
              + rounded(curve.flowWithoutHead() * LITRES_PER_HOUR)
              + " L/h or take a larger pump";
    } else {
      message =
          "pump "
              + pump.id()
              + " runs past the last point of its curve, at "
              + given
              + " where the curve ends at "
              + rounded(curve.mostFlow() * LITRES_PER_HOUR)
              + " L/h; its lift there is only guessed from the last two points";
    }
    return new HydraulicProblem(Kind.PUMP_OVERRUN, pump.id(), message);
  }

  private static String rounded(double value) {
    return String.format(Locale.ROOT, Math.abs(value) < 100 ? "%.2f" : "%.0f", value);
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
