package org.grovewright.hydraulics;

import java.util.List;

/**
 * A network before and after a fault.
 *
 * @param fault what happened
 * @param before the sound network's solution
 * @param after the faulty network's solution
 */
public record WhatIf(Fault fault, Solution before, Solution after) {
  /**
   * Solves a network with and without a fault.
   *
   * @throws HydraulicException if either cannot be solved
   */
  public static WhatIf of(Network network, Fault fault) {
    return new WhatIf(fault, Solver.solve(network), Solver.solve(fault.applyTo(network)));
  }

  /**
   * One group of emitters before and after.
   *
   * @param groupId the group
   * @param before flow of one emitter before, in m3/s
   * @param after flow of one emitter after, in m3/s
   */
  public record Change(String groupId, double before, double after) {
    /** What is left of the flow, as a share; 1 where there was none before. */
    public double share() {
      return before == 0 ? 1 : after / before;
    }
  }

  /** Every group of emitters of the sound network, in its order. */
  public List<Change> changes() {
    return before.network().emitters().stream()
        .map(
            group ->
                new Change(
                    group.id(), before.emitterFlow(group.id()), after.emitterFlow(group.id())))
        .toList();
  }
}
