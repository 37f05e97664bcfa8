package org.grovewright.season;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Climate;
import org.grovewright.model.Grove;
import org.grovewright.water.ClimateEt;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.WeatherGenerator;

/**
 * Years of daily weather, each running from the month in which the plan starts.
 *
 * @param daily the days
 * @param spans the whole years in order, at least one
 * @param drawn whether the days were drawn from monthly normals, for want of daily weather
 */
public record WeatherYears(DailyClimate daily, List<Span> spans, boolean drawn) {
  /** What the days are drawn with, so that the same grove has the same years. */
  private static final long SEED = 1;

  /** Copies the spans. */
  public WeatherYears {
    spans = List.copyOf(spans);
  }

  /**
   * One year.
   *
   * @param year calendar year in which it begins
   * @param from its first day in the series
   * @param until the day after its last
   */
  public record Span(int year, int from, int until) {}

  /**
   * The years of a grove's daily weather or, where it has none, years drawn from its normals.
   *
   * @param years how many, the latest where there are more; 0 for all there are, or as many drawn
   *     as the catalogue says
   * @throws IllegalArgumentException if the daily weather has no whole year from the month of the
   *     start
   */
  public static WeatherYears of(Grove grove, Catalogue catalogue, ClimateEt et, int years) {
    int month = grove.start().getMonthValue();
    Climate climate = grove.climate();
    boolean drawn = climate.daily().isEmpty();
    int wanted =
        drawn && years == 0
            ? (int) catalogue.constant("season.weather-years").value()
            : years == 0 ? Integer.MAX_VALUE : years;
    if (drawn) {
      // A year that begins in spring ends in the next, so one more calendar year is drawn.
      int calendarYears = month == 1 ? wanted : wanted + 1;
      climate =
          new Climate(
              climate.normals(),
              WeatherGenerator.days(
                  climate, catalogue, grove.start().getYear(), calendarYears, SEED),
              climate.windHeightM(),
              climate.source());
    }
    DailyClimate daily = DailyClimate.of(grove.site(), climate, et.arid(), catalogue);
    List<Span> spans = spans(daily, month);
    if (spans.isEmpty()) {
      throw new IllegalArgumentException(
          "the daily weather must hold at least one whole year from the month in which the plan"
              + " starts");
    }
    int from = Math.max(0, spans.size() - wanted);
    return new WeatherYears(daily, spans.subList(from, spans.size()), drawn);
  }

  /** The year with the greatest excess of what the air asks over what rain brings. */
  public Span driest() {
    Span driest = spans.get(0);
    double most = Double.NEGATIVE_INFINITY;
    for (Span span : spans) {
      double excess = 0;
      for (int day = span.from(); day < span.until(); day++) {
        excess += daily.et0Mm(day) - daily.rainMm(day);
      }
      if (excess > most) {
        most = excess;
        driest = span;
      }
    }
    return driest;
  }

  private static List<Span> spans(DailyClimate daily, int month) {
    List<Span> spans = new ArrayList<>();
    int begun = -1;
    for (int day = 0; day <= daily.days(); day++) {
      LocalDate date = daily.date(day);
      if (date.getMonthValue() == month && date.getDayOfMonth() == 1) {
        if (begun >= 0) {
          spans.add(new Span(daily.date(begun).getYear(), begun, day));
        }
        begun = day;
      }
    }
    return spans;
  }
}
