package org.grovewright.formats.weather;

import java.util.OptionalDouble;
import org.grovewright.model.Climate.DayWeather;

/** What a station noted of one day; NaN where it noted nothing. */
final class RawDay {
  double tminC = Double.NaN;
  double tmaxC = Double.NaN;
  double rainM = Double.NaN;
  double windMPerS = Double.NaN;
  double sunshineHours = Double.NaN;
  double dewPointC = Double.NaN;
  double relativeMean = Double.NaN;
  double solarWPerM2 = Double.NaN;

  static RawDay of(DayWeather day) {
    RawDay raw = new RawDay();
    raw.tminC = day.tminC();
    raw.tmaxC = day.tmaxC();
    raw.rainM = day.rainM().orElse(Double.NaN);
    raw.windMPerS = day.windMPerS().orElse(Double.NaN);
    raw.sunshineHours = day.sunshineHours().orElse(Double.NaN);
    raw.dewPointC = day.dewPointC().orElse(Double.NaN);
    raw.relativeMean = day.relativeHumidity().orElse(Double.NaN);
    raw.solarWPerM2 = day.solarWPerM2().orElse(Double.NaN);
    return raw;
  }

  DayWeather at(java.time.LocalDate date) {
    return new DayWeather(
        date,
        tminC,
        tmaxC,
        known(relativeMean),
        known(dewPointC),
        known(windMPerS),
        known(solarWPerM2),
        known(sunshineHours),
        known(rainM));
  }

  private static OptionalDouble known(double value) {
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
