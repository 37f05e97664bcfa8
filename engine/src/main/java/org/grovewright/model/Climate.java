package org.grovewright.model;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The weather to plan for.
 *
 * @param normals twelve months, January first; averaged from the daily series where one was given
 * @param daily the daily series in date order, or empty where only normals are known
 * @param windHeightM height above ground of the wind measurements, metres
 * @param source where the numbers come from, in the owner's words
 */
public record Climate(
    List<MonthNormal> normals, List<DayWeather> daily, double windHeightM, String source) {
  /**
   * Copies the lists.
   *
   * @throws IllegalArgumentException if there are not twelve months in order
   */
  public Climate {
    normals = List.copyOf(normals);
    daily = List.copyOf(daily);
    if (normals.size() != 12) {
      throw new IllegalArgumentException("climate needs twelve months, got " + normals.size());
    }
    for (int i = 0; i < 12; i++) {
      if (normals.get(i).month() != i + 1) {
        throw new IllegalArgumentException("climate months out of order at " + (i + 1));
      }
    }
  }

  /**
   * Mean weather of one month.
   *
   * @param month 1 to 12
   * @param tminC mean daily minimum temperature, degrees Celsius
   * @param tmaxC mean daily maximum temperature, degrees Celsius
   * @param relativeHumidity mean relative humidity, share
   * @param dewPointC mean dew point, degrees Celsius
   * @param windMPerS mean wind speed at the measuring height, m/s
   * @param solarWPerM2 mean solar radiation over 24 hours, W/m2
   * @param sunshineHours mean hours of bright sunshine per day
   * @param rainM rain in the whole month, metres
   */
  public record MonthNormal(
      int month,
      double tminC,
      double tmaxC,
      OptionalDouble relativeHumidity,
      OptionalDouble dewPointC,
      OptionalDouble windMPerS,
      OptionalDouble solarWPerM2,
      OptionalDouble sunshineHours,
      OptionalDouble rainM) {}

  /**
   * Weather of one day; the members are those of {@link MonthNormal}, rain being the day's.
   *
   * @param date the day
   * @param tminC minimum temperature, degrees Celsius
   * @param tmaxC maximum temperature, degrees Celsius
   * @param relativeHumidity mean relative humidity, share
   * @param dewPointC mean dew point, degrees Celsius
   * @param windMPerS mean wind speed at the measuring height, m/s
   * @param solarWPerM2 mean solar radiation over 24 hours, W/m2
   * @param sunshineHours hours of bright sunshine
   * @param rainM rain of the day, metres
   */
  public record DayWeather(
      LocalDate date,
      double tminC,
      double tmaxC,
      OptionalDouble relativeHumidity,
      OptionalDouble dewPointC,
      OptionalDouble windMPerS,
      OptionalDouble solarWPerM2,
      OptionalDouble sunshineHours,
      OptionalDouble rainM) {
    /** The same day with another amount of rain, metres. */
    public DayWeather withRain(double metres) {
      return new DayWeather(
          date,
          tminC,
          tmaxC,
          relativeHumidity,
          dewPointC,
          windMPerS,
          solarWPerM2,
          sunshineHours,
          OptionalDouble.of(metres));
    }
  }
}
