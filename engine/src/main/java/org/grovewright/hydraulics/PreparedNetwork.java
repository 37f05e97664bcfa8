package org.grovewright.hydraulics;

import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * A network made ready to be solved many times. Figures may be edited between solves; what is
 * joined to what may not, except that links can be shut and opened.
 *
 * <p>Belongs to one thread at a time; {@link #copy} gives another thread its own.
 */
public final class PreparedNetwork {
  private final Network network;
  private final Layout layout;
  private final GradientMethod method;
  private final FlowGuess guess;
  private final SolutionReport report;

  PreparedNetwork(Network network) {
    this.network = network;
    layout = new Layout(network);
    LinkLaws laws = new LinkLaws(layout.tail.length, network.viscosity(), network.gravity());
    boolean[] oneWay = new boolean[layout.tail.length];
    boolean[] shut = new boolean[layout.tail.length];
    double[] setHead = new double[layout.tail.length];
    Arrays.fill(setHead, Double.NaN);
    List<Link> links = network.links();
    for (int i = 0; i < links.size(); i++) {
      Link link = links.get(i);
      int l = layout.ofLink[i];
      laws.set(l, link);
      if (link instanceof Link.Pipe pipe) {
        oneWay[l] = pipe.checkValve();
        shut[l] = pipe.closed();
      } else if (link instanceof Link.LossDevice device) {
        oneWay[l] = device.oneWay();
        shut[l] = device.closed();
      } else if (link instanceof Link.Pump) {
        oneWay[l] = true;
      } else if (link instanceof Link.PressureRegulator valve) {
        oneWay[l] = true;
        int tip = network.endOf(i);
        setHead[l] = network.nodes().get(tip).elevation() + valve.setPressure();
      }
    }
    EmitterLaws emitters = new EmitterLaws(network.emitters().size());
    int[] emitterNode = new int[network.emitters().size()];
    for (int g = 0; g < emitterNode.length; g++) {
      EmitterGroup group = network.emitters().get(g);
      emitters.set(g, group.curve(), group.count());
      emitterNode[g] = layout.ofNode[network.nodeOfEmitter(g)];
    }
    for (int i = 0; i < layout.supplyLink.length; i++) {
      int l = layout.supplyLink[i];
      if (l >= 0) {
        oneWay[l] = true;
        laws.setSupply(l, ((Node.Source) network.nodes().get(i)).supply());
      }
    }
    method =
        new GradientMethod(
            layout,
            laws,
            emitters,
            emitterNode,
            oneWay,
            setHead,
            Solver.MASS_TOLERANCE,
            Solver.ENERGY_TOLERANCE);
    for (int i = 0; i < layout.ofNode.length; i++) {
      Node node = network.nodes().get(i);
      method.elevation[layout.ofNode[i]] = node.elevation();
      if (node instanceof Node.Reservoir reservoir) {
        method.head[layout.ofNode[i]] = reservoir.head();
      } else if (node instanceof Node.Source source) {
        int behind = layout.tail[layout.supplyLink[i]];
        method.head[behind] = source.elevation() + source.supply().staticHead();
        method.elevation[behind] = source.elevation();
      }
    }
    for (Map.Entry<String, Double> demand : network.demands().entrySet()) {
      method.demand[layout.ofNode[network.findNode(demand.getKey())]] = demand.getValue();
    }
    for (int l = 0; l < shut.length; l++) {
      if (shut[l]) {
        method.state[l] = GradientMethod.SHUT;
      }
    }
    guess = new FlowGuess(method);
    report = new SolutionReport(network, method);
  }

  private PreparedNetwork(PreparedNetwork other) {
    network = other.network;
    layout = other.layout;
    method = other.method.copy();
    guess = new FlowGuess(method);
    report = new SolutionReport(network, method);
  }

  /** The same network with the same edits, for use by another thread. */
  public PreparedNetwork copy() {
    return new PreparedNetwork(this);
  }

  /** The network as it was prepared, without later edits. */
  public Network network() {
    return network;
  }

  /** Gives every emitter of a group another curve. */
  public void setEmitter(String groupId, EmitterCurve curve) {
    String fault = curve.fault();
    if (fault != null) {
      throw new IllegalArgumentException("emitter " + groupId + ": " + fault);
    }
    int group = network.emitterIndex(groupId);
    method.keepFactors();
    method.emitters.setCurve(group, curve);
    method.emitterChanged(group);
  }

  /** Multiplies the flow of every emitter of a group, e.g. 0.5 for half clogged; 1 undoes it. */
  public void setEmitterFactor(String groupId, double factor) {
    setEmitterFactor(network.emitterIndex(groupId), factor);
  }

  /** Multiplies the flow of the group at a place in {@link Network#emitters}. */
  public void setEmitterFactor(int group, double factor) {
    requireNotNegative("emitter factor", factor);
    method.keepFactors();
    method.emitters.setFactor(group, factor);
    method.emitterChanged(group);
  }

  /** Shuts or opens a link. */
  public void setClosed(String linkId, boolean closed) {
    int l = layout.ofLink[network.linkIndex(linkId)];
    boolean was = method.state[l] == GradientMethod.SHUT;
    if (closed == was) {
      return;
    }
    method.stateChanged();
    if (closed) {
      method.state[l] = GradientMethod.SHUT;
      method.flow[l] = 0;
    } else {
      boolean regulates = !Double.isNaN(method.setHead[l]);
      method.state[l] = regulates ? GradientMethod.REGULATING : GradientMethod.OPEN;
      method.flow[l] = 1e-5;
    }
  }

  /** Sets the level of a reservoir, or the head of a source at no flow, in m above the datum. */
  public void setSourceHead(String nodeId, double headM) {
    if (!Double.isFinite(headM)) {
      throw new IllegalArgumentException("the head of " + nodeId + " must be a number");
    }
    int i = network.nodeIndex(nodeId);
    int supply = layout.supplyLink[i];
    int known = supply >= 0 ? layout.tail[supply] : layout.ofNode[i];
    if (known < layout.unknowns) {
      throw new IllegalArgumentException("node " + nodeId + " is not a reservoir or source");
    }
    method.head[known] = headM;
    method.moved();
    if (supply < 0) {
      method.elevation[known] = headM;
    }
  }

  /** Gives a source another supply curve. */
  public void setSupply(String nodeId, SupplyCurve supply) {
    int i = network.nodeIndex(nodeId);
    if (layout.supplyLink[i] < 0) {
      throw new IllegalArgumentException("node " + nodeId + " is not a source with a curve");
    }
    method.laws.setSupply(layout.supplyLink[i], supply);
    method.lawChanged(layout.supplyLink[i]);
    setSourceHead(nodeId, network.nodes().get(i).elevation() + supply.staticHead());
  }

  /** Replaces a pipe by one with the same id and ends but other figures; keeps open or shut. */
  public void setPipe(Link.Pipe pipe) {
    Link before = network.links().get(network.linkIndex(pipe.id()));
    boolean same =
        before instanceof Link.Pipe old
            && old.from().equals(pipe.from())
            && old.to().equals(pipe.to())
            && old.checkValve() == pipe.checkValve()
            && pipe.roughness().formula() == network.formula();
    if (!same || !(pipe.length() > 0 && pipe.diameter() > 0 && pipe.minorLoss() >= 0)) {
      throw new IllegalArgumentException(
          "pipe "
              + pipe.id()
              + " can only be replaced by a pipe with the same ends, check valve and friction"
              + " formula, and a length and diameter above 0");
    }
    int l = layout.ofLink[network.linkIndex(pipe.id())];
    method.laws.set(l, pipe);
    method.lawChanged(l);
  }

  private static void requireNotNegative(String what, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(what + " must be zero or more, but is " + value);
    }
  }

  /**
   * Solves from scratch; the answer does not depend on earlier solves.
   *
   * @throws HydraulicException if there is no solution; says which part cannot work
   */
  public Solution solve() {
    guess.apply();
    return finish(method.runEvaluated());
  }

  /**
   * Solves from where the last solve ended, which is quicker after a small edit. The answer is the
   * same within the tolerances.
   *
   * @throws HydraulicException if there is no solution; says which part cannot work
   */
  public Solution resolve() {
    if (method.anyStopped) {
      // whether such a pump can run again shows only when all are tried
      return solve();
    }
    method.findCutOff();
    if (method.settle() || method.run()) {
      return finish(true);
    }
    return solve();
  }

  /**
   * Solves from an earlier solution of the same network.
   *
   * @throws HydraulicException if there is no solution; says which part cannot work
   */
  public Solution resolveFrom(Solution previous) {
    if (previous.network() != network) {
      throw new IllegalArgumentException("the earlier solution is of another network");
    }
    method.moved();
    for (int i = 0; i < layout.ofNode.length; i++) {
      if (layout.ofNode[i] < layout.unknowns) {
        method.head[layout.ofNode[i]] = previous.headAt(i);
      }
      if (layout.supplyLink[i] >= 0) {
        method.flow[layout.supplyLink[i]] = previous.suppliedAt(i);
      }
    }
    for (int i = 0; i < layout.ofLink.length; i++) {
      int l = layout.ofLink[i];
      if (method.state[l] != GradientMethod.SHUT && previous.stateAt(i) != GradientMethod.SHUT) {
        method.flow[l] = previous.flowAt(i);
        if (method.state[l] != previous.stateAt(i)) {
          method.state[l] = previous.stateAt(i);
          method.stateChanged();
        }
      }
    }
    return resolve();
  }

  private Solution finish(boolean converged) {
    if (!converged) {
      throw new HydraulicException(List.of(report.notConverged()));
    }
    return report.solution();
  }
}
