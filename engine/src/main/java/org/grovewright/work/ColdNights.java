package org.grovewright.work;

import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;

/** How cold the nights of a month get and what a young plant stands. */
final class ColdNights {
  private ColdNights() {}

  /**
   * The coldest night to expect in a month, degrees Celsius: the coldest of the daily series where
   * there is one, else the mean daily minimum less a fixed allowance.
   */
  static double lowest(Climate climate, int month, Catalogue catalogue) {
    double lowest = Double.POSITIVE_INFINITY;
    for (DayWeather day : climate.daily()) {
      if (day.date().getMonthValue() == month) {
        lowest = Math.min(lowest, day.tminC());
      }
    }
    return Double.isInfinite(lowest)
        ? climate.normals().get(month - 1).tminC()
            - catalogue.constant("care.cold-night-below-mean").value()
        : lowest;
  }

  /** The temperature a young plant stands, degrees Celsius. */
  static double youngLimit(Species species, Catalogue catalogue) {
    return species.coldLimitC() + catalogue.constant("care.young-plant-tenderness").value();
  }
}
