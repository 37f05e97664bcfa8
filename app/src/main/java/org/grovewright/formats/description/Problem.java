package org.grovewright.formats.description;

import org.grovewright.texts.Sentence;

/**
 * One thing wrong with a description.
 *
 * @param line line it stands on, from 1; 0 if it belongs to no line
 * @param column column it starts at, from 1; 0 if it belongs to no line
 * @param path the field, such as {@code supply.flow_tests[0].time}; empty for the whole file
 * @param sentence what is wrong and what is allowed, a plain sentence without a full stop
 */
public record Problem(int line, int column, String path, Sentence sentence) {
  /** What is wrong and what is allowed, in English. */
  public String message() {
    return sentence.english();
  }

  /** The problem as one line of English for a file of this name. */
  public String describe(String file) {
    return told(file).english();
  }

  /** The problem with its place in a file of this name. */
  Sentence told(String file) {
    StringBuilder place = new StringBuilder(file);
    if (line > 0) {
      place.append(':').append(line).append(':').append(column);
    }
    if (!path.isEmpty()) {
      place.append(": ").append(path);
    }
    return Sentence.of("{0}: {1}", place, sentence);
  }
}
