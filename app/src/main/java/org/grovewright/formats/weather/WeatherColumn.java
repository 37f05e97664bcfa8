package org.grovewright.formats.weather;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/** A kind of column and the numbers that make sense in it, in the units of the program. */
enum WeatherColumn {
  DATE(0, 0, ""),
  MONTH(1, 12, ""),
  TMIN(-60, 60, "degrees Celsius"),
  TMAX(-60, 60, "degrees Celsius"),
  DEW_POINT(-80, 40, "degrees Celsius"),
  HUMIDITY(0, 1, "of 1 (0 to 100 %)"),
  HUMIDITY_MAX(0, 1, "of 1 (0 to 100 %)"),
  HUMIDITY_MIN(0, 1, "of 1 (0 to 100 %)"),
  WIND(0, 60, "m/s"),
  SOLAR(0, 520, "W/m2 (45 MJ/m2 a day)"),
  SUNSHINE(0, 24, "hours a day"),
  RAIN(0, 3, "m");

  final double least;
  final double greatest;
  final String unit;

  WeatherColumn(double least, double greatest, String unit) {
    this.least = least;
    this.greatest = greatest;
    this.unit = unit;
  }

  /** Its name in a heading. */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * What a heading stands for.
   *
   * @param column the kind of column
   * @param toProgram turns the file's numbers into the program's
   */
  record Heading(WeatherColumn column, DoubleUnaryOperator toProgram) {
    private static final Map<String, Heading> KNOWN = new LinkedHashMap<>();

    static {
      know(DATE, v -> v, "date");
      know(MONTH, v -> v, "month");
      know(TMIN, v -> v, "tmin", "tmin_c");
      know(TMIN, Heading::celsius, "tmin_f");
      know(TMAX, v -> v, "tmax", "tmax_c");
      know(TMAX, Heading::celsius, "tmax_f");
      know(DEW_POINT, v -> v, "dew_point", "dew_point_c");
      know(DEW_POINT, Heading::celsius, "dew_point_f");
      know(HUMIDITY, v -> v / 100, "humidity", "humidity_mean");
      know(HUMIDITY_MAX, v -> v / 100, "humidity_max");
      know(HUMIDITY_MIN, v -> v / 100, "humidity_min");
      know(WIND, v -> v, "wind", "wind_m_per_s");
      know(WIND, v -> v / 3.6, "wind_km_per_h");
      know(WIND, v -> v * 0.44704, "wind_mph");
      know(SOLAR, v -> v * 1e6 / 86_400, "solar", "solar_mj_per_m2");
      know(SOLAR, v -> v, "solar_w_per_m2");
      know(SUNSHINE, v -> v, "sunshine", "sunshine_h");
      know(RAIN, v -> v / 1000, "rain", "rain_mm");
      know(RAIN, v -> v * 0.0254, "rain_in");
    }

    private static void know(WeatherColumn column, DoubleUnaryOperator toProgram, String... words) {
      for (String word : words) {
        KNOWN.put(word, new Heading(column, toProgram));
      }
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
