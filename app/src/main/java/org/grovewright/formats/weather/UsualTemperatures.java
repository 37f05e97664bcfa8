package org.grovewright.formats.weather;

import java.util.Arrays;
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

  /** Farther from the seasons of the place than odd weather of a few years makes a mean month. */
  private static final double SEASONS_APART_C = 6;

  /** A month with fewer days says nothing of its season. */
  private static final int FEW_DAYS = 10;

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
      checkSeasons(file, days, place);
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

  /**
   * Whether the warm months of the file are those of the place, and not those of the other half of
   * the earth.
   */
  private static void checkSeasons(String file, List<DayWeather> days, Climate place) {
    double[] sum = new double[12];
    int[] count = new int[12];
    for (DayWeather day : days) {
      int month = day.date().getMonthValue() - 1;
      sum[month] += (day.tminC() + day.tmaxC()) / 2;
      count[month]++;
    }
    double[] found = new double[12];
    double[] usual = new double[12];
    for (int month = 0; month < 12; month++) {
      if (count[month] < FEW_DAYS) {
        return;
      }
      found[month] = sum[month] / count[month];
      MonthNormal normal = place.normals().get(month);
      usual[month] = (normal.tminC() + normal.tmaxC()) / 2;
    }
    double as = distance(found, usual, 0);
    double shifted = distance(found, usual, 6);
    if (as > SEASONS_APART_C && shifted < as / 2) {
      throw new WeatherFileException(
          file,
          List.of(
              new WeatherProblem(
                  0,
                  "",
                  "its warm months are the cold ones of the grove; see whether the file is of this"
                      + " place, and whether the latitude of the grove has the right sign, south"
                      + " negative")));
    }
  }

  /** Mean distance of the seasons of two years, each taken about its own mean. */
  private static double distance(double[] some, double[] other, int shift) {
    double mean = Arrays.stream(some).average().orElse(0);
    double otherMean = Arrays.stream(other).average().orElse(0);
    double sum = 0;
    for (int month = 0; month < 12; month++) {
      sum += Math.abs(some[month] - mean - (other[(month + shift) % 12] - otherMean));
    }
    return sum / 12;
  }
}
