package org.grovewright.formats.weather;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/** A kind of column and the numbers that make sense in it, in the units of the program. */
enum WeatherColumn {
  DATE(0, 0),
  MONTH(1, 12),
  TMIN(-60, 60),
  TMAX(-60, 60),
  DEW_POINT(-80, 40),
  HUMIDITY(0, 1),
  HUMIDITY_MAX(0, 1),
  HUMIDITY_MIN(0, 1),
  WIND(0, 60),
  SOLAR(0, 520),
  SUNSHINE(0, 24),
  RAIN(0, 3);

  final double least;
  final double greatest;

  WeatherColumn(double least, double greatest) {
    this.least = least;
    this.greatest = greatest;
  }

  /** Its name in a heading. */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * What a heading stands for.
   *
   * @param column the kind of column
   * @param unit unit of the file's numbers
   * @param toProgram turns the file's numbers into the program's; a straight line
   */
  record Heading(WeatherColumn column, String unit, DoubleUnaryOperator toProgram) {
    private static final Map<String, Heading> KNOWN = new LinkedHashMap<>();

    static {
      know(DATE, "", v -> v, "date");
      know(MONTH, "", v -> v, "month");
      know(TMIN, "degrees Celsius", v -> v, "tmin", "tmin_c");
      know(TMIN, "degrees Fahrenheit", Heading::celsius, "tmin_f");
      know(TMAX, "degrees Celsius", v -> v, "tmax", "tmax_c");
      know(TMAX, "degrees Fahrenheit", Heading::celsius, "tmax_f");
      know(DEW_POINT, "degrees Celsius", v -> v, "dew_point", "dew_point_c");
      know(DEW_POINT, "degrees Fahrenheit", Heading::celsius, "dew_point_f");
      know(HUMIDITY, "%", v -> v / 100, "humidity", "humidity_mean");
      know(HUMIDITY_MAX, "%", v -> v / 100, "humidity_max");
      know(HUMIDITY_MIN, "%", v -> v / 100, "humidity_min");
      know(WIND, "m/s", v -> v, "wind", "wind_m_per_s");
      know(WIND, "km/h", v -> v / 3.6, "wind_km_per_h");
      know(WIND, "mph", v -> v * 0.44704, "wind_mph");
      know(SOLAR, "MJ/m2 a day", v -> v * 1e6 / 86_400, "solar", "solar_mj_per_m2");
      know(SOLAR, "W/m2", v -> v, "solar_w_per_m2");
      know(SUNSHINE, "hours a day", v -> v, "sunshine", "sunshine_h");
      know(RAIN, "mm", v -> v / 1000, "rain", "rain_mm");
      know(RAIN, "in", v -> v * 0.0254, "rain_in");
    }

    private static void know(
        WeatherColumn column, String unit, DoubleUnaryOperator toProgram, String... words) {
      for (String word : words) {
        KNOWN.put(word, new Heading(column, unit, toProgram));
      }
    }

    /** The range of the column in the file's own unit. */
    String range() {
      double zero = toProgram.applyAsDouble(0);
      double one = toProgram.applyAsDouble(1) - zero;
      return Math.round((column.least - zero) / one)
          + " and "
          + Math.round((column.greatest - zero) / one)
          + (unit.isEmpty() ? "" : " " + unit);
    }

    private static double celsius(double fahrenheit) {
      return (fahrenheit - 32) / 1.8;
    }

    /** What a heading stands for, or null if it is none of ours. */
    static Heading of(String text) {
      String word = text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", "_");
      return KNOWN.get(word);
    }

    /** All headings that are known, in a fixed order. */
    static String all() {
      return String.join(", ", KNOWN.keySet());
    }
  }
}
