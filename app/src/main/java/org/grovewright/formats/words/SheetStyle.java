package org.grovewright.formats.words;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * How a table of text parts its cells and writes its decimals. Spreadsheets of many countries write
 * a decimal comma and part the cells by semicolons; they are taken for that where the heading has
 * semicolons and no comma, for then a comma in a number can be nothing else.
 */
public final class SheetStyle {
  private static final Pattern COMMA = Pattern.compile("[+-]?\\d*,\\d+");
  private static final Pattern POINT = Pattern.compile("[+-]?\\d*\\.\\d+");
  private static final int LOOKED_AT = 1 << 16;

  private final char separator;
  private char decimal;

  private SheetStyle(char separator) {
    this.separator = separator;
  }

  /** The style of a table, by its heading: the first line that is neither blank nor a remark. */
  public static SheetStyle of(String text) {
    String heading =
        text.lines()
            .filter(line -> !line.isBlank() && !line.startsWith("#"))
            .findFirst()
            .orElse("");
    return new SheetStyle(heading.indexOf(',') < 0 && heading.indexOf(';') >= 0 ? ';' : ',');
  }

  /**
   * The style of a table that is about to be read; the reader is put back to where it was.
   *
   * @throws IOException if the text cannot be read
   */
  public static SheetStyle of(BufferedReader reader) throws IOException {
    reader.mark(LOOKED_AT);
    char[] start = new char[LOOKED_AT];
    int length = 0;
    for (int more = 0; more >= 0 && length < LOOKED_AT; length += Math.max(0, more)) {
      more = reader.read(start, length, LOOKED_AT - length);
    }
    reader.reset();
    return of(new String(start, 0, length));
  }

  /** What parts the cells. */
  public char separator() {
    return separator;
  }

  /**
   * A number as the program reads it, with a decimal point; nothing where it has another mark than
   * an earlier one of the table, for then one of the two may part the thousands. Any other text is
   * given back as it is.
   */
  public Optional<String> number(String cell) {
    if (separator == ',') {
      return Optional.of(cell);
    }
    boolean comma = COMMA.matcher(cell).matches();
    if (comma || POINT.matcher(cell).matches()) {
      char mark = comma ? ',' : '.';
      if (decimal != 0 && decimal != mark) {
        return Optional.empty();
      }
      decimal = mark;
    }
    return Optional.of(comma ? cell.replace(',', '.') : cell);
  }
}
