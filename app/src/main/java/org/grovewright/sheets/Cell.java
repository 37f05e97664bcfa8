package org.grovewright.sheets;

/**
 * A piece of text of the report, with the figure it shows if it shows one.
 *
 * @param text what is written
 * @param figureId id of the figure whose working stands behind it, or empty text
 */
public record Cell(String text, String figureId) {
  /** Plain text. */
  static Cell of(String text) {
    return new Cell(text, "");
  }
}
