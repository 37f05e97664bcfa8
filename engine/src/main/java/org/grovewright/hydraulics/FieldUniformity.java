package org.grovewright.hydraulics;

import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * Uniformity to expect in the field, by drawing the emitters' differences many times and solving
 * the network for each draw.
 *
 * <p>Emitters may be of unlike ratings: a plant with a 4 L/h emitter is meant to get twice as much
 * as one with 2 L/h. Each flow is therefore taken relative to what its emitter is made for, {@code
 * q / qn}, as in Keller and Karmeli's emission uniformity (1974, from memory), whose flows are of
 * one rating; qn is what the emitter's own curve gives at the mean pressure of all emitters.
 *
 * @param draws number of draws
 * @param meanFlow mean flow of one emitter over all draws, in m3/s
 * @param coefficientOfVariation root of the mean square of the draws' coefficients of variation of
 *     the relative flows
 * @param meanLowQuarter mean of the draws' low-quarter uniformities
 * @param lowLowQuarter low-quarter uniformity that 5 % of the draws stay below
 * @param highLowQuarter low-quarter uniformity that 5 % of the draws exceed
 */
public record FieldUniformity(
    int draws,
    double meanFlow,
    double coefficientOfVariation,
    double meanLowQuarter,
    double lowLowQuarter,
    double highLowQuarter) {

  /**
   * Draws and solves. Each group of emitters is drawn as one; give emitters groups of their own to
   * have them differ.
   *
   * @param network the network
   * @param variation how emitters differ
   * @param draws number of draws, at least 1
   * @param seed start of the random numbers; the same seed gives the same result
   * @throws HydraulicException if the network cannot be solved
   * @throws IllegalArgumentException if an emitter gives nothing at the mean pressure of all
   */
  public static FieldUniformity simulate(
      Network network, EmitterVariation variation, int draws, long seed) {
    PreparedNetwork prepared = Solver.prepare(network);
    Solution asDesigned = prepared.solve();
    double[] nominal = nominal(asDesigned);
    Random random = new Random(seed);
    double[] lowQuarters = new double[draws];
    double flowSum = 0;
    double squares = 0;
    for (int draw = 0; draw < draws; draw++) {
      for (int g = 0; g < network.emitters().size(); g++) {
        prepared.setEmitterFactor(g, variation.draw(random));
      }
      // every draw starts alike, so that none depends on the one before
      double[] flows = prepared.resolveFrom(asDesigned).emitterFlows();
      flowSum += Arrays.stream(flows).sum() / flows.length;
      for (int g = 0; g < flows.length; g++) {
        flows[g] /= nominal[g];
      }
      lowQuarters[draw] = Uniformity.lowQuarter(flows);
      double cv = Uniformity.coefficientOfVariation(flows);
      squares += cv * cv;
    }
    double mean = Arrays.stream(lowQuarters).sum() / draws;
    Arrays.sort(lowQuarters);
    return new FieldUniformity(
        draws,
        flowSum / draws,
        Math.sqrt(squares / draws),
        mean,
        lowQuarters[(int) Math.floor(0.05 * (draws - 1))],
        lowQuarters[(int) Math.ceil(0.95 * (draws - 1))]);
  }

  /** Flow of one emitter of each group at the mean pressure of all, in m3/s. */
  private static double[] nominal(Solution solution) {
    List<EmitterGroup> groups = solution.network().emitters();
    double head =
        groups.stream().mapToDouble(g -> solution.pressure(g.nodeId())).average().orElse(0);
    double[] nominal = groups.stream().mapToDouble(g -> g.curve().flow(head)).toArray();
    for (int g = 0; g < nominal.length; g++) {
      if (!(nominal[g] > 0)) {
        throw new IllegalArgumentException(
            "emitter " + groups.get(g).id() + " gives nothing at the mean pressure of all");
      }
    }
    return nominal;
  }
}
