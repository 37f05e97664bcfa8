package org.grovewright.catalogue.files;

/**
 * A fault in a catalogue file.
 *
 * @param file name of the file
 * @param line line of the row it is on, counted from 1; 0 if it concerns the whole file
 * @param column name of the column, or empty text if it concerns the whole row or file
 * @param message what was wrong and what is allowed, in a plain sentence
 */
public record Problem(String file, long line, String column, String message) {
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(", line ").append(line);
    }
    if (!column.isEmpty()) {
      text.append(", column ").append(column);
    }
    return text.append(": ").append(message).toString();
  }
}
