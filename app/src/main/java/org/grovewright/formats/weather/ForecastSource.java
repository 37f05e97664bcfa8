package org.grovewright.formats.weather;

import java.util.List;
import org.grovewright.model.Climate.DayWeather;

/** Where the weather of the coming days is asked for. */
public interface ForecastSource {
  /**
   * The coming days at a place, in order.
   *
   * @param latitudeDeg latitude, degrees, south negative
   * @param longitudeDeg longitude, degrees, west negative
   * @throws ForecastException if no forecast could be had
   */
  List<DayWeather> days(double latitudeDeg, double longitudeDeg);
}
