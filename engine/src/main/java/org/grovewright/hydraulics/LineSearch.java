package org.grovewright.hydraulics;

/**
 * Shortens the steps of Newton's method where full ones go to and fro across a sharp bend, such as
 * that of an emitter that opens at a pressure.
 *
 * <p>A step is halved until the sum of the squares of all that the links and nodes lack has grown
 * smaller. Some part of a Newton step always does that where the laws are smooth, so that the sum
 * falls from step to step and the method cannot circle (Armijo's rule, from memory).
 */
final class LineSearch {
  /** Share of the fall that the straight line promises which is asked for. */
  private static final double LEAST_FALL = 1e-4;

  /** The shortest part of a step that is tried. */
  private static final double SHORTEST = 1e-6;

  /** The same after many steps, to get away from a corner where no part of a step helps. */
  private static final double SHORTEST_LATE = 1e-2;

  private static final int LATE = 60;

  private final GradientMethod method;
  private final double[] headBefore;
  private final double[] flowBefore;
  private final double[] headChange;
  private final double[] flowChange;

  /** Head in m that counts as much as a flow of 1 m3/s. */
  private final double metresPerFlow;

  private int steps;

  /** A search that begins at the present heads and flows. */
  LineSearch(GradientMethod method) {
    this.method = method;
    headBefore = new double[method.head.length];
    flowBefore = new double[method.flow.length];
    headChange = new double[method.head.length];
    flowChange = new double[method.flow.length];
    metresPerFlow = largest(method.head) / Math.max(largest(method.flow), 1e-9);
  }

  private static double largest(double[] values) {
    double most = 0;
    for (double v : values) {
      most = Math.max(most, Math.abs(v));
    }
    return most;
  }

  /** Takes the solved step, or the part of it that brings heads and flows nearer to both laws. */
  void advance() {
    double before = lack();
    System.arraycopy(method.head, 0, headBefore, 0, headBefore.length);
    System.arraycopy(method.flow, 0, flowBefore, 0, flowBefore.length);
    method.moveHeadsAndFlows();
    for (int i = 0; i < headChange.length; i++) {
      headChange[i] = method.head[i] - headBefore[i];
    }
    for (int l = 0; l < flowChange.length; l++) {
      flowChange[l] = method.flow[l] - flowBefore[l];
    }
    double shortest = steps++ < LATE ? SHORTEST : SHORTEST_LATE;
    double share = 1;
    while (share > shortest && !(lackNow() <= before * (1 - LEAST_FALL * share))) {
      share /= 2;
      move(share);
    }
  }

  private void move(double share) {
    for (int i = 0; i < headChange.length; i++) {
      method.head[i] = headBefore[i] + share * headChange[i];
    }
    for (int l = 0; l < flowChange.length; l++) {
      method.flow[l] = flowBefore[l] + share * flowChange[l];
    }
  }

  private double lackNow() {
    method.weighAnew();
    return lack();
  }

  /** What links and nodes lack, in m2, at the heads and flows that were weighed last. */
  private double lack() {
    Layout layout = method.layout;
    double heads = 0;
    for (int l = 0; l < method.flow.length; l++) {
      double error = 0;
      if (method.state[l] == GradientMethod.OPEN) {
        error = method.head[layout.tail[l]] - method.head[layout.tip[l]] - method.loss[l];
      } else if (method.state[l] == GradientMethod.REGULATING) {
        error = method.setHead[l] - method.head[layout.tip[l]];
      }
      heads += error * error;
    }
    double flows = 0;
    for (int i = 0; i < layout.unknowns; i++) {
      double error = method.cutOff[i] ? 0 : method.balance[i];
      flows += error * error;
    }
    return heads + metresPerFlow * metresPerFlow * flows;
  }
}
