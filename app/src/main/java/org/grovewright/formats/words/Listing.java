package org.grovewright.formats.words;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Long lists of problems cut to what a reader can take in. */
public final class Listing {
  private Listing() {}

  /**
   * The first entries, a line each, and how many more there are.
   *
   * @param shown most entries to show
   * @param line text of an entry
   */
  public static <T> String first(List<T> entries, int shown, Function<T, String> line) {
    String text = entries.stream().limit(shown).map(line).collect(Collectors.joining("\n"));
    int more = entries.size() - shown;
    return more > 0 ? text + "\nand " + more + " more" : text;
  }
}
