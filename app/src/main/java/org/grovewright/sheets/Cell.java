package org.grovewright.sheets;

import java.util.List;

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

  /**
   * A table of the report.
   *
   * @param caption what the table is about
   * @param columns its columns; the first one names the rows
   * @param rows its rows, each with a cell for every column
   */
  public record Table(String caption, List<Column> columns, List<List<Cell>> rows) {
    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException if a row has not one cell for each column
     */
    public Table {
      columns = List.copyOf(columns);
      rows = rows.stream().map(List::copyOf).toList();
      for (List<Cell> row : rows) {
        if (row.size() != columns.size()) {
          throw new IllegalArgumentException(
              "a row of the table \"" + caption + "\" has " + row.size() + " cells");
        }
      }
    }
  }

  /**
   * A column of a table.
   *
   * @param title its heading
   * @param number whether it holds numbers, which stand to the right
   */
  public record Column(String title, boolean number) {
    static Column words(String title) {
      return new Column(title, false);
    }

    static Column numbers(String title) {
      return new Column(title, true);
    }
  }
}
