package org.grovewright.formats.weather;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.grovewright.formats.words.SheetStyle;
import org.grovewright.water.Weather;

/** Reads a table of weather from separated values; see the package for its headings. */
public final class WeatherCsv {
  // What stations and weather services write where nothing was measured.
  private static final Pattern NOT_MEASURED =
      Pattern.compile("-9+(\\.9*0*)?|n/?an?|null|none|-+|\\?|missing", Pattern.CASE_INSENSITIVE);
  private static final Pattern LEAP_DAY = Pattern.compile("(\\d{4})-02-29");
  private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)");
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setCommentMarker('#')
          .setIgnoreEmptyLines(true)
          .setIgnoreSurroundingSpaces(true)
          .get();
  // The year to which monthly means are assigned is of no meaning; it has no leap day.
  private static final int ANY_YEAR = 2001;
  private static final double HOTTEST_MEAN_C = 42;
  private static final double HOTTEST_DAY_F = 135;

  private static final String DISORDER =
      "%d of %d rows stand behind rows of later days; sort the table by date, oldest first";

  /** Fewer rows that share a fault are told one by one. */
  private static final int FEW = 5;

  private final String file;
  private final List<WeatherProblem> problems = new ArrayList<>();
  private final Map<Fault, List<WeatherProblem>> alike = new EnumMap<>(Fault.class);
  private SheetStyle style = SheetStyle.of("");
  private int records;
  private final List<String> headings = new ArrayList<>();
  private final List<String> ignored = new ArrayList<>();
  private final Map<WeatherColumn, Integer> places = new EnumMap<>(WeatherColumn.class);
  private final Map<WeatherColumn, WeatherColumn.Heading> meanings =
      new EnumMap<>(WeatherColumn.class);

  /** What often is wrong with a whole file rather than with a row. */
  private enum Fault {
    SWAPPED(
        "tmin is above tmax on %d of %d rows: the two columns are swapped; exchange their names"),
    BACKWARDS(
        "%d of %d rows go back in time, so the newest comes first; sort them by date, oldest first"),
    NOT_MEASURED(
        "%d of %d rows have a mark such as -999 or NA where nothing was measured; leave out the rows"
            + " that lack tmin or tmax, and leave other such cells empty"),
    DATES(
        "%d of %d dates are not written as 2025-07-31, year, month and day; change their format in"
            + " the spreadsheet and save it again"),
    HOT(
        "%d of %d rows are hotter than any place on earth in degrees Celsius; if they are degrees"
            + " Fahrenheit, name the columns tmin_f and tmax_f");

    private final String message;

    Fault(String message) {
      this.message = message;
    }
  }

  private WeatherCsv(String file) {
    this.file = file;
  }

  /**
   * Reads a file in UTF-8.
   *
   * @throws WeatherFileException if it cannot be read or used
   */
  public static WeatherTable read(Path path) {
    String file = path.toString();
    try (Reader reader = Files.newBufferedReader(path, StandardCharsets.UTF_8)) {
      return read(file, reader);
    } catch (NoSuchFileException e) {
      throw new WeatherFileException(
          file, List.of(new WeatherProblem(0, "", "there is no such file")));
    } catch (CharacterCodingException e) {
      throw new WeatherFileException(
          file,
          List.of(new WeatherProblem(0, "", "is not text in UTF-8; save it as CSV in UTF-8")));
    } catch (IOException e) {
      throw new WeatherFileException(
          file, List.of(new WeatherProblem(0, "", "cannot be read: " + e.getMessage())));
    }
  }

  /**
   * Reads a table.
   *
   * @param file its name, for messages
   * @param reader its text
   * @throws WeatherFileException if it cannot be used
   * @throws IOException if the text cannot be read
   */
  public static WeatherTable read(String file, Reader reader) throws IOException {
    return new WeatherCsv(file).table(reader);
  }

  private WeatherTable table(Reader reader) throws IOException {
    List<WeatherTable.Row> rows = new ArrayList<>();
    BufferedReader text = new BufferedReader(reader);
    style = SheetStyle.of(text);
    CSVFormat format = FORMAT.builder().setDelimiter(style.separator()).get();
    try (CSVParser parser = format.parse(text)) {
      for (CSVRecord record : parser) {
        int line = Math.toIntExact(parser.getCurrentLineNumber());
        if (headings.isEmpty()) {
          heading(record, line);
        } else {
          records++;
          row(record, line, rows);
        }
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    if (headings.isEmpty()) {
      fault(0, "", "is empty; it needs a heading such as date,tmin,tmax,rain and a row a day");
    } else if (rows.isEmpty() && problems.isEmpty()) {
      fault(0, "", "has a heading but no rows");
    }
    stopIfFaulty();
    checkScale(rows);
    return new WeatherTable(file, places.containsKey(WeatherColumn.MONTH), rows, ignored);
  }

  /** Whether temperatures headed as Celsius are those of a place on earth. */
  private void checkScale(List<WeatherTable.Row> rows) {
    double mean = rows.stream().mapToDouble(row -> row.weather().tmeanC()).average().orElse(0);
    if (mean > HOTTEST_MEAN_C) {
      fault(
          0,
          heading(WeatherColumn.TMIN) + " and " + heading(WeatherColumn.TMAX),
          "average "
              + plain(mean)
              + " degrees Celsius, hotter than any place on earth; if they are degrees Fahrenheit,"
              + " name the columns tmin_f and tmax_f");
      stopIfFaulty();
    }
  }

  private void heading(CSVRecord record, int line) {
    for (int i = 0; i < record.size(); i++) {
      String text = record.get(i);
      if (i == 0 && text.startsWith("\uFEFF")) {
        text = text.substring(1);
      }
      headings.add(text);
      WeatherColumn.Heading heading = WeatherColumn.Heading.of(text);
      if (heading == null) {
        ignored.add(text);
        continue;
      }
      meanings.put(heading.column(), heading);
      Integer earlier = places.putIfAbsent(heading.column(), i);
      if (earlier != null) {
        fault(line, text, "says the same as column " + headings.get(earlier) + "; keep one");
      }
    }
    boolean daily = places.containsKey(WeatherColumn.DATE);
    boolean monthly = places.containsKey(WeatherColumn.MONTH);
    if (daily == monthly) {
      fault(
          line,
          "",
          daily
              ? "has both a date and a month column; keep the one that says what a row is"
              : "needs a column date (rows are days) or month (rows are months); " + known());
    }
    for (WeatherColumn needed : List.of(WeatherColumn.TMIN, WeatherColumn.TMAX)) {
      if (!places.containsKey(needed)) {
        fault(line, "", "has no column " + needed.word() + "; " + known());
      }
    }
    // Without the columns that say what a row is, every row would be a fault.
    stopIfFaulty();
  }

  private static String known() {
    return "the headings are comma separated, or all by semicolons, and may be "
        + WeatherColumn.Heading.all();
  }

  private void row(CSVRecord record, int line, List<WeatherTable.Row> rows) {
    if (record.size() != headings.size()) {
      fault(line, "", "has " + record.size() + " cells, but the heading has " + headings.size());
      return;
    }
    int before = problems.size();
    LocalDate date = date(record, line, rows);
    OptionalDouble tmin = needed(WeatherColumn.TMIN, record, line);
    OptionalDouble tmax = needed(WeatherColumn.TMAX, record, line);
    if (tmin.isPresent() && tmax.isPresent() && tmin.getAsDouble() > tmax.getAsDouble()) {
      fault(
          Fault.SWAPPED,
          line,
          heading(WeatherColumn.TMIN),
          "is above "
              + heading(WeatherColumn.TMAX)
              + "; exchange the two if they were swapped, or leave out the row");
    }
    Weather.Humidity humidity =
        new Weather.Humidity(
            number(WeatherColumn.DEW_POINT, record, line),
            number(WeatherColumn.HUMIDITY_MAX, record, line),
            number(WeatherColumn.HUMIDITY_MIN, record, line),
            number(WeatherColumn.HUMIDITY, record, line));
    OptionalDouble wind = number(WeatherColumn.WIND, record, line);
    OptionalDouble solar = number(WeatherColumn.SOLAR, record, line);
    OptionalDouble sunshine = number(WeatherColumn.SUNSHINE, record, line);
    OptionalDouble rain = number(WeatherColumn.RAIN, record, line);
    if (problems.size() == before) {
      Weather weather =
          new Weather(tmin.orElseThrow(), tmax.orElseThrow(), humidity, wind, solar, sunshine);
      rows.add(new WeatherTable.Row(line, date, weather, rain));
    }
  }

  private LocalDate date(CSVRecord record, int line, List<WeatherTable.Row> rows) {
    LocalDate date;
    WeatherColumn column;
    if (places.containsKey(WeatherColumn.MONTH)) {
      column = WeatherColumn.MONTH;
      OptionalDouble month = needed(column, record, line);
      if (month.isEmpty()) {
        return null;
      }
      if (month.getAsDouble() != Math.rint(month.getAsDouble())) {
        fault(line, heading(column), "must be a whole number from 1 to 12");
        return null;
      }
      date = LocalDate.of(ANY_YEAR, (int) month.getAsDouble(), 1);
    } else {
      column = WeatherColumn.DATE;
      String text = record.get(places.get(column));
      try {
        date = LocalDate.parse(text);
      } catch (DateTimeParseException e) {
        Matcher leap = LEAP_DAY.matcher(text);
        if (leap.matches()) {
          fault(
              line,
              heading(column),
              "\""
                  + text
                  + "\" is not a date of the calendar, for "
                  + leap.group(1)
                  + " is no leap year; leave out the row");
          return null;
        }
        fault(
            Fault.DATES,
            line,
            heading(column),
            "\"" + text + "\" is not a date of the calendar; write it as 2025-07-31");
        return null;
      }
    }
    if (!rows.isEmpty() && !date.isAfter(rows.get(rows.size() - 1).date())) {
      WeatherTable.Row last = rows.get(rows.size() - 1);
      fault(
          date.equals(last.date()) ? null : Fault.BACKWARDS,
          line,
          heading(column),
          (date.equals(last.date()) ? "is the same as on line " : "goes back before line ")
              + last.line()
              + "; rows must follow the calendar, one each");
    }
    return date;
  }

  private OptionalDouble needed(WeatherColumn column, CSVRecord record, int line) {
    if (record.get(places.get(column)).isEmpty()) {
      fault(
          line,
          heading(column),
          "is empty; leave out the row of a day that was not measured, and the day is filled in");
      return OptionalDouble.empty();
    }
    return number(column, record, line);
  }

  private OptionalDouble number(WeatherColumn column, CSVRecord record, int line) {
    Integer place = places.get(column);
    if (place == null || record.get(place).isEmpty()) {
      return OptionalDouble.empty();
    }
    Optional<String> alike = style.number(record.get(place));
    if (alike.isEmpty()) {
      fault(
          line,
          heading(column),
          "\""
              + record.get(place)
              + "\" has another decimal mark than a number before it; write all of them with a"
              + " comma or all with a point");
      return OptionalDouble.empty();
    }
    String text = alike.get();
    if (NOT_MEASURED.matcher(text).matches()
        && !(NUMBER.matcher(text).matches() && inRange(column, text))) {
      fault(Fault.NOT_MEASURED, line, heading(column), notMeasured(column, text));
      return OptionalDouble.empty();
    }
    if (!NUMBER.matcher(text).matches()) {
      String hint = text.matches("[+-]?\\d+,\\d+") ? "; write decimals with a point, as 12.5" : "";
      fault(line, heading(column), "\"" + text + "\" is not a number" + hint);
      return OptionalDouble.empty();
    }
    double value = meanings.get(column).toProgram().applyAsDouble(Double.parseDouble(text));
    if (!inRange(column, text)) {
      fault(
          hot(column, value) ? Fault.HOT : null,
          line,
          heading(column),
          text + " is out of range" + allowed(column, value));
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(value);
  }

  private boolean inRange(WeatherColumn column, String number) {
    double value = meanings.get(column).toProgram().applyAsDouble(Double.parseDouble(number));
    return value >= column.least && value <= column.greatest;
  }

  /** What to do about a mark of what was not measured. */
  private static String notMeasured(WeatherColumn column, String text) {
    boolean row = column == WeatherColumn.TMIN || column == WeatherColumn.TMAX;
    return "\""
        + text
        + "\" looks like the mark of a value that was not measured; "
        + (row ? "leave out the row, and the day is filled in" : "leave the cell empty");
  }

  private String allowed(WeatherColumn column, double value) {
    String range = "; it must lie between " + meanings.get(column).range();
    return hot(column, value)
        ? range + "; if these are degrees Fahrenheit, name the column " + column.word() + "_f"
        : range;
  }

  private static boolean hot(WeatherColumn column, double value) {
    boolean temperature = column == WeatherColumn.TMIN || column == WeatherColumn.TMAX;
    return temperature && value > column.greatest && value < HOTTEST_DAY_F;
  }

  private static String plain(double number) {
    return Long.toString(Math.round(number));
  }

  private String heading(WeatherColumn column) {
    return headings.get(places.get(column));
  }

  private void fault(int line, String column, String message) {
    problems.add(new WeatherProblem(line, column, message));
  }

  /** Notes a fault that may turn out to be one of the whole file; null for one that cannot. */
  private void fault(Fault kind, int line, String column, String message) {
    fault(line, column, message);
    if (kind != null) {
      alike.computeIfAbsent(kind, k -> new ArrayList<>()).add(problems.get(problems.size() - 1));
    }
  }

  /** One problem in place of those that most rows share. */
  private void join() {
    alike.forEach(
        (kind, same) -> {
          long lines = same.stream().mapToInt(WeatherProblem::line).distinct().count();
          boolean most = 2 * lines > records;
          boolean always =
              kind == Fault.HOT || kind == Fault.BACKWARDS || kind == Fault.NOT_MEASURED;
          if (lines >= FEW && (most || always)) {
            String message = kind == Fault.BACKWARDS && !most ? DISORDER : kind.message;
            problems.removeAll(same);
            problems.add(
                0, new WeatherProblem(0, "", String.format(Locale.ROOT, message, lines, records)));
          }
        });
  }

  private void stopIfFaulty() {
    if (!problems.isEmpty()) {
      join();
      throw new WeatherFileException(file, problems);
    }
  }
}
