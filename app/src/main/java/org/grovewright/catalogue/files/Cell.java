package org.grovewright.catalogue.files;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Checks single cells against their columns. */
final class Cell {
  private static final Pattern KEY = Pattern.compile("[a-z0-9]+([.-][a-z0-9]+)*");
  private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)(e-?\\d+)?");
  private static final Pattern WHOLE = Pattern.compile("-?\\d{1,9}");
  private static final Pattern CURRENCY = Pattern.compile("[A-Z]{3}");
  private static final Pattern MONTH = Pattern.compile("[1-9]|1[0-2]");

  private Cell() {}

  /** The cell in the one spelling in which it is kept: words of a choice may be written freely. */
  static String plain(Column column, String cell) {
    return column.type() == Column.Type.CHOICE || column.type() == Column.Type.YES_NO
        ? cell.toLowerCase(Locale.ROOT).replace('_', '-')
        : cell;
  }

  /** What is wrong with a cell and what is allowed, or nothing. */
  static Optional<String> fault(Column column, String cell) {
    if (cell.isEmpty()) {
      return column.required()
          ? Optional.of("is empty; allowed is " + column.allowed() + ".")
          : Optional.empty();
    }
    boolean good =
        switch (column.type()) {
          case TEXT -> true;
          case KEY -> KEY.matcher(cell).matches();
          case KEYS -> all(cell, KEY);
          case CURRENCY -> CURRENCY.matcher(cell).matches();
          case YES_NO -> cell.equals("yes") || cell.equals("no");
          case CHOICE -> column.choices().contains(cell);
          case MONTHS -> all(cell, MONTH);
          case NUMBER -> NUMBER.matcher(cell).matches() && inRange(column, cell);
          case WHOLE -> WHOLE.matcher(cell).matches() && inRange(column, cell);
        };
    return good
        ? Optional.empty()
        : Optional.of("\"" + cell + "\" cannot be used; " + wanted(column, cell));
  }

  private static String wanted(Column column, String cell) {
    String hint =
        switch (column.type()) {
          case CHOICE -> Nearest.hint(cell, column.choices());
          case NUMBER, WHOLE ->
              cell.indexOf(',') >= 0 ? " Write the decimal with a point, not a comma." : "";
          default -> "";
        };
    return "allowed is " + column.allowed() + "." + hint;
  }

  private static boolean inRange(Column column, String cell) {
    double number = Double.parseDouble(cell);
    return number >= column.min() && number <= column.max();
  }

  private static boolean all(String cell, Pattern pattern) {
    List<String> words = Row.split(cell);
    return !words.isEmpty() && words.stream().allMatch(word -> pattern.matcher(word).matches());
  }
}
