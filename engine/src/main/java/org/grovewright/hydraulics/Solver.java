package org.grovewright.hydraulics;

/** Finds the heads and flows of a network. */
public final class Solver {
  /** Largest imbalance of flow at a node that a solution may have, in m3/s. */
  public static final double MASS_TOLERANCE = 1e-10;

  /** Largest error of head along a link that a solution may have, in m. */
  public static final double ENERGY_TOLERANCE = 1e-7;

  private Solver() {}

  /**
   * Checks and solves a network.
   *
   * @throws HydraulicException if the network is wrong or has no solution; names every problem
   */
  public static Solution solve(Network network) {
    return prepare(network).solve();
  }

  /**
   * Checks a network and works out all that does not depend on its figures.
   *
   * @throws HydraulicException if the network is wrong; names every problem
   */
  public static PreparedNetwork prepare(Network network) {
    if (!network.problems().isEmpty()) {
      throw new HydraulicException(network.problems());
    }
    return new PreparedNetwork(network);
  }
}
