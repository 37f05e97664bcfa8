package org.grovewright.formats.weather;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * Reads daily station records of the Global Historical Climatology Network, in both of its layouts:
 * the fixed-width {@code .dly} file with a month and element a line, and the by-station CSV with a
 * day and element a line. A value with a quality flag failed the network's own checks and is left
 * out.
 */
final class GhcnDaily {
  private static final Pattern FIXED = Pattern.compile("[A-Z0-9_-]{11}\\d{6}[A-Z0-9]{4}.*");
  private static final Pattern BY_STATION = Pattern.compile("[A-Z0-9_-]{11},\\d{8},[A-Z0-9]{4},.*");
  private static final Set<String> READ =
      Set.of("TMIN", "TMAX", "PRCP", "AWND", "TSUN", "ADPT", "RHAV");
  private static final int MISSING = -9999;
  private static final int DAY_WIDTH = 8;
  private static final int FIRST_DAY = 21;

  private final String file;
  private final TreeMap<LocalDate, RawDay> days = new TreeMap<>();
  private final List<WeatherProblem> problems = new ArrayList<>();
  private String station = "";
  private int leftOut;
  private int cutOff;

  private GhcnDaily(String file) {
    this.file = file;
  }

  /** Whether a file that starts with this line is such a record. */
  static boolean isRecord(String firstLine) {
    return FIXED.matcher(firstLine).matches() || BY_STATION.matcher(firstLine).matches();
  }

  /**
   * Reads a record and fills its holes.
   *
   * @throws WeatherFileException if it cannot be used
   * @throws IOException if the text cannot be read
   */
  static FilledSeries read(String file, Reader reader) throws IOException {
    GhcnDaily record = new GhcnDaily(file);
    BufferedReader lines = new BufferedReader(reader);
    int number = 0;
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      number++;
      if (line.isBlank()) {
        continue;
      }
      if (BY_STATION.matcher(line).matches()) {
        record.byStation(line, number);
      } else if (FIXED.matcher(line).matches()) {
        record.fixed(line, number);
      } else {
        record.fault(number, "is not a line of a GHCN-Daily record");
      }
    }
    if (!record.problems.isEmpty()) {
      throw new WeatherFileException(file, record.problems);
    }
    return GapFilling.of(file, record.days, record.leftOut).withCutOff(record.cutOff);
  }

  private void byStation(String line, int number) {
    String[] cells = line.split(",", -1);
    if (cells.length < 7) {
      fault(number, "has " + cells.length + " cells; a by-station record has 8");
      return;
    }
    String day = cells[1];
    try {
      LocalDate date =
          LocalDate.of(
              Integer.parseInt(day.substring(0, 4)),
              Integer.parseInt(day.substring(4, 6)),
              Integer.parseInt(day.substring(6)));
      enter(cells[0], date, cells[2], Integer.parseInt(cells[3].strip()), cells[5], number);
    } catch (DateTimeException e) {
      fault(number, day + " is not a date of the calendar");
    } catch (NumberFormatException e) {
      fault(number, "\"" + cells[3] + "\" is not a whole number");
    }
  }

  private void fixed(String line, int number) {
    YearMonth month;
    try {
      month =
          YearMonth.of(
              Integer.parseInt(line.substring(11, 15)), Integer.parseInt(line.substring(15, 17)));
    } catch (DateTimeException e) {
      fault(number, line.substring(11, 17) + " is not a year and month");
      return;
    }
    String element = line.substring(17, 21);
    for (int day = 1; day <= month.lengthOfMonth(); day++) {
      int at = FIRST_DAY + (day - 1) * DAY_WIDTH;
      if (line.length() < at + 5) {
        cutOff += READ.contains(element) ? month.lengthOfMonth() - day + 1 : 0;
        return;
      }
      String value = line.substring(at, at + 5).strip();
      String quality = line.length() > at + 6 ? line.substring(at + 6, at + 7).strip() : "";
      try {
        enter(
            line.substring(0, 11),
            month.atDay(day),
            element,
            Integer.parseInt(value),
            quality,
            number);
      } catch (NumberFormatException e) {
        fault(number, "\"" + value + "\" of day " + day + " is not a whole number");
      }
    }
  }

  private void enter(
      String id, LocalDate date, String element, int value, String quality, int number) {
    if (station.isEmpty()) {
      station = id;
    } else if (!station.equals(id)) {
      fault(number, "is of station " + id + ", but the file began with " + station);
      return;
    }
    if (value == MISSING) {
      return;
    }
    RawDay day = days.computeIfAbsent(date, absent -> new RawDay());
    boolean used = true;
    boolean wrong = !quality.isBlank();
    double known = wrong ? Double.NaN : value;
    switch (element) {
      case "TMIN" -> day.tminC = known / 10;
      case "TMAX" -> day.tmaxC = known / 10;
      case "PRCP" -> day.rainM = known / 10_000;
      case "AWND" -> day.windMPerS = known / 10;
      case "TSUN" -> day.sunshineHours = known / 60;
      case "ADPT" -> day.dewPointC = known / 10;
      case "RHAV" -> day.relativeMean = known / 100;
      default -> used = false;
    }
    if (used && wrong) {
      leftOut++;
    }
  }

  private void fault(int line, String message) {
    problems.add(new WeatherProblem(line, "", message));
  }
}
