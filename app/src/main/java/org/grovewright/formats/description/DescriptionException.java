package org.grovewright.formats.description;

import java.util.List;
import org.grovewright.formats.words.Listing;

/** A description cannot be used; holds everything that is wrong with it, in the file's order. */
public final class DescriptionException extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private static final int SHOWN = 50;

  private final String file;
  private final transient List<Problem> problems;

  /** A description cannot be used for these problems, at least one. */
  public DescriptionException(String file, List<Problem> problems) {
    super(Listing.first(problems, SHOWN, problem -> problem.describe(file)));
    this.file = file;
    this.problems = List.copyOf(problems);
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
