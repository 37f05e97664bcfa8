package org.grovewright.season;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.DualBalance;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.PlantSoil;

/**
 * One plant under one zone, ready to be run through the years. Each year starts with moist soil, as
 * after planting. Used by one thread.
 */
final class PlantRun {
  private final String plantId;
  private final String zone;
  private final boolean main;
  private final DailyClimate weather;
  private final PlantSeries series;
  private final List<WeatherYears.Span> spans;
  private final int[] monthOf;
  private final int waitDays;
  private final double m3PerMinute;
  private final PlantSoil soil;
  private final int[] order;

  /**
   * A plant under a zone.
   *
   * @param waitDays days of each year before the plant is set
   * @param m3PerMinute water that reaches its soil while the zone runs, m3 a minute
   */
  PlantRun(
      String plantId,
      String zone,
      boolean main,
      WeatherYears years,
      PlantSeries series,
      int waitDays,
      double m3PerMinute) {
    this.plantId = plantId;
    this.zone = zone;
    this.main = main;
    this.weather = years.daily();
    this.series = series;
    this.spans = years.spans();
    this.waitDays = waitDays;
    this.m3PerMinute = m3PerMinute;
    monthOf = ZoneSchedule.months(weather);
    soil = new PlantSoil(weather, series);
    order = new int[spans.size()];
    for (int i = 0; i < order.length; i++) {
      order[i] = i;
    }
  }

  String plantId() {
    return plantId;
  }

  double m3PerMinute() {
    return m3PerMinute;
  }

  /** Mean area of the soil its roots draw from in the first of the years, m2. */
  double meanSoilM2() {
    double sum = 0;
    WeatherYears.Span span = spans.get(0);
    for (int day = span.from(); day < span.until(); day++) {
      sum += series.soilM2(weather.slot(day));
    }
    return sum / (span.until() - span.from());
  }

  /** Whether the plant passes its limit in more than so many years. */
  boolean failsMoreThan(int most, ZoneSchedule schedule) {
    int failed = 0;
    for (int i = 0; i < order.length; i++) {
      if (fails(spans.get(order[i]), schedule)) {
        failed++;
        // A year that was too dry once is likely to be so again, and is tried earlier next time.
        int to = failed - 1;
        int year = order[i];
        order[i] = order[to];
        order[to] = year;
        if (failed > most) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean fails(WeatherYears.Span span, ZoneSchedule schedule) {
    int[] minutes = schedule.minutes();
    int[] gaps = schedule.gaps();
    soil.fill();
    int since = ZoneSchedule.LONG_AGO;
    int set = span.from() + waitDays;
    for (int day = span.from(); day < span.until(); day++) {
      int slot = weather.slot(day);
      int month = monthOf[slot];
      since++;
      double mm = 0;
      if (minutes[month] > 0 && since >= gaps[month]) {
        mm = minutes[month] * m3PerMinute * 1000 / series.soilM2(slot);
        since = 0;
      }
      if (day >= set) {
        soil.day(day, mm);
        if (soil.stressed()) {
          return true;
        }
      }
    }
    return false;
  }

  /** The plant through all years. */
  PlantHistory history(ZoneSchedule schedule) {
    List<PlantYear> years = new ArrayList<>(spans.size());
    for (WeatherYears.Span span : spans) {
      years.add(year(span, schedule, null));
    }
    return new PlantHistory(plantId, zone, main, years);
  }

  /** Runs one year and shows each day to the sink, if there is one. */
  PlantYear year(WeatherYears.Span span, ZoneSchedule schedule, Days sink) {
    soil.fill();
    DualBalance balance = soil.balance();
    int since = ZoneSchedule.LONG_AGO;
    int stressed = 0;
    int spell = 0;
    int longest = 0;
    double wanted = 0;
    double got = 0;
    double brought = 0;
    double lost = 0;
    for (int day = span.from(); day < span.until(); day++) {
      int slot = weather.slot(day);
      int month = monthOf[slot];
      since++;
      double m3 = 0;
      if (schedule.minutes()[month] > 0 && since >= schedule.gaps()[month]) {
        m3 = schedule.minutes()[month] * m3PerMinute;
        since = 0;
      }
      if (day < span.from() + waitDays) {
        lost += m3;
        continue;
      }
      double litres = series.soilM2(slot) / 1000;
      soil.day(day, m3 / litres);
      spell = soil.stressed() ? spell + 1 : 0;
      stressed += soil.stressed() ? 1 : 0;
      longest = Math.max(longest, spell);
      wanted += soil.basal() * weather.et0Mm(day) * litres;
      got += balance.transpirationMm() * litres;
      brought += m3;
      lost += balance.percolationMm() * litres;
      if (sink != null) {
        sink.day(day, m3 / litres, soil);
      }
    }
    double shortfall = wanted > 0 ? Math.max(0, 1 - got / wanted) : 0;
    return new PlantYear(span.year(), stressed, longest, shortfall, brought, lost);
  }

  /** Sees the days of a year. */
  @FunctionalInterface
  interface Days {
    /** Called after each day was moved on, with the day of the series and the irrigation in mm. */
    void day(int day, double irrigationMm, PlantSoil soil);
  }
}
