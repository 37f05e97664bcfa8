package org.grovewright.formats.words;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.text.similarity.LevenshteinDistance;
import org.grovewright.texts.Sentence;

/** Finds the allowed word nearest to a mistyped one, by edit distance. */
public final class Nearest {
  private static final int LONGEST_SHOWN = 40;
  private static final int LONGEST_COMPARED = 60;

  private Nearest() {}

  /**
   * The allowed word that was probably meant: one whose letters were swapped, or else the nearest
   * with at most one edit for each three letters, the first in order among equals. Case, spaces,
   * hyphens and underscores do not count.
   */
  public static Optional<String> of(String word, Collection<String> allowed) {
    if (word.length() > LONGEST_COMPARED) {
      return Optional.empty();
    }
    String plain = plain(word);
    LevenshteinDistance distance = new LevenshteinDistance(Math.max(1, plain.length() / 3));
    String best = null;
    int least = Integer.MAX_VALUE;
    for (String candidate : allowed) {
      String other = plain(candidate);
      int edits = neighboursSwapped(plain, other) ? 1 : distance.apply(plain, other);
      if (edits >= 0 && edits < least && edits < candidate.length()) {
        best = candidate;
        least = edits;
      }
    }
    return Optional.ofNullable(best);
  }

  /** A part of a sentence that hints at the allowed word nearest to a mistyped one, or nothing. */
  public static Sentence hint(String word, Collection<String> allowed) {
    return of(word, allowed)
        .map(near -> Sentence.of(" (did you mean {0}?)", near))
        .orElse(Sentence.NOTHING);
  }

  private static boolean neighboursSwapped(String a, String b) {
    int at = 0;
    while (at < a.length() && at < b.length() && a.charAt(at) == b.charAt(at)) {
      at++;
    }
    return a.length() == b.length()
        && at + 1 < a.length()
        && a.charAt(at) == b.charAt(at + 1)
        && a.charAt(at + 1) == b.charAt(at)
        && a.substring(at + 2).equals(b.substring(at + 2));
  }

  /** A word without what people vary freely: case, spaces, hyphens and underscores. */
  public static String plain(String word) {
    return word.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
  }

  /** A text cut to a length that fits a message, control characters shown as question marks. */
  public static String shorten(String text) {
    String clean = text.replaceAll("\\p{Cntrl}+", "?");
    return clean.length() <= LONGEST_SHOWN
        ? clean
        : clean.substring(0, clean.offsetByCodePoints(0, LONGEST_SHOWN / 2)) + "...";
  }
}
