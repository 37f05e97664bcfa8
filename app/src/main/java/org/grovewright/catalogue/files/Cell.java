package org.grovewright.catalogue.files;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Checks single cells against their columns. */
final class Cell {
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
          case KEY -> isKey(cell);
          case KEYS -> areKeys(cell);
          case CURRENCY -> CURRENCY.matcher(cell).matches();
          case YES_NO -> cell.equals("yes") || cell.equals("no");
          case CHOICE -> column.choices().contains(cell);
          case MONTHS -> Row.split(cell).stream().allMatch(word -> MONTH.matcher(word).matches());
          case NUMBER -> isNumber(cell) && inRange(column, cell);
          case WHOLE -> WHOLE.matcher(cell).matches() && inRange(column, cell);
        };
    return good
        ? Optional.empty()
        : Optional.of("\"" + cell + "\" cannot be used; " + wanted(column, cell));
  }

  private static String wanted(Column column, String cell) {
    String hint =
        switch (column.type()) {
          case CHOICE -> Hint.of(cell, column.choices());
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

  /** A decimal number with a point; keeps out what Java reads too, such as NaN, 0x1p3 and 4d. */
  private static boolean isNumber(String cell) {
    for (int i = 0; i < cell.length(); i++) {
      if ("0123456789.+-eE".indexOf(cell.charAt(i)) < 0) {
        return false;
      }
    }
    try {
      Double.parseDouble(cell);
      return true;
    } catch (NumberFormatException e) {
      return false;
    }
  }

  private static boolean areKeys(String cell) {
    for (String word : Row.split(cell)) {
      if (!isKey(word)) {
        return false;
      }
    }
    return true;
  }

  /** Words of lower case letters and digits parted by single points or hyphens. */
  private static boolean isKey(String cell) {
    boolean inWord = false;
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
        inWord = true;
      } else if (inWord && (c == '.' || c == '-')) {
        inWord = false;
      } else {
        return false;
      }
    }
    return inWord;
  }
}
