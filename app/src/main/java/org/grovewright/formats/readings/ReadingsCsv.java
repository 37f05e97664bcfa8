package org.grovewright.formats.readings;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.units.NotAQuantityException;
import org.grovewright.formats.units.QuantityText;
import org.grovewright.formats.words.SheetStyle;
import org.grovewright.trouble.FieldReading;

/**
 * Reads field readings from a table with a heading.
 *
 * <p>Columns, in any order: {@code zone}, {@code place}, {@code folded}, {@code meter (L/min)},
 * {@code pressure (kPa)}, {@code caught (mL)} and {@code time (s)}, the last two together. The unit
 * of a number stands in brackets in its heading; others are allowed. A line may hold several
 * readings; places behind which tubing was folded are parted by a semicolon. Where semicolons part
 * the cells, as spreadsheets of many countries write, numbers may have a decimal comma.
 */
public final class ReadingsCsv {
  private static final Pattern HEADING =
      Pattern.compile("([a-z]+)(?: *[\\[(](.+)[\\])]| +(.+))?", Pattern.CASE_INSENSITIVE);
  private static final long LARGEST = 5_000_000;

  /** The columns. */
  private enum Column {
    ZONE(null),
    PLACE(null),
    FOLDED(null),
    METER(Measure.FLOW),
    PRESSURE(Measure.PRESSURE),
    CAUGHT(Measure.VOLUME),
    TIME(Measure.TIME);

    private final Measure measure;

    Column(Measure measure) {
      this.measure = measure;
    }

    private String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * What was read, with the unit each number was written in.
   *
   * @param reading the reading
   * @param text the number as it was written
   * @param unit its unit; of a can its volume's
   */
  public record Written(FieldReading reading, String text, String unit) {}

  private final Map<Column, Integer> columns = new EnumMap<>(Column.class);
  private final Map<Column, String> units = new EnumMap<>(Column.class);
  private final List<Written> readings = new ArrayList<>();

  private final SheetStyle style;

  private ReadingsCsv(SheetStyle style) {
    this.style = style;
  }

  /**
   * Reads a file.
   *
   * @throws ReadingsException if it cannot be used; names line and column
   */
  public static List<Written> read(Path file) {
    String text;
    try {
      if (!Files.isRegularFile(file)) {
        throw new ReadingsException("there is no such file.");
      }
      if (Files.size(file) > LARGEST) {
        throw new ReadingsException("the file is larger than 5 MB; that is no list of readings.");
      }
      text = Files.readString(file, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new ReadingsException("the file cannot be read as text: " + e.getMessage());
    }
    return read(text);
  }

  /** Reads the text of a file; see {@link #read(Path)}. */
  public static List<Written> read(String text) {
    String plain = text.startsWith("\ufeff") ? text.substring(1) : text;
    ReadingsCsv csv = new ReadingsCsv(SheetStyle.of(plain));
    CSVFormat format =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter(csv.style.separator())
            .setIgnoreEmptyLines(true)
            .setCommentMarker('#')
            .get();
    try (CSVParser parser = CSVParser.parse(plain, format)) {
      boolean heading = true;
      for (CSVRecord row : parser) {
        if (heading) {
          csv.heading(row);
          heading = false;
        } else {
          csv.row(row, (int) parser.getCurrentLineNumber());
        }
      }
    } catch (IOException | java.io.UncheckedIOException e) {
      throw new ReadingsException("the table cannot be read: " + e.getMessage());
    }
    if (csv.readings.isEmpty()) {
      throw new ReadingsException("there is no reading in it.");
    }
    return csv.readings;
  }

  private void heading(CSVRecord row) {
    for (int i = 0; i < row.size(); i++) {
      String title = row.get(i).trim();
      Matcher matcher = HEADING.matcher(title);
      Column column = matcher.matches() ? column(matcher.group(1)) : null;
      if (column == null) {
        throw new ReadingsException(
            "line 1: the column \""
                + title
                + "\" is not known; the columns are zone, place, folded, meter, pressure, caught"
                + " and time.");
      }
      if (columns.put(column, i) != null) {
        throw new ReadingsException("line 1: the column " + column.word() + " is there twice.");
      }
      if (column.measure == null) {
        continue;
      }
      String unit = matcher.group(2) == null ? matcher.group(3) : matcher.group(2);
      if (unit == null) {
        throw new ReadingsException(
            "line 1: "
                + column.word()
                + " has no unit; write it in brackets behind it, such as "
                + column.word()
                + example(column)
                + ".");
      }
      value("1", unit.trim(), column, 1);
      units.put(column, unit.trim());
    }
    if (columns.containsKey(Column.CAUGHT) != columns.containsKey(Column.TIME)) {
      throw new ReadingsException("line 1: a can needs both columns, caught (mL) and time (s).");
    }
    if (units.isEmpty()) {
      throw new ReadingsException(
          "line 1: there is no column with readings: meter, pressure, or caught and time.");
    }
  }

  private static String example(Column column) {
    return switch (column) {
      case METER -> " (L/min)";
      case PRESSURE -> " (kPa)";
      case CAUGHT -> " (mL)";
      default -> " (s)";
    };
  }

  private static Column column(String word) {
    for (Column column : Column.values()) {
      if (column.word().equals(word.toLowerCase(Locale.ROOT))) {
        return column;
      }
    }
    return null;
  }

  private String cell(CSVRecord row, Column column) {
    Integer at = columns.get(column);
    return at == null || at >= row.size() ? "" : row.get(at).trim();
  }

  private void row(CSVRecord row, int line) {
    String zone = cell(row, Column.ZONE);
    String place = cell(row, Column.PLACE);
    List<String> folded = new ArrayList<>();
    for (String one : cell(row, Column.FOLDED).split(";", -1)) {
      if (!one.isBlank()) {
        folded.add(one.trim());
      }
    }
    int before = readings.size();
    String meter = cell(row, Column.METER);
    if (!meter.isEmpty()) {
      add(line, zone, FieldReading.Kind.METER, "", folded, meter, Column.METER, 1);
    }
    String pressure = cell(row, Column.PRESSURE);
    if (!pressure.isEmpty()) {
      add(line, zone, FieldReading.Kind.PRESSURE, place, folded, pressure, Column.PRESSURE, 1);
    }
    String caught = cell(row, Column.CAUGHT);
    String time = cell(row, Column.TIME);
    if (caught.isEmpty() != time.isEmpty()) {
      throw new ReadingsException(
          "line "
              + line
              + ": "
              + (time.isEmpty() ? "time" : "caught")
              + " is empty; a can needs"
              + " what was caught and how long it took.");
    }
    if (!caught.isEmpty()) {
      double seconds = value(time, units.get(Column.TIME), Column.TIME, line);
      if (!(seconds > 0)) {
        throw new ReadingsException("line " + line + ": time must be above 0.");
      }
      add(line, zone, FieldReading.Kind.CATCH, place, folded, caught, Column.CAUGHT, seconds);
    }
    if (readings.size() == before) {
      throw new ReadingsException("line " + line + ": there is no reading on it.");
    }
  }

  private void add(
      int line,
      String zone,
      FieldReading.Kind kind,
      String place,
      List<String> folded,
      String text,
      Column column,
      double seconds) {
    double value = value(text, units.get(column), column, line) / seconds;
    if (value < 0) {
      throw new ReadingsException(
          "line " + line + ": " + column.word() + " must be 0 or more, but is " + text + ".");
    }
    readings.add(
        new Written(
            new FieldReading(line, zone, kind, place, folded, value), text, units.get(column)));
  }

  private double value(String text, String unit, Column column, int line) {
    String number =
        style
            .number(text)
            .orElseThrow(
                () ->
                    new ReadingsException(
                        "line "
                            + line
                            + ": "
                            + column.word()
                            + ": \""
                            + text
                            + "\" has another decimal mark than a number before it; write all of"
                            + " them with a comma or all with a point."));
    try {
      return QuantityText.read(number + " " + unit, column.measure).value();
    } catch (NotAQuantityException e) {
      throw new ReadingsException("line " + line + ": " + column.word() + ": " + e.getMessage());
    }
  }
}
