package org.grovewright.hydraulics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Ranks where a leak, blockage or clogging most likely is, from field readings.
 *
 * <p>Each suspicion has one size (of the hole, of the opening left, of the flow left). The size
 * that fits the readings best is found for each, and the suspicions are ranked by the misfit that
 * remains: the sum of squared differences in standard deviations. With one free size each and equal
 * odds beforehand, that is the order of their likelihood.
 */
public final class FaultSearch {
  /** What may be wrong. */
  public enum Kind {
    /** A hole beside a node; its size is the diameter in m. */
    LEAK,
    /** A pipe partly blocked; its size is the share of the bore's area that is open. */
    BLOCKAGE,
    /** Emitters that give less; its size is the share of the flow that is left. */
    CLOGGING
  }

  /**
   * A suspicion.
   *
   * @param element name of the part of the network that one would go and look at, e.g. a lateral
   * @param kind what may be wrong
   * @param parts id of the node (leak) or pipe (blockage), or ids of the groups (clogging)
   */
  public record Suspicion(String element, Kind kind, List<String> parts) {
    /** Copies the ids. */
    public Suspicion {
      parts = List.copyOf(parts);
    }
  }

  /**
   * A suspicion with the size that fits best.
   *
   * @param suspicion what and where
   * @param size the size that fits best, in the terms of its kind
   * @param misfit sum of squared differences that remains, in standard deviations
   */
  public record Finding(Suspicion suspicion, double size, double misfit) {}

  private static final double SHARP_EDGE = 0.6;
  private static final double UNIT_HOLE = 1e-3;
  private static final int COARSE = 6;
  private static final int FINE = 5;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private final Network network;
  private final List<Reading> readings;
  private final PreparedNetwork prepared;
  private final Solution sound;

  private FaultSearch(Network network, List<Suspicion> suspicions, List<Reading> readings) {
    Network.Builder builder = network.toBuilder();
    for (String node : leakNodes(suspicions)) {
      EmitterCurve hole = EmitterCurve.orifice(UNIT_HOLE, SHARP_EDGE);
      builder.emitter(leakId(node), node, hole, 1);
    }
    this.network = builder.build();
    this.readings = readings;
    prepared = Solver.prepare(this.network);
    for (String node : leakNodes(suspicions)) {
      prepared.setEmitterFactor(leakId(node), 0);
    }
    sound = prepared.solve();
  }

  private static List<String> leakNodes(List<Suspicion> suspicions) {
    return suspicions.stream()
        .filter(suspicion -> suspicion.kind() == Kind.LEAK)
        .flatMap(suspicion -> suspicion.parts().stream())
        .distinct()
        .toList();
  }

  private static String leakId(String node) {
    return "suspected leak at " + node;
  }

  /**
   * Ranks the elements, likeliest first, each with the suspicion of it that fits best.
   *
   * @param network the sound network, calibrated as well as may be
   * @param suspicions what to consider
   * @param readings what was read
   */
  public static List<Finding> rank(
      Network network, List<Suspicion> suspicions, List<Reading> readings) {
    FaultSearch search = new FaultSearch(network, suspicions, readings);
    Map<String, Finding> best = new HashMap<>();
    for (Suspicion suspicion : suspicions) {
      best.merge(
          suspicion.element(), search.fit(suspicion), (a, b) -> a.misfit() <= b.misfit() ? a : b);
    }
    List<Finding> findings = new ArrayList<>(best.values());
    findings.sort(
        Comparator.comparingDouble(Finding::misfit)
            .thenComparing(finding -> finding.suspicion().element()));
    return findings;
  }

  /** Finds the best size on a logarithmic scale, first coarsely, then by the golden section. */
  private Finding fit(Suspicion suspicion) {
    double low = Math.log(smallest(suspicion.kind()));
    double high = Math.log(largest(suspicion.kind()));
    double step = (high - low) / (COARSE - 1);
    double bestAt = low;
    double best = Double.POSITIVE_INFINITY;
    for (int i = 0; i < COARSE; i++) {
      double misfit = misfit(suspicion, low + i * step);
      if (misfit < best) {
        best = misfit;
        bestAt = low + i * step;
      }
    }
    double a = Math.max(low, bestAt - step);
    double b = Math.min(high, bestAt + step);
    double left = b - GOLDEN * (b - a);
    double right = a + GOLDEN * (b - a);
    double atLeft = misfit(suspicion, left);
    double atRight = misfit(suspicion, right);
    for (int i = 0; i < FINE; i++) {
      if (atLeft < atRight) {
        b = right;
        right = left;
        atRight = atLeft;
        left = b - GOLDEN * (b - a);
        atLeft = misfit(suspicion, left);
      } else {
        a = left;
        left = right;
        atLeft = atRight;
        right = a + GOLDEN * (b - a);
        atRight = misfit(suspicion, right);
      }
    }
    double fine = Math.min(atLeft, atRight);
    if (fine < best) {
      best = fine;
      bestAt = atLeft < atRight ? left : right;
    }
    apply(suspicion, Double.NaN);
    return new Finding(suspicion, Math.exp(bestAt), best);
  }

  private static double smallest(Kind kind) {
    return switch (kind) {
      case LEAK -> 0.5e-3;
      case BLOCKAGE -> 0.003;
      case CLOGGING -> 0.02;
    };
  }

  private static double largest(Kind kind) {
    return switch (kind) {
      case LEAK -> 10e-3;
      case BLOCKAGE, CLOGGING -> 1;
    };
  }

  private double misfit(Suspicion suspicion, double logSize) {
    apply(suspicion, Math.exp(logSize));
    Solution solution = prepared.resolveFrom(sound);
    double sum = 0;
    for (Reading reading : readings) {
      double residual = reading.residual(solution);
      sum += residual * residual;
    }
    return sum;
  }

  /** Puts the fault into the network, or takes it out for a size that is not a number. */
  private void apply(Suspicion suspicion, double size) {
    boolean none = Double.isNaN(size);
    for (String part : suspicion.parts()) {
      switch (suspicion.kind()) {
        case LEAK -> {
          double areas = none ? 0 : size * size / (UNIT_HOLE * UNIT_HOLE);
          prepared.setEmitterFactor(leakId(part), areas);
        }
        case CLOGGING -> prepared.setEmitterFactor(part, none ? 1 : size);
        case BLOCKAGE -> {
          Link.Pipe pipe = (Link.Pipe) network.links().get(network.linkIndex(part));
          prepared.setPipe(none ? pipe : pipe.withMinorLoss(blockageLoss(size)));
        }
      }
    }
  }

  /**
   * Minor-loss K of a sharp-edged opening in a pipe: the jet contracts to 0.6 of the opening and
   * then widens with Borda and Carnot's loss, {@code (1 / (0.6 s) - 1)^2}; 0 for an open bore.
   *
   * @param open open share of the bore's area, above 0
   */
  static double blockageLoss(double open) {
    double contraction = SHARP_EDGE + (1 - SHARP_EDGE) * open * open * open;
    double widening = 1 / (contraction * open) - 1;
    return widening * widening;
  }
}
