package org.grovewright.formats.description;

import java.util.List;
import java.util.stream.Collectors;

/** A description cannot be used; holds everything that is wrong with it, in the file's order. */
public final class DescriptionException extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private static final int SHOWN = 50;

  private final String file;
  private final transient List<Problem> problems;

  /** A description cannot be used for these problems, at least one. */
  public DescriptionException(String file, List<Problem> problems) {
    super(text(file, problems));
    this.file = file;
    this.problems = List.copyOf(problems);
  }

  private static String text(String file, List<Problem> problems) {
    String shown =
        problems.stream()
            .limit(SHOWN)
            .map(problem -> problem.describe(file))
            .collect(Collectors.joining("\n"));
    int more = problems.size() - SHOWN;
    return more > 0 ? shown + "\nand " + more + " more" : shown;
  }

  /** Name of the file as it was given. */
  public String file() {
    return file;
  }

  /** The problems by line and column. */
  public List<Problem> problems() {
    return problems;
  }
}
