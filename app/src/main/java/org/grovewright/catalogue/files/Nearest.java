package org.grovewright.catalogue.files;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the known word that someone probably meant. */
public final class Nearest {
  private Nearest() {}

  /**
   * The candidate with the least edit distance to the word, if it is near enough to be a slip of
   * the pen: at most a third of the word, and one slip even in a short one. Of equal candidates the
   * first wins.
   */
  public static Optional<String> to(String word, Collection<String> candidates) {
    String wanted = word.toLowerCase(Locale.ROOT);
    String best = null;
    int least = Math.max(1, word.length() / 3) + 1;
    for (String candidate : candidates) {
      int distance = distance(wanted, candidate.toLowerCase(Locale.ROOT));
      if (distance < least) {
        least = distance;
        best = candidate;
      }
    }
    return Optional.ofNullable(best);
  }

  /** A sentence "Did you mean ...?" with a leading space, or empty text. */
  static String hint(String word, Collection<String> candidates) {
    return to(word, candidates).map(near -> " Did you mean \"" + near + "\"?").orElse("");
  }

  /** Levenshtein distance, kept in one row. */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(change, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    return row[b.length()];
  }
}
