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

/** Turns daily weather into the climate of a description. */
public final class ClimateOfDays {
  private ClimateOfDays() {}

  /**
   * The climate of a series of days, whose months are averaged.
   *
   * @param file where the days were read from, for messages
   * @param windHeightM height of the wind measurements above ground, metres
   * @param source where the numbers come from, in the owner's words; what was done to fill holes is
   *     added to it
   * @throws WeatherFileException if a month of the year is missing
   */
  public static Climate of(String file, FilledSeries series, double windHeightM, String source) {
    List<List<DayWeather>> byMonth = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      byMonth.add(new ArrayList<>());
    }
    series.days().forEach(day -> byMonth.get(day.date().getMonthValue() - 1).add(day));
    List<WeatherProblem> missing = new ArrayList<>();
    List<MonthNormal> normals = new ArrayList<>(12);
    for (int month = 1; month <= 12; month++) {
      List<DayWeather> days = byMonth.get(month - 1);
      if (days.isEmpty()) {
        missing.add(
            new WeatherProblem(
                0, "", "has no day of month " + month + "; all twelve months must be there"));
      } else {
        normals.add(normal(month, days));
      }
    }
    if (!missing.isEmpty()) {
      throw new WeatherFileException(file, missing);
    }
    String remarks = series.remarks();
    return new Climate(
        normals,
        series.days(),
        windHeightM,
        remarks.isEmpty() ? source : source + " (" + remarks + ")");
  }

  /** The days of a daily table; nothing for a monthly one. */
  public static List<DayWeather> days(WeatherTable table) {
    return table.monthly() ? List.of() : table.rows().stream().map(ClimateOfDays::day).toList();
  }

  private static MonthNormal normal(int month, List<DayWeather> days) {
    double length = java.time.Month.of(month).length(false) + (month == 2 ? 0.25 : 0);
    OptionalDouble rain = mean(days, DayWeather::rainM);
    return new MonthNormal(
        month,
        days.stream().mapToDouble(DayWeather::tminC).average().orElseThrow(),
        days.stream().mapToDouble(DayWeather::tmaxC).average().orElseThrow(),
        mean(days, DayWeather::relativeHumidity),
        mean(days, DayWeather::dewPointC),
        mean(days, DayWeather::windMPerS),
        mean(days, DayWeather::solarWPerM2),
        mean(days, DayWeather::sunshineHours),
        rain.isPresent() ? OptionalDouble.of(rain.getAsDouble() * length) : rain);
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
      List<DayWeather> days, Function<DayWeather, OptionalDouble> part) {
    double sum = 0;
    int count = 0;
    for (DayWeather day : days) {
      OptionalDouble value = part.apply(day);
      if (value.isPresent()) {
        sum += value.getAsDouble();
        count++;
      }
    }
    // A few scattered readings do not make a mean of the month.
    return count * 2 >= days.size() && count > 0
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
