package org.grovewright.season;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.DualBalance;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.PlantSoil;

/**
 * One plant under one zone, ready to be run through the years. A plant that stands when a year
 * begins finds the soil as the half year before has left it, under the weather of these months and
 * the same setting of the timer; one that is set in the year finds it moist, as after watering in.
 * The first of the years has no months before it: those before its own end stand for them. Used by
 * one thread.
 */
final class PlantRun {
  /**
   * Days before a year that make its soil. What the soil held before them no longer tells: a test
   * begins them full and dry.
   */
  static final int BEFORE_DAYS = 182;

  private final String plantId;
  private final String zone;
  private final boolean main;
  private final DailyClimate weather;
  private final PlantSeries series;
  private final List<WeatherYears.Span> spans;
  private final int[] monthOf;
  private final int waitDays;
  private final boolean standing;
  private final double m3PerMinute;
  private final PlantSoil soil;
  private final int[] order;
  private int tolerated;

  /**
   * A plant under a zone.
   *
   * @param waitDays days of each year before the plant is set
   * @param standing whether it was set before the year
   * @param m3PerMinute water that reaches its soil while the zone runs, m3 a minute
   */
  PlantRun(
      String plantId,
      String zone,
      boolean main,
      WeatherYears years,
      PlantSeries series,
      int waitDays,
      boolean standing,
      double m3PerMinute) {
    this.plantId = plantId;
    this.zone = zone;
    this.main = main;
    this.weather = years.daily();
    this.series = series;
    this.spans = years.spans();
    this.waitDays = waitDays;
    this.standing = standing;
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

  /**
   * Lets so many stressed days a year pass, for a plant that no setting keeps from all of them.
   * What {@link #history} tells is not changed by it.
   */
  void tolerate(int days) {
    tolerated = days;
  }

  /** Years in which it passes its limit on more days than are tolerated. */
  int failures(ZoneSchedule schedule) {
    return (int)
        history(schedule).years().stream().filter(year -> year.stressedDays() > tolerated).count();
  }

  /** Whether the plant passes its limit, on more days than are tolerated, in more years than so. */
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
    begin(span, schedule);
    int since = ZoneSchedule.LONG_AGO;
    int stressed = 0;
    int set = span.from() + waitDays;
    for (int day = span.from(); day < span.until(); day++) {
      int slot = weather.slot(day);
      since++;
      int minutes = schedule.minutes(monthOf[slot], weather.calendarBits(day), since);
      double mm = 0;
      if (minutes > 0) {
        mm = minutes * m3PerMinute * 1000 / series.soilM2(slot);
        since = 0;
      }
      if (day >= set) {
        soil.day(day, mm);
        if (soil.stressed() && ++stressed > tolerated) {
          return true;
        }
      }
    }
    return false;
  }

  /** Leaves the soil as it is when a year begins. */
  private void begin(WeatherYears.Span span, ZoneSchedule schedule) {
    soil.fill();
    if (!standing) {
      return;
    }
    int slot = weather.slot(span.from());
    int until = span.from() >= BEFORE_DAYS ? span.from() : span.until();
    int since = ZoneSchedule.LONG_AGO;
    for (int day = Math.max(0, until - BEFORE_DAYS); day < until; day++) {
      since++;
      int minutes = schedule.minutes(monthOf[weather.slot(day)], weather.calendarBits(day), since);
      double mm = 0;
      if (minutes > 0) {
        mm = minutes * m3PerMinute * 1000 / series.soilM2(slot);
        since = 0;
      }
      soil.day(day, slot, mm);
    }
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
    begin(span, schedule);
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
      since++;
      int minutes = schedule.minutes(monthOf[slot], weather.calendarBits(day), since);
      double m3 = 0;
      if (minutes > 0) {
        m3 = minutes * m3PerMinute;
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
