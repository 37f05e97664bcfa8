package org.grovewright.hydraulics;

import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * What was read while one network ran, perhaps with some of its tubing folded shut for the purpose.
 *
 * <p>Folding a lateral shut behind one plant after another and reading the meter each time finds a
 * leak that no gauge shows: the meter falls by the leak's flow as soon as the fold is before it.
 *
 * @param network the network
 * @param closed ids of the pipes that were folded shut
 * @param readings what was read
 */
public record FieldRun(Network network, Set<String> closed, List<Reading> readings) {
  /** Copies the sets and lists. */
  public FieldRun {
    Objects.requireNonNull(network, "network");
    closed = Set.copyOf(closed);
    readings = List.copyOf(readings);
  }

  /** Readings with nothing folded shut. */
  public static FieldRun of(Network network, List<Reading> readings) {
    return new FieldRun(network, Set.of(), readings);
  }

  /** Sum of the squared differences of the readings from a solution, in standard deviations. */
  double misfit(Solution solution) {
    double sum = 0;
    for (Reading reading : readings) {
      double residual = reading.residual(solution);
      sum += residual * residual;
    }
    return sum;
  }
}
