package org.grovewright.hydraulics;

import java.util.Arrays;
import java.util.function.IntPredicate;

/**
 * Newton's method on heads and flows together, after Todini and Pilati (1988, from memory).
 *
 * <p>Each step linearises the loss of every link at its flow and the outflow of every emitter at
 * its pressure, which leaves one linear system for the changes of head; the changes of flow follow
 * from them link by link. Emitters are taken by their pressure because their flow bends the less
 * the more pressure there is, and pipes by their flow because their loss is smooth there; each is
 * then close to a straight line where it matters.
 *
 * <p>After a small change {@link #settle} does only what the change makes necessary: the losses of
 * pipes whose flow hardly moved are taken from the straight line at the flow where they were last
 * worked out, as long as the bend of the law cannot matter, and of the factors only the columns are
 * found anew that the other pipes reach. A change in one loop so costs the factors of that loop and
 * of the manifold, and one pass over the rest.
 *
 * <p>Check valves, pumps and regulators have a state besides; it is looked at after every step and,
 * if it keeps changing, only where the laws are kept.
 */
final class GradientMethod {
  /** Water can pass. */
  static final byte OPEN = 0;

  /** Held shut by the pressure behind it. */
  static final byte HELD_SHUT = 1;

  /** Shut by the owner. */
  static final byte SHUT = 2;

  /** A regulator that holds its set head. */
  static final byte REGULATING = 3;

  /**
   * Check valves, pumps and regulators may change a few at a time, and after the first steps only
   * where the laws are kept, so that many of them in loops take hundreds of steps.
   */
  private static final int MOST_STEPS = 2000;

  /** After so many steps states are only looked at where the laws are kept. */
  private static final int FREE_STATE_STEPS = 12;

  /** After so many steps each is shortened until it helps. */
  static final int FULL_STEPS = 30;

  /** Conductance in m2/s that keeps the matrix positive definite; does not change the answer. */
  private static final double LEAST_CONDUCTANCE = 1e-14;

  /** Conductance in m2/s that ties the outlet of a regulator to its set head. */
  private static final double HOLDING_CONDUCTANCE = 1e10;

  /** Error of a difference of heads from rounding, as a share of the head. */
  private static final double HEAD_ROUNDING = 4e-15;

  /** Most steps with old factors; where they do not suffice, new ones are quicker. */
  private static final int MOST_SETTLING_STEPS = 8;

  /** Share of the imbalance that a step with old factors must at least get rid of to go on. */
  private static final double LEAST_PROGRESS = 0.9;

  /** Share by which a conductance must change for the factors to follow. */
  private static final double LEAST_CHANGE = 1e-3;

  /** Error in m3/s that taking a pipe's law as straight may cause. */
  private static final double STRAIGHT_TOLERANCE = 1e-11;

  /**
   * Bound of {@code q h'' / (2 h')} for a pipe's law h(q) between 3/4 and 5/4 of a flow: below 1
   * for the power laws, and about 2 in the transition from laminar to turbulent.
   */
  private static final double MOST_BEND = 4;

  private static final double STATE_FLOW_TOLERANCE = 1e-10;
  private static final double STATE_HEAD_TOLERANCE = 1e-6;

  /** By so much in m a pump may lift more than its curve's first head: 0.0005 ft, from memory. */
  private static final double LIFT_TOLERANCE = 1.5e-4;

  final Layout layout;
  final LinkLaws laws;
  final EmitterLaws emitters;

  /** For each emitter group its node. */
  final int[] emitterNode;

  /** For each node here its elevation in m. */
  final double[] elevation;

  /** For each node here its fixed demand in m3/s. */
  final double[] demand;

  /** For each link whether it lets water through from tail to tip only. */
  final boolean[] oneWay;

  /** For each link the head in m it holds at its tip if it is a regulator, else NaN. */
  final double[] setHead;

  /** The links that are regulators, and all other links that water can only pass one way. */
  final int[] regulators;

  final int[] stateful;

  /** The links that are not pipes; their laws may bend sharply. */
  private final int[] devices;

  final double[] head;
  final double[] flow;
  final byte[] state;

  /**
   * For each link whether it is a pump that was shut because it would have to lift more than its
   * curve tells of. It stays shut until all is solved from scratch: shut it may well see less lift,
   * and opened for that it would only have to be shut again.
   */
  final boolean[] stopped;

  boolean anyStopped;

  /** For each node whether nothing open joins it to a source. */
  final boolean[] cutOff;

  boolean anyCutOff;

  int steps;
  double massResidual;
  double energyResidual;

  /** Most by which the flow of any link does not fit the heads at its ends, in m3/s. */
  private double flowResidual;

  private final double massTolerance;
  private final double energyTolerance;
  private final SparseFactor factor;

  /** For each link the head in m it loses at its flow, and how steeply that grows. */
  final double[] loss;

  final double[] slope;

  /** For each link the flow at which its slope was found, and the loss there; NaN to find anew. */
  private final double[] knownFlow;

  private final double[] knownLoss;

  /** Whether the slopes of all laws are those at the last solution. */
  private boolean linearised;

  /** Whether what links and nodes lack was found at the present heads and flows. */
  private boolean weighed;

  /** Whether the factors are those of the last solution. */
  private boolean factored;

  private final double[] conductance;
  private final double[] push;
  private final double[] right;

  /** For each node by how much more flows in than out, in m3/s, as last weighed. */
  final double[] balance;

  private final double[] linearisedAt;

  /** For each emitter group its flow in m3/s at the present heads. */
  final double[] emitterFlow;

  GradientMethod(
      Layout layout,
      LinkLaws laws,
      EmitterLaws emitters,
      int[] emitterNode,
      boolean[] oneWay,
      double[] setHead,
      double massTolerance,
      double energyTolerance) {
    this.layout = layout;
    this.laws = laws;
    this.emitters = emitters;
    this.emitterNode = emitterNode;
    this.oneWay = oneWay;
    this.setHead = setHead;
    this.massTolerance = massTolerance;
    this.energyTolerance = energyTolerance;
    int links = layout.tail.length;
    elevation = new double[layout.heads];
    demand = new double[layout.heads];
    head = new double[layout.heads];
    flow = new double[links];
    state = new byte[links];
    stopped = new boolean[links];
    cutOff = new boolean[layout.heads];
    factor = layout.newFactor();
    loss = new double[links];
    slope = new double[links];
    knownFlow = new double[links];
    knownLoss = new double[links];
    Arrays.fill(knownFlow, Double.NaN);
    conductance = new double[links];
    push = new double[links];
    right = new double[layout.heads];
    balance = new double[layout.heads];
    linearisedAt = new double[emitterNode.length];
    emitterFlow = new double[emitterNode.length];
    int[] valves = where(links, l -> oneWay[l]);
    regulators = Arrays.stream(valves).filter(l -> !Double.isNaN(setHead[l])).toArray();
    stateful = Arrays.stream(valves).filter(l -> Double.isNaN(setHead[l])).toArray();
    devices = where(links, l -> !laws.isPipe(l));
  }

  private static int[] where(int links, IntPredicate test) {
    int[] found = {};
    int count = 0;
    for (int l = 0; l < links; l++) {
      if (test.test(l)) {
        if (count == found.length) {
          found = Arrays.copyOf(found, 2 * count + 8);
        }
        found[count++] = l;
      }
    }
    return Arrays.copyOf(found, count);
  }

  /** A method with the same network and state but arrays of its own. */
  GradientMethod copy() {
    GradientMethod copy =
        new GradientMethod(
            layout,
            laws.copy(),
            emitters.copy(),
            emitterNode,
            oneWay,
            setHead.clone(),
            massTolerance,
            energyTolerance);
    System.arraycopy(elevation, 0, copy.elevation, 0, elevation.length);
    System.arraycopy(demand, 0, copy.demand, 0, demand.length);
    System.arraycopy(head, 0, copy.head, 0, head.length);
    System.arraycopy(flow, 0, copy.flow, 0, flow.length);
    System.arraycopy(state, 0, copy.state, 0, state.length);
    System.arraycopy(cutOff, 0, copy.cutOff, 0, cutOff.length);
    copy.anyCutOff = anyCutOff;
    System.arraycopy(stopped, 0, copy.stopped, 0, stopped.length);
    copy.anyStopped = anyStopped;
    return copy;
  }

  /**
   * Runs Newton's method from the present heads, flows and states.
   *
   * @return whether both laws are kept within the tolerances
   */
  boolean run() {
    laws.evaluate(flow, loss, slope);
    return runEvaluated();
  }

  /** Like {@link #run}, from flows whose {@link #loss} and {@link #slope} are already found. */
  boolean runEvaluated() {
    stateChanged();
    linearised = iterate();
    return linearised;
  }

  private boolean iterate() {
    System.arraycopy(flow, 0, knownFlow, 0, flow.length);
    System.arraycopy(loss, 0, knownLoss, 0, loss.length);
    for (int l : devices) {
      knownFlow[l] = Double.NaN;
    }
    lineariseEmitters();
    LineSearch search = null;
    for (steps = 0; steps < MOST_STEPS; steps++) {
      findConductances();
      weigh();
      boolean kept = lawsAreKept();
      if ((kept || steps > 0 && steps < FREE_STATE_STEPS) && updateStates(kept)) {
        findLosses(false);
        continue;
      }
      if (kept) {
        weighed = true;
        return true;
      }
      assemble();
      factor.factorAndSolve(right);
      if (steps < FULL_STEPS) {
        advance();
      } else {
        search = search == null ? new LineSearch(this) : search;
        search.advance();
        lineariseEmitters();
      }
      findLosses(false);
    }
    return false;
  }

  private boolean lawsAreKept() {
    return massResidual <= massTolerance
        && flowResidual <= massTolerance
        && energyResidual <= energyTolerance;
  }

  /** Notes that the law of a link is another from now on. */
  void lawChanged(int l) {
    knownFlow[l] = Double.NaN;
    weighed = false;
  }

  /** Notes that heads or flows were set from outside. */
  void moved() {
    weighed = false;
  }

  /** Keeps the factors of the last solution, before anything it was found for is changed. */
  void keepFactors() {
    if (linearised && !factored) {
      assemble();
      weighed = false;
      factor.keep();
      factor.factor();
      factored = true;
    }
  }

  /** Notes that the emitters of a group are others from now on. */
  void emitterChanged(int g) {
    int node = emitterNode[g];
    for (int l : regulators) {
      // a regulator that holds this node gives what it needs, so its own inlet lacks something too
      weighed &= layout.tip[l] != node;
    }
    if (weighed) {
      double before = emitterFlow[g];
      emitterFlow[g] = emitters.flow(g, pressureAt(g));
      balance[node] += before - emitterFlow[g];
      right[node] += before - emitterFlow[g];
      massResidual = Math.max(massResidual, cutOff[node] ? 0 : Math.abs(balance[node]));
    }
  }

  /** Notes that a link was shut or opened. */
  void stateChanged() {
    weighed = false;
    linearised = false;
    factored = false;
  }

  /**
   * Runs Newton's method from the present heads and flows with the factors of an earlier run, of
   * which only those are found anew that no longer fit.
   *
   * @return whether both laws are kept within the tolerances; if not, {@link #run} has to go on
   */
  boolean settle() {
    keepFactors();
    if (!factored) {
      return false;
    }
    double before = Double.POSITIVE_INFINITY;
    for (steps = 0; steps < MOST_SETTLING_STEPS; steps++) {
      if (!weighed) {
        findLosses(true);
        weigh();
      }
      weighed = lawsAreKept();
      if (weighed) {
        if (updateStates(true)) {
          stateChanged();
          return false;
        }
        return true;
      }
      double size = Math.max(massResidual, flowResidual);
      if (!(size < (1 - LEAST_PROGRESS) * before)) {
        return false;
      }
      before = size;
      factor.refactorChanged();
      factor.solve(right);
      moveHeadsAndFlows();
    }
    return false;
  }

  /** Finds losses and what links and nodes lack after heads and flows were moved. */
  void weighAnew() {
    findLosses(false);
    findConductances();
    weigh();
  }

  private void findConductances() {
    for (int l = 0; l < conductance.length; l++) {
      conductance[l] = 1 / slope[l];
    }
    if (!allOpen()) {
      for (int l = 0; l < conductance.length; l++) {
        conductance[l] = state[l] == OPEN ? conductance[l] : 0;
      }
    }
  }

  /**
   * Finds the loss of every link from the straight line at the flow where it was last worked out,
   * or works it out anew where the bend of its law could matter.
   *
   * @param withFactors whether the kept matrix is to follow
   */
  private void findLosses(boolean withFactors) {
    for (int l = 0; l < flow.length; l++) {
      double q = flow[l];
      double moved = q - knownFlow[l];
      double bent = MOST_BEND * moved * moved;
      // not a number where the law is to be found anew
      if (bent <= STRAIGHT_TOLERANCE * Math.abs(q)) {
        loss[l] = knownLoss[l] + slope[l] * moved;
      } else if (state[l] == OPEN) {
        laws.evaluate(l, flow, loss, slope);
        knownFlow[l] = laws.isPipe(l) ? q : Double.NaN;
        knownLoss[l] = loss[l];
        if (withFactors) {
          follow(l);
        }
      }
    }
  }

  /** Lets the kept matrix follow the slope of a link's law, where it is worth it. */
  private void follow(int l) {
    double more = 1 / slope[l] - conductance[l];
    if (Math.abs(more) > LEAST_CHANGE * conductance[l]) {
      factor.change(layout.tail[l], layout.tip[l], layout.place[l], more);
      conductance[l] += more;
    }
  }

  /**
   * Finds what every link and node lacks at the present heads and flows: both residuals, and the
   * right side of the linear system.
   */
  private void weigh() {
    int[] tail = layout.tail;
    int[] tip = layout.tip;
    for (int i = 0; i < balance.length; i++) {
      balance[i] = -demand[i];
      right[i] = -demand[i];
    }
    double worst = 0;
    double shift = 0;
    for (int l = 0; l < tail.length; l++) {
      if (state[l] != OPEN) {
        push[l] = 0;
        continue;
      }
      int i = tail[l];
      int j = tip[l];
      double error = head[i] - head[j] - loss[l];
      double c = conductance[l];
      double extra = c * error;
      worst = larger(worst, Math.abs(error));
      // in a short wide pipe the rounding of the heads alone moves the flow; that is no error
      shift = larger(shift, Math.abs(extra) - c * HEAD_ROUNDING * Math.abs(head[i]));
      push[l] = extra;
      double q = flow[l];
      balance[i] -= q;
      balance[j] += q;
      right[i] -= q + extra;
      right[j] += q + extra;
    }
    for (int g = 0; g < emitterNode.length; g++) {
      int node = emitterNode[g];
      double q = emitters.flow(g, head[node] - elevation[node]);
      emitterFlow[g] = q;
      balance[node] -= q;
      right[node] -= q;
    }
    for (int l : regulators) {
      if (state[l] == REGULATING) {
        worst = larger(worst, Math.abs(regulate(l)));
      }
    }
    double unbalanced = 0;
    for (int i = 0; i < layout.unknowns; i++) {
      if (cutOff[i]) {
        right[i] = 0;
      } else {
        unbalanced = larger(unbalanced, Math.abs(balance[i]));
      }
    }
    energyResidual = worst;
    massResidual = unbalanced;
    flowResidual = shift;
  }

  /** The larger of two numbers; what is no number counts as endless. */
  private static double larger(double most, double x) {
    if (x <= most) {
      return most;
    }
    return x > most ? x : Double.POSITIVE_INFINITY;
  }

  private double pressureAt(int group) {
    int node = emitterNode[group];
    return head[node] - elevation[node];
  }

  /** Builds the linear system for the losses and outflows as they were last found. */
  private void assemble() {
    factor.clear(LEAST_CONDUCTANCE);
    double[] diagonal = factor.diagonal;
    double[] lower = factor.lower;
    for (int l = 0; l < conductance.length; l++) {
      double c = conductance[l];
      diagonal[layout.tail[l]] += c;
      diagonal[layout.tip[l]] += c;
      lower[layout.place[l]] -= c;
    }
    for (int g = 0; g < emitterNode.length; g++) {
      int node = emitterNode[g];
      double at = linearisedAt[g];
      double pressure = head[node] - elevation[node];
      if (at == pressure) {
        diagonal[node] += emitters.slope(g, at, emitterFlow[g]);
      } else {
        double q = emitters.flow(g, at);
        double s = emitters.slope(g, at, q);
        diagonal[node] += s;
        right[node] -= q + s * (pressure - at) - emitterFlow[g];
      }
    }
    for (int l : regulators) {
      if (state[l] == REGULATING) {
        diagonal[layout.tip[l]] += HOLDING_CONDUCTANCE;
      }
    }
    for (int i = 0; i < layout.unknowns; i++) {
      if (cutOff[i]) {
        diagonal[i] += 1;
        right[i] = 0;
      }
    }
  }

  /** Lets a regulator carry what its outlet needs; gives the error of the head it holds, in m. */
  private double regulate(int l) {
    int i = layout.tail[l];
    int j = layout.tip[l];
    flow[l] = -balance[j];
    balance[i] -= flow[l];
    right[i] -= flow[l];
    balance[j] = 0;
    double error = setHead[l] - head[j];
    right[j] = HOLDING_CONDUCTANCE * error;
    return error;
  }

  /** Takes a step along the solved change of heads. */
  private void advance() {
    moveHeadsAndFlows();
    for (int g = 0; g < linearisedAt.length; g++) {
      double pressure = pressureAt(g);
      double before = linearisedAt[g];
      // an emitter near zero pressure bends sharply: come down to it by parts
      linearisedAt[g] = before > 1e-3 ? Math.max(pressure, 0.1 * before) : pressure;
    }
  }

  private void lineariseEmitters() {
    for (int g = 0; g < linearisedAt.length; g++) {
      linearisedAt[g] = pressureAt(g);
    }
  }

  /** Moves heads and flows by the solved change. */
  void moveHeadsAndFlows() {
    for (int i = 0; i < layout.unknowns; i++) {
      head[i] += right[i];
    }
    for (int i = layout.unknowns; i < right.length; i++) {
      right[i] = 0;
    }
    int[] tail = layout.tail;
    int[] tip = layout.tip;
    for (int l = 0; l < tail.length; l++) {
      flow[l] += push[l] + conductance[l] * (right[tail[l]] - right[tip[l]]);
    }
  }

  /**
   * Sets check valves, pumps and regulators as the heads and flows demand; true if one changed.
   *
   * @param kept whether the heads and flows keep both laws
   */
  private boolean updateStates(boolean kept) {
    boolean changed = false;
    for (int l : stateful) {
      byte before = state[l];
      double drive = head[layout.tail[l]] + laws.headAdded(l) - head[layout.tip[l]];
      if (before == OPEN && flow[l] < -STATE_FLOW_TOLERANCE) {
        state[l] = HELD_SHUT;
        flow[l] = 0;
      } else if (before == OPEN && kept && drive < -LIFT_TOLERANCE && laws.startsAboveNoFlow(l)) {
        state[l] = HELD_SHUT;
        flow[l] = 0;
        stopped[l] = true;
        anyStopped = true;
      } else if (before == HELD_SHUT && drive > STATE_HEAD_TOLERANCE && !stopped[l]) {
        state[l] = OPEN;
        laws.startLosing(l, drive - laws.headAdded(l), flow, loss, slope);
      }
      changed |= state[l] != before;
    }
    for (int l : regulators) {
      byte before = state[l];
      if (before != SHUT) {
        state[l] = regulatorState(l);
        if (state[l] == HELD_SHUT) {
          flow[l] = 0;
        }
        changed |= state[l] != before;
      }
    }
    if (changed) {
      findCutOff();
    }
    return changed;
  }

  private byte regulatorState(int l) {
    double upstream = head[layout.tail[l]];
    double downstream = head[layout.tip[l]];
    double set = setHead[l];
    double tolerance = STATE_HEAD_TOLERANCE;
    switch (state[l]) {
      case REGULATING -> {
        if (flow[l] < -STATE_FLOW_TOLERANCE) {
          return HELD_SHUT;
        }
        laws.evaluate(l, flow, loss, slope);
        return upstream - loss[l] < set - tolerance ? OPEN : REGULATING;
      }
      case OPEN -> {
        if (flow[l] < -STATE_FLOW_TOLERANCE) {
          return HELD_SHUT;
        }
        return downstream > set + tolerance ? REGULATING : OPEN;
      }
      default -> {
        if (cutOff[layout.tail[l]]) {
          return HELD_SHUT;
        }
        if (upstream > set + tolerance && downstream < set - tolerance) {
          return REGULATING;
        }
        if (upstream < set && upstream > downstream + tolerance) {
          laws.startLosing(l, upstream - downstream, flow, loss, slope);
          return OPEN;
        }
        return HELD_SHUT;
      }
    }
  }

  /**
   * Marks the nodes that nothing open joins to a source and lets them drain to their lowest outlet.
   */
  void findCutOff() {
    int n = layout.heads;
    if (allOpen()) {
      // every part has a way to a source, or the network would have been refused
      if (anyCutOff) {
        Arrays.fill(cutOff, false);
        anyCutOff = false;
      }
      return;
    }
    boolean[] fed = new boolean[n];
    int[] open = new int[n];
    int end = 0;
    for (int i = layout.unknowns; i < n; i++) {
      fed[i] = true;
      open[end++] = i;
    }
    flood(fed, open, 0, end, null);
    boolean more = true;
    while (more) {
      more = false;
      for (int l : regulators) {
        int tip = layout.tip[l];
        if (state[l] == REGULATING && fed[layout.tail[l]] && !fed[tip]) {
          fed[tip] = true;
          open[0] = tip;
          flood(fed, open, 0, 1, null);
          more = true;
        }
      }
    }
    for (int l : regulators) {
      // one that no water comes to would feed itself round a loop
      if (state[l] == REGULATING && !fed[layout.tail[l]]) {
        state[l] = HELD_SHUT;
        flow[l] = 0;
      }
    }
    boolean[] seen = fed.clone();
    boolean[] outlet = new boolean[n];
    for (int node : emitterNode) {
      outlet[node] = true;
    }
    anyCutOff = false;
    for (int i = 0; i < layout.unknowns; i++) {
      cutOff[i] = !fed[i];
      anyCutOff |= cutOff[i];
      if (!seen[i]) {
        seen[i] = true;
        open[0] = i;
        int size = flood(seen, open, 0, 1, fed);
        drain(open, size, outlet);
      }
    }
  }

  private boolean allOpen() {
    for (byte s : state) {
      if (s != OPEN) {
        return false;
      }
    }
    return true;
  }

  private void drain(int[] part, int size, boolean[] outlet) {
    double lowest = Double.POSITIVE_INFINITY;
    double lowestOutlet = Double.POSITIVE_INFINITY;
    for (int at = 0; at < size; at++) {
      int node = part[at];
      lowest = Math.min(lowest, elevation[node]);
      if (outlet[node] || demand[node] > 0) {
        lowestOutlet = Math.min(lowestOutlet, elevation[node]);
      }
    }
    double level = Double.isInfinite(lowestOutlet) ? lowest : lowestOutlet;
    for (int at = 0; at < size; at++) {
      head[part[at]] = level;
    }
  }

  private int flood(boolean[] seen, int[] open, int begin, int end, boolean[] barred) {
    int last = end;
    for (int at = begin; at < last; at++) {
      int node = open[at];
      for (int e = layout.adjacency.start(node); e < layout.adjacency.start(node + 1); e++) {
        int other = layout.adjacency.node(e);
        boolean free = barred == null || !barred[other];
        if (state[layout.adjacency.link(e)] == OPEN && !seen[other] && free) {
          seen[other] = true;
          open[last++] = other;
        }
      }
    }
    return last;
  }

  /** Link where the loss differs most from the difference of heads. */
  int worstLink() {
    int worst = 0;
    double most = -1;
    for (int l = 0; l < flow.length; l++) {
      double error =
          state[l] == OPEN ? Math.abs(head[layout.tail[l]] - head[layout.tip[l]] - loss[l]) : 0;
      if (error > most) {
        most = error;
        worst = l;
      }
    }
    return worst;
  }

  /** Node where inflow and outflow differ most. */
  int worstNode() {
    int worst = 0;
    for (int i = 0; i < layout.unknowns; i++) {
      if (!cutOff[i] && Math.abs(balance[i]) > Math.abs(balance[worst])) {
        worst = i;
      }
    }
    return worst;
  }
}
