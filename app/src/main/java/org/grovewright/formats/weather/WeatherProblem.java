package org.grovewright.formats.weather;

/**
 * One thing wrong with a weather file.
 *
 * @param line line it stands on, from 1; 0 for the whole file
 * @param column heading of the column, or empty text for the whole line
 * @param message what is wrong and what is allowed
 */
public record WeatherProblem(int line, String column, String message) {
  /** The problem as one line of text for a file of this name. */
  public String describe(String file) {
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
