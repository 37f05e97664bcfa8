package org.grovewright.hydraulics;

import java.util.Arrays;

/** Measures of how evenly emitters give water; each takes flows (or depths) of any one unit. */
public final class Uniformity {
  private Uniformity() {}

  /**
   * Low-quarter distribution uniformity: mean of the lowest quarter over the mean of all (Merriam
   * and Keller, 1978, from memory). Where the number of flows is no multiple of four, the last of
   * the lowest quarter counts in part.
   *
   * @param flows at least one flow, not all zero
   * @return a share from 0 to 1
   */
  public static double lowQuarter(double[] flows) {
    double[] sorted = flows.clone();
    Arrays.sort(sorted);
    double quarter = flows.length / 4.0;
    int whole = (int) Math.floor(quarter);
    double sum = 0;
    for (int i = 0; i < whole; i++) {
      sum += sorted[i];
    }
    if (whole < sorted.length) {
      sum += (quarter - whole) * sorted[whole];
    }
    return sum / quarter / requireMean(flows);
  }

  /**
   * Design emission uniformity {@code EU = (1 - 1.27 CV / sqrt(n)) qmin / qavg} (Keller and
   * Karmeli, 1974, from memory).
   *
   * @param manufacturingCv coefficient of variation of new emitters, as a share
   * @param emittersPerPlant emitters that serve one plant, at least 1
   * @param designFlows flows of the emitters as the hydraulics alone makes them
   * @return a share, at most 1
   */
  public static double emissionUniformity(
      double manufacturingCv, double emittersPerPlant, double[] designFlows) {
    double least = Double.POSITIVE_INFINITY;
    for (double flow : designFlows) {
      least = Math.min(least, flow);
    }
    double spread = 1 - 1.27 * manufacturingCv / Math.sqrt(emittersPerPlant);
    return spread * least / requireMean(designFlows);
  }

  /**
   * Statistical uniformity {@code 1 - V}, V being the coefficient of variation of the flows (Bralts
   * and others, 1981, from memory).
   *
   * @return a share, at most 1
   */
  public static double statistical(double[] flows) {
    return 1 - coefficientOfVariation(flows);
  }

  /**
   * Statistical uniformity from independent causes, {@code 1 - sqrt(V1^2 + V2^2 + ...)}, e.g. of
   * hydraulics, manufacture and clogging.
   */
  public static double statisticalFromCauses(double... coefficients) {
    double sum = 0;
    for (double v : coefficients) {
      sum += v * v;
    }
    return 1 - Math.sqrt(sum);
  }

  /**
   * Coefficient of uniformity: one less the mean deviation over the mean (Christiansen, 1942, from
   * memory).
   *
   * @return a share, at most 1
   */
  public static double christiansen(double[] flows) {
    double mean = requireMean(flows);
    double deviation = 0;
    for (double flow : flows) {
      deviation += Math.abs(flow - mean);
    }
    return 1 - deviation / (flows.length * mean);
  }

  /** Sample standard deviation over the mean; 0 for a single flow. */
  public static double coefficientOfVariation(double[] flows) {
    double mean = requireMean(flows);
    double squares = 0;
    for (double flow : flows) {
      squares += (flow - mean) * (flow - mean);
    }
    return flows.length == 1 ? 0 : Math.sqrt(squares / (flows.length - 1)) / mean;
  }

  private static double requireMean(double[] flows) {
    double sum = 0;
    for (double flow : flows) {
      if (!(flow >= 0)) {
        throw new IllegalArgumentException("a flow must be zero or more, but one is " + flow);
      }
      sum += flow;
    }
    if (!(sum > 0) || Double.isInfinite(sum)) {
      throw new IllegalArgumentException("uniformity needs at least one flow above zero");
    }
    return sum / flows.length;
  }
}
