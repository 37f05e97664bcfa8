package org.grovewright.formats.description;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.formats.units.Measure;
import org.grovewright.model.Climate;

/** Reads the weather: twelve monthly normals, or the name of a file of daily values. */
final class ClimateReader {
  private static final double USUAL_WIND_HEIGHT_M = 2;
  private static final Range TEMPERATURE = new Range(-60, 60);

  private ClimateReader() {}

  static Climate read(Value value, Optional<Path> folder, DailyWeather dailyWeather) {
    Optional<Fields> found = value.fields(Section.CLIMATE);
    if (found.isEmpty()) {
      return null;
    }
    Fields fields = found.get();
    String source =
        fields
            .get("source")
            .flatMap(v -> v.text("where the numbers come from"))
            .orElse("as given by the owner");
    OptionalDouble windHeight = fields.quantity("wind_height", Measure.LENGTH, 0.5, 100);
    fields.onlyOneOf(
        List.of("months", "daily"), "the months are averaged from the daily values; keep one");
    if (fields.has("daily")) {
      Value daily = fields.get("daily").orElseThrow();
      return daily
          .text("the name of a CSV file of daily weather")
          .flatMap(
              name ->
                  daily(
                      daily,
                      name,
                      folder,
                      dailyWeather,
                      windHeight.orElse(USUAL_WIND_HEIGHT_M),
                      source))
          .orElse(null);
    }
    List<Climate.MonthNormal> normals =
        fields
            .need("months", "tmin, tmax and what else is known of the twelve months, or daily")
            .flatMap(v -> v.fields(Section.MONTHS))
            .map(months -> normals(months, fields))
            .orElse(List.of());
    return normals.size() == 12
        ? new Climate(normals, List.of(), windHeight.orElse(USUAL_WIND_HEIGHT_M), source)
        : null;
  }

  private static Optional<Climate> daily(
      Value value,
      String name,
      Optional<Path> folder,
      DailyWeather dailyWeather,
      double windHeightM,
      String source) {
    if (folder.isEmpty()) {
      value.problem("names a file, which cannot be read here; give the values under months");
      return Optional.empty();
    }
    try {
      return Optional.of(dailyWeather.read(folder.get().resolve(name), windHeightM, source));
    } catch (DescriptionException e) {
      for (Problem problem : e.problems()) {
        value.problem(problem.told(name));
      }
    } catch (java.nio.file.InvalidPathException e) {
      value.problem("is no name of a file");
    }
    return Optional.empty();
  }

  private static List<Climate.MonthNormal> normals(Fields months, Fields climate) {
    Optional<double[]> tmin =
        months
            .need("tmin", "the mean daily lowest temperature of the months")
            .flatMap(v -> v.months(Measure.TEMPERATURE, TEMPERATURE));
    Optional<double[]> tmax =
        months
            .need("tmax", "the mean daily highest temperature of the months")
            .flatMap(v -> v.months(Measure.TEMPERATURE, TEMPERATURE));
    Optional<double[]> humidity = column(months, "humidity", Measure.SHARE, 0.01, 1);
    Optional<double[]> dewPoint = column(months, "dew_point", Measure.TEMPERATURE, -60, 40);
    Optional<double[]> wind = column(months, "wind", Measure.SPEED, 0, 40);
    Optional<double[]> solar = column(months, "solar", Measure.RADIATION, 0, 500);
    Optional<double[]> sunshine = column(months, "sunshine", Measure.SUN_HOURS, 0, 24);
    Optional<double[]> rain = column(months, "rain", Measure.RAIN, 0, 5);
    if (wind.isPresent()) {
      climate.need("wind_height", "the height the wind was measured at, such as 2 m");
    }
    if (tmin.isEmpty() || tmax.isEmpty()) {
      return List.of();
    }
    List<Climate.MonthNormal> normals = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      if (tmin.get()[i] > tmax.get()[i]) {
        months.problem(
            "tmin", "contradicts tmax: the lowest of month {0} is above the highest", (i + 1));
      }
      if (dewPoint.isPresent() && dewPoint.get()[i] > tmax.get()[i]) {
        months.problem(
            "dew_point",
            "contradicts tmax: the dew point of month {0} is above the highest",
            (i + 1));
      }
      normals.add(
          new Climate.MonthNormal(
              i + 1,
              tmin.get()[i],
              tmax.get()[i],
              at(humidity, i),
              at(dewPoint, i),
              at(wind, i),
              at(solar, i),
              at(sunshine, i),
              at(rain, i)));
    }
    return normals;
  }

  private static Optional<double[]> column(
      Fields months, String key, Measure measure, double min, double max) {
    return months.get(key).flatMap(v -> v.months(measure, new Range(min, max)));
  }

  private static OptionalDouble at(Optional<double[]> column, int month) {
    return column.map(values -> OptionalDouble.of(values[month])).orElse(OptionalDouble.empty());
  }
}
