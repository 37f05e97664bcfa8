package org.grovewright.advice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Climate.MonthNormal;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.water.Air;

/**
 * The weather from some weeks or months ago until a little beyond today, every day of it.
 *
 * <p>The days are measured as far as there are measurements, with the rain of the owner's gauge in
 * the place of the station's. Days of the series from today on are taken for a forecast. What is
 * missing has the usual temperatures of its month; rain is not counted on where it is not known, in
 * the past few days as in those to come, for too much trust in rain that did not fall costs a plant
 * and too little a few litres. Only the weeks before the measurements begin have usual rain, to
 * find a likely soil to start from.
 *
 * @param climate the days, with the normals of the place
 * @param today index of today in the days
 * @param findings what was filled in
 */
record WeatherToDate(Climate climate, int today, List<Finding> findings) {
  /** Days looked at beyond today. */
  static final int AHEAD = 14;

  /** Days that make a likely soil whatever it was before. */
  static final int RUN_UP = 60;

  /**
   * Puts the series together.
   *
   * @param normals usual weather of the place
   * @param measured days in order, of which some may be missing
   * @param windHeightM height of their wind measurements, metres
   * @param gaugeM rain by the owner's gauge, metres
   * @param date today
   * @throws IllegalArgumentException if the measurements begin after today or are out of order
   */
  static WeatherToDate of(
      Climate normals,
      List<DayWeather> measured,
      double windHeightM,
      NavigableMap<LocalDate, Double> gaugeM,
      LocalDate date) {
    if (measured.isEmpty()) {
      throw new IllegalArgumentException("there is no daily weather");
    }
    LocalDate first = measured.get(0).date();
    if (first.isAfter(date)) {
      throw new IllegalArgumentException(
          "the daily weather begins on " + first + ", after the day of the advice, " + date);
    }
    Map<LocalDate, DayWeather> known = new HashMap<>();
    LocalDate last = null;
    boolean anyRain = !gaugeM.isEmpty();
    for (DayWeather day : measured) {
      if (last != null && !day.date().isAfter(last)) {
        throw new IllegalArgumentException("the daily weather goes back at " + day.date());
      }
      last = day.date();
      known.put(last, day);
      anyRain |= day.rainM().isPresent();
    }
    LocalDate from = first;
    if (from.isAfter(date.minusDays(RUN_UP))) {
      from = date.minusDays(RUN_UP);
    }
    Usual usual = new Usual(normals, windHeightM);
    List<DayWeather> days = new ArrayList<>();
    int missing = 0;
    for (LocalDate day = from; !day.isAfter(date.plusDays(AHEAD)); day = day.plusDays(1)) {
      DayWeather weather = known.get(day);
      if (weather == null) {
        weather = usual.day(day, day.isBefore(first));
        missing += !day.isBefore(first) && day.isBefore(date) ? 1 : 0;
      }
      Double gauge = day.isAfter(date) ? null : gaugeM.get(day);
      days.add(gauge == null ? weather : weather.withRain(gauge));
    }
    return new WeatherToDate(
        new Climate(normals.normals(), days, windHeightM, normals.source()),
        (int) (date.toEpochDay() - from.toEpochDay()),
        remarks(first, last, from, date, missing, anyRain));
  }

  private static List<Finding> remarks(
      LocalDate first, LocalDate last, LocalDate from, LocalDate date, int missing, boolean rain) {
    List<Finding> findings = new ArrayList<>();
    if (from.isBefore(first)) {
      findings.add(
          Finding.of(
              "advice.short-weather",
              Severity.NOTE,
              "",
              "The weather begins only on "
                  + first
                  + "; the {0} before it are taken to have been as usual for the time of year.",
              days(first.toEpochDay() - from.toEpochDay())));
    }
    if (missing > 0) {
      findings.add(
          Finding.of(
              "advice.missing-weather",
              Severity.NOTE,
              "",
              (last.isBefore(date.minusDays(1))
                      ? "The weather ends on " + last + ". "
                      : "The weather has holes. ")
                  + "{0} before today are taken to have had the usual temperatures of the month"
                  + " and no rain but what the gauge showed.",
              days(missing)));
    }
    if (!rain) {
      findings.add(
          Finding.of(
              "advice.no-rain-known",
              Severity.NOTE,
              "",
              "Neither the weather nor the log says anything of rain, so none is counted. If it"
                  + " rained, note what the gauge showed."));
    }
    return findings;
  }

  private static Quantity days(long days) {
    return new Quantity(days * 86_400.0, Kind.DAYS);
  }

  /** Days with the usual weather of their month. */
  private record Usual(Climate normals, double windHeightM) {
    DayWeather day(LocalDate date, boolean rain) {
      MonthNormal month = normals.normals().get(date.getMonthValue() - 1);
      OptionalDouble wind = month.windMPerS();
      if (wind.isPresent()) {
        // The series has one height of wind; the normals may have been measured at another.
        double perMetre = Air.windAt2m(1, normals.windHeightM()) / Air.windAt2m(1, windHeightM);
        wind = OptionalDouble.of(wind.getAsDouble() * perMetre);
      }
      return new DayWeather(
          date,
          month.tminC(),
          month.tmaxC(),
          month.relativeHumidity(),
          month.dewPointC(),
          wind,
          month.solarWPerM2(),
          month.sunshineHours(),
          OptionalDouble.of(rain ? month.rainM().orElse(0) / date.lengthOfMonth() : 0));
    }
  }
}
