package org.grovewright.start;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The weather that is usual in kinds of regions, for who has no numbers of a station at hand. */
final class UsualClimates {
  private static final int HALF_YEAR = 6;
  private static final int MONTHS = 12;

  /**
   * Means of the twelve months, January first, as north of the equator.
   *
   * @param key short name
   * @param latitudeDeg a latitude typical of it, degrees north
   * @param tmin mean daily lowest temperatures, degrees Celsius
   * @param tmax mean daily highest temperatures, degrees Celsius
   * @param rain rain, millimetres
   */
  record UsualClimate(
      String key, double latitudeDeg, List<String> tmin, List<String> tmax, List<String> rain) {}

  private final Map<String, UsualClimate> byKey;

  private UsualClimates(Map<String, UsualClimate> byKey) {
    this.byKey = Collections.unmodifiableMap(byKey);
  }

  /** The rows of the table that comes with the program. */
  static UsualClimates load() {
    Map<String, UsualClimate> rows = new LinkedHashMap<>();
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (InputStream in = UsualClimates.class.getResourceAsStream("climates.csv");
        CSVParser parser =
            CSVParser.parse(new InputStreamReader(in, StandardCharsets.UTF_8), format)) {
      for (CSVRecord row : parser) {
        rows.put(
            row.get("key"),
            new UsualClimate(
                row.get("key"),
                Double.parseDouble(row.get("latitude")),
                months(row, "tmin_c"),
                months(row, "tmax_c"),
                months(row, "rain_mm")));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new UsualClimates(rows);
  }

  private static List<String> months(CSVRecord row, String column) {
    List<String> values = List.of(row.get(column).split(" "));
    if (values.size() != MONTHS) {
      throw new IllegalStateException(row.get("key") + " needs twelve months in " + column);
    }
    return values;
  }

  Map<String, UsualClimate> byKey() {
    return byKey;
  }

  /** The kind whose typical latitude is nearest, of those that are as wet as most of the earth. */
  UsualClimate near(double latitudeDeg) {
    return byKey.values().stream()
        .filter(climate -> !climate.key().equals("dry"))
        .min(
            (a, b) ->
                Double.compare(
                    Math.abs(a.latitudeDeg() - Math.abs(latitudeDeg)),
                    Math.abs(b.latitudeDeg() - Math.abs(latitudeDeg))))
        .orElseThrow();
  }

  /** The months as they come on the half of the earth of a latitude. */
  static List<String> turned(List<String> months, double latitudeDeg) {
    return latitudeDeg < 0
        ? Stream.concat(
                months.subList(HALF_YEAR, MONTHS).stream(), months.subList(0, HALF_YEAR).stream())
            .toList()
        : months;
  }
}
