package org.grovewright.catalogue.files;

import java.util.List;
import java.util.stream.Collectors;

/** Catalogue files cannot be used; holds every fault found in them. */
public final class CatalogueException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  CatalogueException(List<Problem> problems) {
    super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  /** All faults, in the order of files and lines. */
  public List<Problem> problems() {
    return problems;
  }
}
