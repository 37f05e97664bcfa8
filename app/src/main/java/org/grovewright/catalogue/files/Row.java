package org.grovewright.catalogue.files;

import java.util.ArrayList;
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
    if (cell.isEmpty()) {
      return List.of();
    }
    List<String> words = new ArrayList<>(4);
    int start = 0;
    while (start < cell.length()) {
      int space = cell.indexOf(' ', start);
      int end = space < 0 ? cell.length() : space;
      if (end > start) {
        words.add(cell.substring(start, end));
      }
      start = end + 1;
    }
    return words;
  }

  Problem problem(String column, String message) {
    return new Problem(file, line, column, message);
  }
}
