package org.grovewright.sheets;

/**
 * A piece of text of the report, with the figure it shows if it shows one.
 *
 * @param text what is written
 * @param figureId id of the figure whose working stands behind it, or empty text
 */
public record Cell(String text, String figureId) {
  /** The cell of a table that has nothing to say. */
  static final Cell NONE = of("\u2013");

  /** Whether it has nothing to say. */
  public boolean blank() {
    return equals(NONE);
  }

  /** Plain text. */
  static Cell of(String text) {
    return new Cell(text, "");
  }
}
