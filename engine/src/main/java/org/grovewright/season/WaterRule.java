package org.grovewright.season;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.model.Grove;
import org.grovewright.model.WateringDays;

/**
 * What may be drawn, and when; infinite where there is no limit.
 *
 * @param dailyM3 most water in a day, m3
 * @param weeklyM3 most water in any seven days, m3
 * @param days days on which water may run
 */
public record WaterRule(double dailyM3, double weeklyM3, WateringDays days) {
  private static final double ROUNDING = 1 + 1e-9;

  /** The rule of a grove's supply. */
  public static WaterRule of(Grove grove) {
    return new WaterRule(
        grove.supply().dailyLimitM3().orElse(Double.POSITIVE_INFINITY),
        grove.supply().weeklyLimitM3().orElse(Double.POSITIVE_INFINITY),
        grove.supply().allowedDays());
  }

  /** Whether days or a volume a week are prescribed, as in a drought. */
  public boolean restricts() {
    return weeklyM3 < Double.POSITIVE_INFINITY || !days.any();
  }

  /** Whether seven days never draw more than is allowed. */
  boolean allowsWeek(List<WeekDraw.Load> loads) {
    return weeklyM3 == Double.POSITIVE_INFINITY || WeekDraw.most(loads) <= weeklyM3 * ROUNDING;
  }

  /** Share of the water of some loads that may be drawn, at most 1; all may fall on one day. */
  double share(List<WeekDraw.Load> loads) {
    double most = 0;
    for (int month = 0; month < 12; month++) {
      double sum = 0;
      for (WeekDraw.Load load : loads) {
        sum += load.m3()[month];
      }
      most = Math.max(most, sum);
    }
    double week = WeekDraw.most(loads);
    return Math.min(1, Math.min(most > 0 ? dailyM3 / most : 1, week > 0 ? weeklyM3 / week : 1));
  }

  /** Loads with those of others, which are drawn to a share. */
  static List<WeekDraw.Load> with(
      List<WeekDraw.Load> some, List<WeekDraw.Load> others, double share) {
    List<WeekDraw.Load> all = new ArrayList<>(some);
    others.forEach(load -> all.add(load.times(share)));
    return all;
  }
}
