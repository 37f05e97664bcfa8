package org.grovewright.water;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Climate.MonthNormal;

/**
 * Draws days of weather whose monthly means are those of given normals, where no daily series is
 * known; the same seed draws the same days.
 *
 * <p>Wet and dry days follow a Markov chain of first order and the rain of a wet day a gamma
 * distribution, with the relations of Geng, Penning de Vries and Supit (1986), Agricultural and
 * Forest Meteorology 36. Temperatures depart from their normals as a first-order autoregressive
 * series after Richardson (1981), Water Resources Research 17. How much falls on a wet day, which
 * the normals do not say, and the spread and memory of temperature are the catalogue's.
 */
public final class WeatherGenerator {
  private static final double MOST_WET_DAYS = 0.85;

  private final Climate normals;
  private final Random random;
  private final double rainPerWetDayMm;
  private final double deviationC;
  private final double memory;

  private WeatherGenerator(Climate normals, Catalogue catalogue, long seed) {
    this.normals = normals;
    this.random = new Random(seed);
    rainPerWetDayMm = catalogue.constant("water.rain-per-wet-day").value() * 1000;
    deviationC = catalogue.constant("water.temperature-deviation").value();
    memory = catalogue.constant("water.temperature-memory").value();
  }

  /**
   * Whole calendar years of days.
   *
   * @param normals the normals; its daily series, if it has one, is not looked at
   * @param firstYear first calendar year
   * @param years how many years, at least 1
   * @param seed draws the days
   */
  public static List<DayWeather> days(
      Climate normals, Catalogue catalogue, int firstYear, int years, long seed) {
    return new WeatherGenerator(normals, catalogue, seed).draw(firstYear, years);
  }

  private List<DayWeather> draw(int firstYear, int years) {
    List<DayWeather> days = new ArrayList<>(years * 366);
    LocalDate end = LocalDate.of(firstYear + years, 1, 1);
    boolean wet = false;
    double departure = random.nextGaussian();
    for (LocalDate day = LocalDate.of(firstYear, 1, 1); day.isBefore(end); day = day.plusDays(1)) {
      MonthNormal month = normals.normals().get(day.getMonthValue() - 1);
      double rainMm = month.rainM().orElse(0) * 1000;
      double length = Months.meanDays(day.getMonthValue());
      double wetShare = Math.min(MOST_WET_DAYS, rainMm / rainPerWetDayMm / length);
      // A wet spell must not run on into a month that never has rain.
      wet = random.nextDouble() < chanceOfRain(wetShare, wet) && wetShare > 0;
      double perWetDay = wetShare > 0 ? rainMm / length / wetShare : 0;
      double fallMm = wet ? gamma(perWetDay) : 0;
      departure = memory * departure + Math.sqrt(1 - memory * memory) * random.nextGaussian();
      double shift = deviationC * departure;
      days.add(
          new DayWeather(
              day,
              month.tminC() + shift,
              month.tmaxC() + shift,
              month.relativeHumidity(),
              month.dewPointC().isPresent()
                  ? OptionalDouble.of(month.dewPointC().getAsDouble() + shift)
                  : OptionalDouble.empty(),
              month.windMPerS(),
              month.solarWPerM2(),
              month.sunshineHours(),
              month.rainM().isPresent()
                  ? OptionalDouble.of(fallMm / 1000)
                  : OptionalDouble.empty()));
    }
    return days;
  }

  /**
   * Chance of a wet day after a wet or a dry one; Geng and others (1986): 0.75 of the share of wet
   * days after a dry day, and 0.25 more after a wet one, which keeps that share.
   */
  static double chanceOfRain(double wetShare, boolean wetBefore) {
    double afterDry = 0.75 * wetShare;
    return wetBefore ? 0.25 + afterDry : afterDry;
  }

  /**
   * Rain of a wet day, mm, gamma distributed about its mean, with the scale of Geng and others
   * (1986), -2.16 + 1.83 times the mean; below means of 1.6 mm, where that loses its sense, half
   * the mean.
   */
  private double gamma(double meanMm) {
    double scale = Math.max(0.5 * meanMm, -2.16 + 1.83 * meanMm);
    return scale * standardGamma(meanMm / scale);
  }

  /** Marsaglia and Tsang (2000), ACM Transactions on Mathematical Software 26. */
  private double standardGamma(double shape) {
    if (shape < 1) {
      // Theirs is for shapes from 1 on; below, they draw one higher and scale.
      double u = 1 - random.nextDouble();
      return standardGamma(shape + 1) * StrictMath.pow(u, 1 / shape);
    }
    double d = shape - 1.0 / 3;
    double c = 1 / Math.sqrt(9 * d);
    while (true) {
      double x = random.nextGaussian();
      double v = 1 + c * x;
      if (v > 0) {
        v = v * v * v;
        double u = 1 - random.nextDouble();
        if (StrictMath.log(u) < 0.5 * x * x + d - d * v + d * StrictMath.log(v)) {
          return d * v;
        }
      }
    }
  }
}
