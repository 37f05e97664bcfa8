package org.grovewright.irrigation;

import java.util.List;
import org.grovewright.water.WaterNeeds;

/**
 * Water that a zone must be given beyond the need of its plants. One valve runs all of them for the
 * same time, and that time must be long enough for the plant served worst, its emitters taken at
 * the low end of what the maker turns out.
 */
final class Overwatering {
  private static final double MONTH_S = 365.25 / 12 * 86_400;

  private final double[][] needM3PerS;
  private final double efficiency;

  /**
   * For given needs.
   *
   * @param needM3PerS need of each plant of the grove in each of the twelve months
   * @param efficiency share of the water from emitters that roots can use
   */
  Overwatering(double[][] needM3PerS, double efficiency) {
    this.needM3PerS = needM3PerS;
    this.efficiency = efficiency;
  }

  /** For the needs of one year of the plan. */
  static Overwatering of(WaterNeeds needs, int year, double efficiency) {
    double[][] months = new double[needs.plants().size()][12];
    for (int p = 0; p < months.length; p++) {
      for (int m = 0; m < 12; m++) {
        months[p][m] = needs.plants().get(p).at(year, m + 1).need().value();
      }
    }
    return new Overwatering(months, efficiency);
  }

  /**
   * A plant with what its emitters give.
   *
   * @param plant index in the grove
   * @param flowM3PerS flow of all its emitters
   * @param spread share of that flow which it gets at least, however the emitters were made
   */
  record Flow(int plant, double flowM3PerS, double spread) {}

  /** Need of a plant by month, m3/s. */
  double[] needs(int plant) {
    return needM3PerS[plant].clone();
  }

  /** Water that leaves the supply in a month for a flow of 1 m3/s that roots can use, m3. */
  double monthM3() {
    return MONTH_S / efficiency;
  }

  /**
   * Water in excess in a year, m3. A plant that no water reaches is left out: no run time would
   * help it.
   */
  double perYearM3(List<Flow> zone) {
    double all = zone.stream().mapToDouble(Flow::flowM3PerS).sum();
    double excess = 0;
    for (int m = 0; m < 12; m++) {
      double share = 0;
      double needed = 0;
      for (Flow flow : zone) {
        double need = needM3PerS[flow.plant()][m];
        if (need > 0 && flow.flowM3PerS() > 0) {
          share = Math.max(share, need / (flow.spread() * flow.flowM3PerS()));
          needed += need;
        }
      }
      excess += (share * all - needed) / efficiency * MONTH_S;
    }
    return excess;
  }

  /** Share of a day that a zone runs in a month so that each plant gets its need. */
  double runShare(List<Flow> zone, int month) {
    double share = 0;
    for (Flow flow : zone) {
      double need = needM3PerS[flow.plant()][month - 1];
      if (need > 0 && flow.flowM3PerS() > 0) {
        share = Math.max(share, need / (flow.flowM3PerS() * efficiency));
      }
    }
    return share;
  }
}
