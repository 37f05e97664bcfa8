package org.grovewright.formats.weather;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Climate.MonthNormal;
import org.grovewright.water.Air;
import org.grovewright.water.Weather;

/** Turns a weather table into the climate of a description. */
public final class ClimateOfDays {
  private ClimateOfDays() {}

  /**
   * The climate of a table; the months of a daily table are averaged.
   *
   * @param windHeightM height of the wind measurements above ground, metres
   * @param source where the numbers come from, in the owner's words
   * @throws WeatherFileException if a month of the year is missing
   */
  public static Climate of(WeatherTable table, double windHeightM, String source) {
    List<List<WeatherTable.Row>> byMonth = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      byMonth.add(new ArrayList<>());
    }
    table.rows().forEach(row -> byMonth.get(row.month() - 1).add(row));
    List<WeatherProblem> missing = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      if (byMonth.get(i).isEmpty()) {
        missing.add(
            new WeatherProblem(
                0, "", "has no row of month " + (i + 1) + "; all twelve months must be there"));
      }
    }
    if (!missing.isEmpty()) {
      throw new WeatherFileException(table.file(), missing);
    }
    List<MonthNormal> normals = new ArrayList<>(12);
    for (int i = 0; i < 12; i++) {
      normals.add(normal(i + 1, byMonth.get(i), table.monthly()));
    }
    return new Climate(normals, days(table), windHeightM, source);
  }

  /** The days of a daily table; nothing for a monthly one. */
  public static List<DayWeather> days(WeatherTable table) {
    return table.monthly() ? List.of() : table.rows().stream().map(ClimateOfDays::day).toList();
  }

  private static MonthNormal normal(int month, List<WeatherTable.Row> rows, boolean monthly) {
    double rainPeriods =
        monthly ? 1 : java.time.Month.of(month).length(false) + (month == 2 ? 0.25 : 0);
    OptionalDouble rain = mean(rows, WeatherTable.Row::rainM);
    return new MonthNormal(
        month,
        rows.stream().mapToDouble(row -> row.weather().tminC()).average().orElseThrow(),
        rows.stream().mapToDouble(row -> row.weather().tmaxC()).average().orElseThrow(),
        mean(rows, row -> relativeMean(row.weather())),
        mean(rows, row -> dewPoint(row.weather())),
        mean(rows, row -> row.weather().windMPerS()),
        mean(rows, row -> row.weather().solarWPerM2()),
        mean(rows, row -> row.weather().sunshineHours()),
        rain.isPresent() ? OptionalDouble.of(rain.getAsDouble() * rainPeriods) : rain);
  }

  private static DayWeather day(WeatherTable.Row row) {
    Weather weather = row.weather();
    return new DayWeather(
        row.date(),
        weather.tminC(),
        weather.tmaxC(),
        relativeMean(weather),
        dewPoint(weather),
        weather.windMPerS(),
        weather.solarWPerM2(),
        weather.sunshineHours(),
        row.rainM());
  }

  private static OptionalDouble mean(
      List<WeatherTable.Row> rows, Function<WeatherTable.Row, OptionalDouble> part) {
    double sum = 0;
    int count = 0;
    for (WeatherTable.Row row : rows) {
      OptionalDouble value = part.apply(row);
      if (value.isPresent()) {
        sum += value.getAsDouble();
        count++;
      }
    }
    // A few scattered readings do not make a mean of the month.
    return count * 2 >= rows.size() && count > 0
        ? OptionalDouble.of(sum / count)
        : OptionalDouble.empty();
  }

  /** The mean humidity where nothing better is known of the day's moisture. */
  private static OptionalDouble relativeMean(Weather weather) {
    return dewPoint(weather).isPresent()
        ? OptionalDouble.empty()
        : weather.humidity().relativeMean();
  }

  /**
   * The dew point, where it is known or follows from the extremes of humidity, which the climate
   * has no place for: FAO-56 equations 17 and 18 turned into a dew point by equation 11.
   */
  private static OptionalDouble dewPoint(Weather weather) {
    Weather.Humidity humidity = weather.humidity();
    if (humidity.dewPointC().isPresent() || humidity.relativeMax().isEmpty()) {
      return humidity.dewPointC();
    }
    double atMin = Air.saturationKPa(weather.tminC());
    double max = humidity.relativeMax().getAsDouble();
    double vapour =
        humidity.relativeMin().isPresent()
            ? (atMin * max
                    + Air.saturationKPa(weather.tmaxC()) * humidity.relativeMin().getAsDouble())
                / 2
            : atMin * max;
    return vapour > 0 ? OptionalDouble.of(Air.dewPointC(vapour)) : OptionalDouble.empty();
  }
}
