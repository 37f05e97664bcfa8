package org.grovewright.advice;

import org.grovewright.model.Planting;
import org.grovewright.water.BalanceRun;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.DualBalance;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.RefillRule;

/**
 * The soil water of one plant along the days of the advice, from its planting or the first of the
 * days. Depths are mm over the area of its root zone.
 */
final class PlantTrack {
  private final Planting planting;
  private final DailyClimate weather;
  private final PlantSeries series;
  private final int offset;
  private final double[] start;
  private final double[] end;
  private final double[] felt;
  private final double[] limit;
  private final double[] total;
  private final double[] given;

  /**
   * A plant that has not been followed yet.
   *
   * @param weather the days from its planting on
   * @param offset index of the first of them among the days of the advice
   */
  PlantTrack(Planting planting, DailyClimate weather, PlantSeries series, int offset) {
    this.planting = planting;
    this.weather = weather;
    this.series = series;
    this.offset = offset;
    int days = weather.days();
    start = new double[days];
    end = new double[days];
    felt = new double[days];
    limit = new double[days];
    total = new double[days];
    given = new double[days];
  }

  /**
   * Follows the plant through the days.
   *
   * @param seconds time the plant's valve was open by day of the advice; shut on days beyond
   * @param usableM3PerS what reaches the roots while it is open, m3/s
   */
  void follow(double[] seconds, double usableM3PerS) {
    double[] irrigationM3 = new double[weather.days()];
    for (int i = 0; i < irrigationM3.length && i + offset < seconds.length; i++) {
      irrigationM3[i] = seconds[i + offset] * usableM3PerS;
    }
    BalanceRun.run(weather, series, BalanceRun.Watering.GIVEN, irrigationM3, this::keep);
  }

  private void keep(int day, double irrigationMm, DualBalance balance) {
    start[day] = balance.rootStartMm();
    end[day] = balance.rootMissingMm();
    felt[day] = balance.uptakeMissingMm();
    limit[day] = balance.readilyAvailableMm();
    total[day] = balance.totalAvailableMm();
    given[day] = irrigationMm;
  }

  Planting planting() {
    return planting;
  }

  /** Whether the plant stands on a day of the advice. */
  boolean isPlanted(int day) {
    return day >= offset;
  }

  /** Missing from the root zone after the rain and watering of a day, mm. */
  double startMm(int day) {
    return start[day - offset];
  }

  /** Missing at the end of a day, mm; nothing before the plant was set. */
  double endMm(int day) {
    return day < offset ? 0 : end[day - offset];
  }

  /**
   * Missing at the end of a day as the roots meet it, mm: in a young plant's root ball it may be
   * drier than in the soil around.
   */
  double feltMm(int day) {
    return felt[day - offset];
  }

  /** What may be missing before the plant begins to suffer, mm. */
  double limitMm(int day) {
    return limit[day - offset];
  }

  /** What the root zone holds in all, mm. */
  double totalMm(int day) {
    return total[day - offset];
  }

  /** Watering of a day, mm. */
  double givenMm(int day) {
    return given[day - offset];
  }

  /** Rain of a day less what ran off, mm. */
  double rainMm(int day) {
    return weather.rainMm(day - offset) - weather.runoffMm(day - offset);
  }

  /** Whether the plant has gone beyond its limit by the end of a day. */
  boolean isDry(int day) {
    return RefillRule.isDue(feltMm(day), limitMm(day));
  }

  /** How far the plant goes to its limit by the end of a day; 1 where it begins to suffer. */
  double dryness(int day) {
    double may = limitMm(day);
    return may > 0 ? feltMm(day) / may : 0;
  }

  /** Area of the root zone on a day, m2. */
  double soilM2(int day) {
    return series.soilM2(weather.slot(day - offset));
  }
}
