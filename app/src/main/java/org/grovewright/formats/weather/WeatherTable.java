package org.grovewright.formats.weather;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.grovewright.water.Weather;

/**
 * A weather file as read.
 *
 * @param file its name
 * @param monthly whether its rows are means of months rather than days
 * @param rows its rows in the order of the file, which is that of time
 * @param ignored headings of columns that were not used
 */
public record WeatherTable(String file, boolean monthly, List<Row> rows, List<String> ignored) {
  /** Copies the lists. */
  public WeatherTable {
    rows = List.copyOf(rows);
    ignored = List.copyOf(ignored);
  }

  /**
   * A day or a month.
   *
   * @param line line of the file
   * @param date the day, or the first of the month in some year for a monthly mean
   * @param weather its weather
   * @param rainM rain of the day or month, metres
   */
  public record Row(int line, LocalDate date, Weather weather, OptionalDouble rainM) {
    /** The month, 1 to 12. */
    public int month() {
      return date.getMonthValue();
    }
  }
}
