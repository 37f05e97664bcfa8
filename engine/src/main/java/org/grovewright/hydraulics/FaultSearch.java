package org.grovewright.hydraulics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

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
    /** A hole in the middle of a pipe; its size is the diameter in m. */
    LEAK,
    /** A pipe partly blocked; its size is the share of the bore's area that is open. */
    BLOCKAGE,
    /** Emitters that give less; its size is the share of the flow that is left. */
    CLOGGING
  }

  /**
   * A suspicion.
   *
   * @param element name of the place that one would go and look at, e.g. a stretch of a lateral
   *     between two plants
   * @param kind what may be wrong
   * @param parts id of the pipe (leak, blockage), or ids of the groups of emitters (clogging)
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
   * @param gain by how much it explains the readings better than no fault at all
   */
  public record Finding(Suspicion suspicion, double size, double misfit, double gain) {}

  /** So many places, the likeliest, are ranked exactly; the rest is only known to be worse. */
  public static final int RANKED = 10;

  private static final double SHARP_EDGE = 0.6;
  private static final double UNIT_HOLE = 1e-3;
  private static final int COARSE = 5;
  private static final int FINE = 5;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  /** A suspicion that fits so much worse than the ranked ones at a coarse size is given up. */
  private static final double HOPELESS = 40;

  private final List<Ready> runs = new ArrayList<>();
  private final Map<String, Double> best = new HashMap<>();

  /** A run made ready: its network with a hole of no size in every suspected pipe. */
  private static final class Ready {
    private final FieldRun run;
    private final Network network;
    private final PreparedNetwork prepared;
    private final Solution sound;
    private final double soundMisfit;

    Ready(FieldRun run, Network network, Set<String> holes) {
      this.run = run;
      this.network = network;
      prepared = Solver.prepare(network);
      for (String pipe : holes) {
        prepared.setEmitterFactor(leakId(pipe), 0);
      }
      for (String pipe : run.closed()) {
        prepared.setClosed(pipe, true);
      }
      sound = prepared.solve();
      soundMisfit = run.misfit(sound);
    }

    boolean has(Suspicion suspicion) {
      String part = suspicion.parts().get(0);
      return suspicion.kind() == Kind.CLOGGING ? network.hasEmitter(part) : network.hasLink(part);
    }
  }

  private FaultSearch(List<FieldRun> fieldRuns, List<Suspicion> suspicions) {
    Map<Network, Network> holed = new IdentityHashMap<>();
    Map<Network, Set<String>> holes = new IdentityHashMap<>();
    for (FieldRun run : fieldRuns) {
      Set<String> own =
          holes.computeIfAbsent(run.network(), network -> leakPipes(network, suspicions));
      Network network = holed.computeIfAbsent(run.network(), n -> withHoles(n, own));
      runs.add(new Ready(run, network, own));
    }
  }

  private static Set<String> leakPipes(Network network, List<Suspicion> suspicions) {
    Set<String> pipes = new LinkedHashSet<>();
    for (Suspicion suspicion : suspicions) {
      if (suspicion.kind() == Kind.LEAK) {
        suspicion.parts().stream().filter(network::hasLink).forEach(pipes::add);
      }
    }
    return pipes;
  }

  private static Network withHoles(Network network, Set<String> pipes) {
    Network.Builder builder = network.toBuilder();
    EmitterCurve hole = EmitterCurve.orifice(UNIT_HOLE, SHARP_EDGE);
    for (String pipe : pipes) {
      Fault.Hole.part(network, builder, pipe, 0.5, leakId(pipe));
      builder.emitter(leakId(pipe), leakId(pipe), hole, 1);
    }
    return builder.build();
  }

  private static String leakId(String pipe) {
    return "suspected leak in " + pipe;
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
    return rank(List.of(FieldRun.of(network, readings)), suspicions);
  }

  /**
   * Ranks the elements, likeliest first, each with the suspicion of it that fits best; the first
   * {@link #RANKED} are in order.
   *
   * @param runs what was read while sound networks ran; a suspicion bears on every run whose
   *     network has its parts
   * @param suspicions what to consider
   */
  public static List<Finding> rank(List<FieldRun> runs, List<Suspicion> suspicions) {
    FaultSearch search = new FaultSearch(runs, suspicions);
    Map<String, Finding> best = new HashMap<>();
    for (Suspicion suspicion : suspicions) {
      Finding finding = search.fit(suspicion);
      best.merge(suspicion.element(), finding, (a, b) -> a.misfit() <= b.misfit() ? a : b);
      search.best.merge(suspicion.element(), finding.misfit(), Math::min);
    }
    List<Finding> findings = new ArrayList<>(best.values());
    findings.sort(
        Comparator.comparingDouble(Finding::misfit)
            .thenComparing(finding -> finding.suspicion().element()));
    return findings;
  }

  /** Misfit beyond which a suspicion cannot come among the ranked ones any more. */
  private double limit() {
    if (best.size() < RANKED) {
      return Double.POSITIVE_INFINITY;
    }
    return best.values().stream()
        .mapToDouble(v -> v)
        .sorted()
        .skip(RANKED - 1L)
        .findFirst()
        .orElseThrow();
  }

  /** Finds the best size on a logarithmic scale, first coarsely, then by the golden section. */
  private Finding fit(Suspicion suspicion) {
    double limit = limit() + HOPELESS;
    double low = Math.log(smallest(suspicion.kind()));
    double high = Math.log(largest(suspicion.kind()));
    double step = (high - low) / (COARSE - 1);
    double bestAt = low;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < COARSE; i++) {
      double misfit = misfit(suspicion, low + i * step, limit);
      if (misfit < least) {
        least = misfit;
        bestAt = low + i * step;
      }
    }
    if (least < limit) {
      double a = Math.max(low, bestAt - step);
      double b = Math.min(high, bestAt + step);
      double left = b - GOLDEN * (b - a);
      double right = a + GOLDEN * (b - a);
      double atLeft = misfit(suspicion, left, Double.POSITIVE_INFINITY);
      double atRight = misfit(suspicion, right, Double.POSITIVE_INFINITY);
      for (int i = 0; i < FINE; i++) {
        if (atLeft < atRight) {
          b = right;
          right = left;
          atRight = atLeft;
          left = b - GOLDEN * (b - a);
          atLeft = misfit(suspicion, left, Double.POSITIVE_INFINITY);
        } else {
          a = left;
          left = right;
          atLeft = atRight;
          right = a + GOLDEN * (b - a);
          atRight = misfit(suspicion, right, Double.POSITIVE_INFINITY);
        }
      }
      double fine = Math.min(atLeft, atRight);
      if (fine < least) {
        least = fine;
        bestAt = atLeft < atRight ? left : right;
      }
    }
    double none = 0;
    for (Ready ready : runs) {
      none += ready.soundMisfit;
      if (ready.has(suspicion)) {
        apply(ready, suspicion, Double.NaN);
      }
    }
    return new Finding(suspicion, Math.exp(bestAt), least, none - least);
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

  /** The misfit with a fault of a size; may stop at a part of it once that is above a limit. */
  private double misfit(Suspicion suspicion, double logSize, double limit) {
    double sum = 0;
    for (Ready ready : runs) {
      if (ready.has(suspicion)) {
        apply(ready, suspicion, Math.exp(logSize));
        sum += ready.run.misfit(ready.prepared.resolveFrom(ready.sound));
      } else {
        sum += ready.soundMisfit;
      }
      if (sum > limit) {
        return sum;
      }
    }
    return sum;
  }

  /** Puts the fault into a network, or takes it out for a size that is not a number. */
  private static void apply(Ready ready, Suspicion suspicion, double size) {
    boolean none = Double.isNaN(size);
    for (String part : suspicion.parts()) {
      switch (suspicion.kind()) {
        case LEAK -> {
          double areas = none ? 0 : size * size / (UNIT_HOLE * UNIT_HOLE);
          ready.prepared.setEmitterFactor(leakId(part), areas);
        }
        case CLOGGING -> ready.prepared.setEmitterFactor(part, none ? 1 : size);
        case BLOCKAGE -> {
          Network network = ready.network;
          Link.Pipe pipe = (Link.Pipe) network.links().get(network.linkIndex(part));
          double loss = pipe.minorLoss() + (none ? 0 : blockageLoss(size));
          ready.prepared.setPipe(pipe.withMinorLoss(loss));
        }
      }
    }
  }

  /**
   * Minor-loss K of a sharp-edged opening in a pipe: the jet contracts to 0.6 of the opening and
   * then widens with Borda and Carnot's loss, {@code (1 / (0.6 s) - 1)^2}, from memory; 0 for an
   * open bore.
   *
   * @param open open share of the bore's area, above 0
   */
  static double blockageLoss(double open) {
    double contraction = SHARP_EDGE + (1 - SHARP_EDGE) * open * open * open;
    double widening = 1 / (contraction * open) - 1;
    return widening * widening;
  }
}
