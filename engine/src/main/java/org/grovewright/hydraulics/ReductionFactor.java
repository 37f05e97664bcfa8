package org.grovewright.hydraulics;

/** Christiansen's factor: friction in a pipe with many equal outlets over that of a plain pipe. */
public final class ReductionFactor {
  private ReductionFactor() {}

  /**
   * The factor F for equal outlets at equal spacing, the first one a full spacing from the inlet:
   * {@code F = 1/(m+1) + 1/(2N) + sqrt(m-1)/(6 N^2)} (Christiansen, 1942, from memory).
   *
   * @param outlets number of outlets N, at least 1
   * @param m exponent of the flow in the friction formula, e.g. 1.852
   */
  public static double christiansen(int outlets, double m) {
    double n = outlets;
    return 1 / (m + 1) + 1 / (2 * n) + Math.sqrt(m - 1) / (6 * n * n);
  }

  /** The exact sum that Christiansen's formula approximates: {@code N^-(m+1) sum of i^m}. */
  public static double exact(int outlets, double m) {
    double sum = 0;
    for (int i = 1; i <= outlets; i++) {
      sum += Math.pow((double) i / outlets, m);
    }
    return sum / outlets;
  }
}
