package org.grovewright.water;

import java.util.List;
import org.grovewright.quantity.Figure;

/**
 * Water of one plant over the years of the plan.
 *
 * @param plantId the plant
 * @param months January to December of the first year, then of the second and so on
 * @param maturePeak greatest monthly mean need when the plant is full-grown, m3/s
 */
public record PlantNeed(String plantId, List<MonthNeed> months, Figure maturePeak) {
  /** Copies the months. */
  public PlantNeed {
    months = List.copyOf(months);
  }

  /**
   * One month.
   *
   * @param year from 1
   * @param month 1 to 12
   */
  public MonthNeed at(int year, int month) {
    return months.get((year - 1) * 12 + month - 1);
  }

  /** The month of the greatest need in a year of the plan. */
  public MonthNeed peakOf(int year) {
    MonthNeed peak = at(year, 1);
    for (int month = 2; month <= 12; month++) {
      if (at(year, month).need().value() > peak.need().value()) {
        peak = at(year, month);
      }
    }
    return peak;
  }
}
