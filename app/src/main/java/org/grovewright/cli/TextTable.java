package org.grovewright.cli;

import java.util.List;
import java.util.regex.Pattern;

/** Lines of words set in columns for the terminal. */
final class TextTable {
  private static final Pattern NUMBER = Pattern.compile("[-+]?[0-9.]+");
  private static final String GAP = "  ";

  private TextTable() {}

  /**
   * Sets lines of cells in columns as wide as their widest cell; a column of numbers is set flush
   * right. The first line is the heading.
   *
   * @param lines lines of equally many cells
   */
  static String of(List<List<String>> lines) {
    int columns = lines.get(0).size();
    int[] widths = new int[columns];
    boolean[] numbers = new boolean[columns];
    for (int c = 0; c < columns; c++) {
      int column = c;
      widths[c] = lines.stream().mapToInt(line -> width(line.get(column))).max().orElse(0);
      numbers[c] =
          lines.size() > 1
              && lines.stream()
                  .skip(1)
                  .map(line -> line.get(column))
                  .allMatch(cell -> cell.isEmpty() || NUMBER.matcher(cell).matches());
    }
    StringBuilder text = new StringBuilder();
    for (List<String> line : lines) {
      StringBuilder row = new StringBuilder();
      for (int c = 0; c < columns; c++) {
        String space = " ".repeat(widths[c] - width(line.get(c)));
        row.append(c == 0 ? "" : GAP)
            .append(numbers[c] ? space + line.get(c) : line.get(c) + space);
      }
      text.append(row.toString().stripTrailing()).append('\n');
    }
    return text.toString();
  }

  private static int width(String cell) {
    return cell.codePointCount(0, cell.length());
  }
}
