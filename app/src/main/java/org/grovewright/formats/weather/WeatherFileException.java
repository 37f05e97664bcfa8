package org.grovewright.formats.weather;

import java.util.List;
import org.grovewright.formats.words.Listing;

/** A weather file cannot be used; holds what is wrong with it in the order of its lines. */
public final class WeatherFileException extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private static final int SHOWN = 20;

  private final String file;
  private final transient List<WeatherProblem> problems;

  /** A weather file cannot be used for these problems, at least one. */
  public WeatherFileException(String file, List<WeatherProblem> problems) {
    super(Listing.first(problems, SHOWN, problem -> problem.describe(file)));
    this.file = file;
    this.problems = List.copyOf(problems);
  }

  /** Name of the file as it was given. */
  public String file() {
    return file;
  }

  /** What is wrong, in the order of the lines. */
  public List<WeatherProblem> problems() {
    return problems;
  }
}
