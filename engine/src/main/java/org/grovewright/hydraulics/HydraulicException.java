package org.grovewright.hydraulics;

import java.util.List;
import java.util.stream.Collectors;

/** A network that cannot be solved, with everything that is wrong about it. */
public final class HydraulicException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<HydraulicProblem> problems;

  /** Thrown with at least one problem. */
  public HydraulicException(List<HydraulicProblem> problems) {
    super(problems.stream().map(HydraulicProblem::message).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  /** Everything that is wrong, in the order of the network's parts. */
  public List<HydraulicProblem> problems() {
    return problems;
  }
}
