package org.grovewright.formats.weather;

import java.util.List;
import java.util.stream.Collectors;

/** A weather file cannot be used; holds what is wrong with it in the order of its lines. */
public final class WeatherFileException extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private static final int SHOWN = 20;

  private final String file;
  private final transient List<WeatherProblem> problems;

  /** A weather file cannot be used for these problems, at least one. */
  public WeatherFileException(String file, List<WeatherProblem> problems) {
    super(text(file, problems));
    this.file = file;
    this.problems = List.copyOf(problems);
  }

  private static String text(String file, List<WeatherProblem> problems) {
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

  /** What is wrong, in the order of the lines. */
  public List<WeatherProblem> problems() {
    return problems;
  }
}
