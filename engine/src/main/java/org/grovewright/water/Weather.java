package org.grovewright.water;

import java.util.OptionalDouble;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Climate.MonthNormal;

/**
 * What is known of the weather of a day or, as means, of a month.
 *
 * @param tminC minimum temperature, degrees Celsius
 * @param tmaxC maximum temperature, degrees Celsius
 * @param humidity what is known of the air's moisture
 * @param windMPerS wind speed at the measuring height, m/s
 * @param solarWPerM2 solar radiation averaged over 24 hours, W/m2
 * @param sunshineHours bright sunshine, hours per day
 */
public record Weather(
    double tminC,
    double tmaxC,
    Humidity humidity,
    OptionalDouble windMPerS,
    OptionalDouble solarWPerM2,
    OptionalDouble sunshineHours) {

  /**
   * What is known of the air's moisture; all may be unknown.
   *
   * @param dewPointC dew point, degrees Celsius
   * @param relativeMax greatest relative humidity of the day, share
   * @param relativeMin least relative humidity of the day, share
   * @param relativeMean mean relative humidity, share
   */
  public record Humidity(
      OptionalDouble dewPointC,
      OptionalDouble relativeMax,
      OptionalDouble relativeMin,
      OptionalDouble relativeMean) {
    /** Nothing known. */
    public static final Humidity UNKNOWN =
        new Humidity(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());
  }

  /** The weather of a month's normals. */
  public static Weather of(MonthNormal month) {
    return new Weather(
        month.tminC(),
        month.tmaxC(),
        moisture(month.dewPointC(), month.relativeHumidity()),
        month.windMPerS(),
        month.solarWPerM2(),
        month.sunshineHours());
  }

  /** The weather of a day. */
  public static Weather of(DayWeather day) {
    return new Weather(
        day.tminC(),
        day.tmaxC(),
        moisture(day.dewPointC(), day.relativeHumidity()),
        day.windMPerS(),
        day.solarWPerM2(),
        day.sunshineHours());
  }

  private static Humidity moisture(OptionalDouble dewPointC, OptionalDouble relativeMean) {
    return new Humidity(dewPointC, OptionalDouble.empty(), OptionalDouble.empty(), relativeMean);
  }

  /** Mean of the extreme temperatures, degrees Celsius. */
  public double tmeanC() {
    return (tminC + tmaxC) / 2;
  }
}
