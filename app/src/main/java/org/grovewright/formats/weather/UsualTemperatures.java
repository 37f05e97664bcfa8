package org.grovewright.formats.weather;

import java.util.List;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Climate.MonthNormal;

/**
 * Asks about daily weather that cannot be that of its place, such as degrees of the other scale.
 */
public final class UsualTemperatures {
  /**
   * Farther from what is usual than any span of days of a real place; between the two scales lie 16
   * degrees or more wherever it is warmer than -20 degrees Celsius.
   */
  private static final double FARTHEST_C = 15;

  private UsualTemperatures() {}

  /**
   * Compares days with the normals of the place.
   *
   * @param file where the days were read from, for the message
   * @param days the days
   * @param place the climate of the place
   * @throws WeatherFileException if the days are so much warmer or colder that they are another
   *     scale's or another place's
   */
  public static void check(String file, List<DayWeather> days, Climate place) {
    double warmer = 0;
    double mean = 0;
    for (DayWeather day : days) {
      MonthNormal usual = place.normals().get(day.date().getMonthValue() - 1);
      double temperature = (day.tminC() + day.tmaxC()) / 2;
      mean += temperature / days.size();
      warmer += (temperature - (usual.tminC() + usual.tmaxC()) / 2) / days.size();
    }
    if (Math.abs(warmer) <= FARTHEST_C) {
      return;
    }
    String scale =
        warmer > 0
            ? "; if they are degrees Fahrenheit, name the columns tmin_f and tmax_f"
            : "; if they are degrees Celsius, name the columns tmin_c and tmax_c";
    throw new WeatherFileException(
        file,
        List.of(
            new WeatherProblem(
                0,
                "",
                "its temperatures average "
                    + Math.round(mean)
                    + " degrees Celsius, "
                    + Math.round(Math.abs(warmer))
                    + (warmer > 0 ? " above" : " below")
                    + " what is usual for those months in the grove"
                    + scale
                    + ", and otherwise see whether the file is of this place")));
  }
}
