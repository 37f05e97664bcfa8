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
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.grovewright.advice.WaterLog;
import org.grovewright.formats.words.Nearest;
import org.grovewright.formats.words.SheetStyle;

/**
 * Reads an owner's log of watering and rain: a table of values with a heading, parted by commas or
 * all by semicolons, one note a row. A note has a {@code date} (2027-07-31, or
 * 2027-07-01/2027-07-07 for several days), a {@code zone} (empty or {@code all} for every zone),
 * and {@code minutes} (a number, or {@code skipped}), {@code litres} or {@code gallons}, or the
 * {@code rain_mm} or {@code rain_in} of the rain gauge. A column {@code note} may hold anything.
 */
public final class WaterLogCsv {
  private static final double M3_PER_GALLON = 3.785411784e-3;
  private static final int LONGEST_SPAN_DAYS = 366;
  private static final Pattern NUMBER = Pattern.compile("\\d+(\\.\\d*)?|\\.\\d+");
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setCommentMarker('#')
          .setIgnoreEmptyLines(true)
          .setIgnoreSurroundingSpaces(true)
          .get();

  /** What a column holds, and the largest number that makes sense in it. */
  private enum Column {
    DATE(0, 0),
    ZONE(0, 0),
    MINUTES(60, 24 * 60),
    LITRES(1e-3, 1e6),
    GALLONS(M3_PER_GALLON, 250_000),
    RAIN_MM(1e-3, 2000),
    RAIN_IN(0.0254, 80),
    NOTE(0, 0);

    private final double toSi;
    private final double greatest;

    Column(double toSi, double greatest) {
      this.toSi = toSi;
      this.greatest = greatest;
    }

    private static final Map<String, Column> WORDS = words();

    private static Map<String, Column> words() {
      Map<String, Column> words = new LinkedHashMap<>();
      for (Column column : values()) {
        words.put(column.name().toLowerCase(Locale.ROOT), column);
      }
      words.put("liters", LITRES);
      words.put("rain", RAIN_MM);
      words.put("notes", NOTE);
      return words;
    }
  }

  private final String file;
  private final List<String> zones;
  private SheetStyle style = SheetStyle.of("");
  private final List<WeatherProblem> problems = new ArrayList<>();
  private final Map<Column, Integer> places = new LinkedHashMap<>();
  private final List<WaterLog.Run> runs = new ArrayList<>();
  private final TreeMap<LocalDate, Double> gaugeM = new TreeMap<>();
  private final Map<LocalDate, Integer> gaugeLines = new HashMap<>();

  private WaterLogCsv(String file, List<String> zones) {
    this.file = file;
    this.zones = zones;
  }

  /**
   * Reads a file in UTF-8.
   *
   * @param zones ids of the zones that may be named
   * @throws WeatherFileException if it cannot be read or used
   */
  public static WaterLog read(Path path, List<String> zones) {
    String file = path.toString();
    try (Reader reader = Files.newBufferedReader(path, StandardCharsets.UTF_8)) {
      return read(file, reader, zones);
    } catch (NoSuchFileException e) {
      throw failure(file, "there is no such file");
    } catch (CharacterCodingException e) {
      throw failure(file, "is not text in UTF-8; save it as CSV in UTF-8");
    } catch (IOException e) {
      throw failure(file, "cannot be read: " + e.getMessage());
    }
  }

  /**
   * Reads a log.
   *
   * @param file its name, for messages
   * @param zones ids of the zones that may be named
   * @throws WeatherFileException if it cannot be used
   * @throws IOException if the text cannot be read
   */
  public static WaterLog read(String file, Reader reader, List<String> zones) throws IOException {
    return new WaterLogCsv(file, zones).log(reader);
  }

  private static WeatherFileException failure(String file, String message) {
    return new WeatherFileException(file, List.of(new WeatherProblem(0, "", message)));
  }

  private WaterLog log(Reader reader) throws IOException {
    int columns = -1;
    BufferedReader buffered = new BufferedReader(reader);
    style = SheetStyle.of(buffered);
    CSVFormat format = FORMAT.builder().setDelimiter(style.separator()).get();
    try (CSVParser parser = format.parse(buffered)) {
      for (CSVRecord record : parser) {
        int line = Math.toIntExact(parser.getCurrentLineNumber());
        if (columns < 0) {
          columns = record.size();
          heading(record, line);
        } else if (record.size() != columns) {
          fault(line, "", "has " + record.size() + " cells, but the heading has " + columns);
        } else {
          row(record, line);
        }
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    if (columns < 0) {
      fault(0, "", "is empty; it needs a heading such as date,zone,minutes,rain_mm");
    }
    stopIfFaulty();
    return new WaterLog(runs, gaugeM);
  }

  private void heading(CSVRecord record, int line) {
    for (int i = 0; i < record.size(); i++) {
      String text = record.get(i);
      if (i == 0 && text.startsWith("\uFEFF")) {
        text = text.substring(1);
      }
      Column column =
          Column.WORDS.get(text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", "_"));
      if (column == null) {
        fault(
            line,
            Nearest.shorten(text),
            "is no column of a log; the columns may be "
                + String.join(", ", Column.WORDS.keySet()));
      } else if (places.putIfAbsent(column, i) != null) {
        fault(line, text, "is there twice; keep one");
      }
    }
    if (!places.containsKey(Column.DATE)) {
      fault(line, "", "has no column date");
    }
    stopIfFaulty();
  }

  private void row(CSVRecord record, int line) {
    int before = problems.size();
    List<LocalDate> dates = dates(text(record, Column.DATE), line);
    String zone = zone(text(record, Column.ZONE), line);
    String minutes = text(record, Column.MINUTES);
    boolean skipped = minutes.toLowerCase(Locale.ROOT).matches("skip(ped)?");
    OptionalDouble seconds = skipped ? OptionalDouble.of(0) : number(record, Column.MINUTES, line);
    OptionalDouble volume = either(record, Column.LITRES, Column.GALLONS, line);
    OptionalDouble rain = either(record, Column.RAIN_MM, Column.RAIN_IN, line);
    if (skipped && volume.orElse(0) > 0) {
      fault(line, "minutes", "says skipped, but the row has a volume of water");
    }
    if (problems.size() > before) {
      return;
    }
    if (seconds.isEmpty() && volume.isEmpty() && rain.isEmpty()) {
      fault(
          line,
          "",
          "says neither how long was watered (minutes, litres or gallons, or skipped) nor how much"
              + " it rained");
      return;
    }
    if (rain.isPresent()) {
      rain(dates, rain.getAsDouble(), line);
    }
    if (seconds.isPresent() || volume.isPresent()) {
      if (dates.size() > 1 && volume.isPresent()) {
        fault(line, "date", "has several days; give the water of each day in a row of its own");
        return;
      }
      dates.forEach(date -> runs.add(new WaterLog.Run(date, zone, seconds, volume)));
    }
  }

  private void rain(List<LocalDate> dates, double rainM, int line) {
    if (dates.size() > 1) {
      fault(line, "date", "has several days; give the rain of each day in a row of its own");
      return;
    }
    LocalDate date = dates.get(0);
    Integer earlier = gaugeLines.putIfAbsent(date, line);
    if (earlier != null) {
      fault(line, "date", "has its rain already on line " + earlier + "; give the day's rain once");
      return;
    }
    gaugeM.put(date, rainM);
  }

  private List<LocalDate> dates(String text, int line) {
    String[] ends = text.split("/", -1);
    try {
      LocalDate from = LocalDate.parse(ends[0].strip());
      LocalDate until = ends.length == 2 ? LocalDate.parse(ends[1].strip()) : from;
      if (until.isBefore(from)) {
        fault(line, "date", "\"" + Nearest.shorten(text) + "\" ends before it begins");
        return List.of();
      }
      if (ends.length <= 2) {
        if (until.toEpochDay() - from.toEpochDay() >= LONGEST_SPAN_DAYS) {
          fault(line, "date", "spans more than a year");
          return List.of();
        }
        return from.datesUntil(until.plusDays(1)).toList();
      }
    } catch (DateTimeParseException e) {
      // Told below, together with what has more than two ends.
    }
    fault(
        line,
        "date",
        "\""
            + Nearest.shorten(text)
            + "\" is no date; write 2027-07-31, or 2027-07-01/2027-07-07 for several days");
    return List.of();
  }

  private String zone(String text, int line) {
    if (text.isEmpty() || text.equalsIgnoreCase("all")) {
      return "";
    }
    for (String zone : zones) {
      if (zone.equalsIgnoreCase(text)) {
        return zone;
      }
    }
    fault(
        line,
        "zone",
        "\""
            + Nearest.shorten(text)
            + "\" is none of the zones, which are "
            + String.join(", ", zones)
            + "; leave it empty for all of them");
    return "";
  }

  private OptionalDouble either(CSVRecord record, Column one, Column other, int line) {
    OptionalDouble first = number(record, one, line);
    OptionalDouble second = number(record, other, line);
    if (first.isPresent() && second.isPresent()) {
      fault(line, name(other), "says the same as column " + name(one) + "; give one of them");
    }
    return first.isPresent() ? first : second;
  }

  private OptionalDouble number(CSVRecord record, Column column, int line) {
    String text = text(record, column);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    Optional<String> alike = style.number(text);
    if (alike.isEmpty()) {
      fault(
          line,
          name(column),
          "\""
              + Nearest.shorten(text)
              + "\" has another decimal mark than a number before it; write all of them with a"
              + " comma or all with a point");
      return OptionalDouble.empty();
    }
    text = alike.get();
    double value = NUMBER.matcher(text).matches() ? Double.parseDouble(text) : Double.NaN;
    if (!(value <= column.greatest)) {
      fault(
          line,
          name(column),
          "\""
              + Nearest.shorten(text)
              + "\" must be a number from 0 to "
              + Math.round(column.greatest)
              + (column == Column.MINUTES ? ", or the word skipped" : ""));
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(value * column.toSi);
  }

  private static String name(Column column) {
    return column.name().toLowerCase(Locale.ROOT);
  }

  private String text(CSVRecord record, Column column) {
    Integer place = places.get(column);
    return place == null ? "" : record.get(place);
  }

  private void fault(int line, String column, String message) {
    problems.add(new WeatherProblem(line, column, message));
  }

  private void stopIfFaulty() {
    if (!problems.isEmpty()) {
      throw new WeatherFileException(file, problems);
    }
  }
}
