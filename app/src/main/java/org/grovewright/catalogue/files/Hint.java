package org.grovewright.catalogue.files;

import java.util.Collection;
import org.grovewright.formats.words.Nearest;

/** The last sentence of a message about a word that is not known. */
final class Hint {
  private Hint() {}

  /** The question whether the nearest known word was meant, with a leading space, or empty text. */
  static String of(String word, Collection<String> known) {
    return Nearest.of(word, known).map(near -> " Did you mean \"" + near + "\"?").orElse("");
  }
}
