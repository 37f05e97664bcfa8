package org.grovewright.catalogue.files;

import java.util.List;
import java.util.Map;

/**
 * A row of a table as it stands in a file.
 *
 * @param file name of the file
 * @param line line of the row
 * @param cells cell by column name; empty cells are left out
 */
public record Row(String file, long line, Map<String, String> cells) {
  /** Copies the cells. */
  public Row {
    cells = Map.copyOf(cells);
  }

  /** The cell of a column, or empty text. */
  public String text(String column) {
    return cells.getOrDefault(column, "");
  }

  /** Words of a cell that holds several, parted by spaces. */
  List<String> words(String column) {
    return split(text(column));
  }

  static List<String> split(String cell) {
    return cell.isBlank() ? List.of() : List.of(cell.trim().split("\\s+"));
  }

  Problem problem(String column, String message) {
    return new Problem(file, line, column, message);
  }
}
