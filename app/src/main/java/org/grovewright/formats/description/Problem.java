package org.grovewright.formats.description;

/**
 * One thing wrong with a description.
 *
 * @param line line it stands on, from 1; 0 if it belongs to no line
 * @param column column it starts at, from 1; 0 if it belongs to no line
 * @param path the field, such as {@code supply.flow_tests[0].time}; empty for the whole file
 * @param message what is wrong and what is allowed, a plain sentence without a full stop
 */
public record Problem(int line, int column, String path, String message) {
  /** The problem as one line of text for a file of this name. */
  public String describe(String file) {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(':').append(line).append(':').append(column);
    }
    text.append(": ");
    if (!path.isEmpty()) {
      text.append(path).append(": ");
    }
    return text.append(message).toString();
  }
}
