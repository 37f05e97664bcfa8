package org.grovewright.water;

import org.grovewright.catalogue.Species;

/**
 * The crop coefficient of a mature stand month by month, from the four-stage curve of FAO-56
 * chapter 6: level at first, rising through development, level in mid-season, falling in the late
 * season.
 *
 * <p>The curve is kept as the mean share that each of its three levels has in a month, because the
 * levels of mid and late season move with the weather (FAO-56 equation 62).
 */
final class KcCurve {
  private static final double LEAST_ADJUSTED_END = 0.45;

  private final Species.Kc kc;
  private final double[] ini = new double[12];
  private final double[] mid = new double[12];
  private final double[] end = new double[12];
  private final double[] dailyIni = new double[365];
  private final double[] dailyMid = new double[365];
  private final double[] dailyEnd = new double[365];

  private KcCurve(Species.Kc kc) {
    this.kc = kc;
  }

  /**
   * The curve of a species.
   *
   * @param southern whether the site lies south of the equator, where the season starts six months
   *     later in the calendar
   */
  static KcCurve of(Species species, boolean southern) {
    Species.Kc kc = species.kc();
    KcCurve curve = new KcCurve(kc);
    int startMonth = southern ? (kc.startMonth() + 5) % 12 + 1 : kc.startMonth();
    int startDay = java.time.LocalDate.of(2001, startMonth, 1).getDayOfYear();
    int[] days = new int[12];
    double[] levels = new double[3];
    for (int day = 1; day <= 365; day++) {
      int month = java.time.LocalDate.ofYearDay(2001, day).getMonthValue() - 1;
      levels(kc, species.evergreen(), (day - startDay + 365) % 365, levels);
      curve.dailyIni[day - 1] = levels[0];
      curve.dailyMid[day - 1] = levels[1];
      curve.dailyEnd[day - 1] = levels[2];
      curve.ini[month] += levels[0];
      curve.mid[month] += levels[1];
      curve.end[month] += levels[2];
      days[month]++;
    }
    for (int month = 0; month < 12; month++) {
      curve.ini[month] /= days[month];
      curve.mid[month] /= days[month];
      curve.end[month] /= days[month];
    }
    return curve;
  }

  /** Shares of the initial, mid and end level on a day of the season, counted from 0. */
  private static void levels(Species.Kc kc, boolean evergreen, int day, double[] shares) {
    shares[0] = 0;
    shares[1] = 0;
    shares[2] = 0;
    int devFrom = kc.iniDays();
    int midFrom = devFrom + kc.devDays();
    int lateFrom = midFrom + kc.midDays();
    int seasonEnd = lateFrom + kc.lateDays();
    double at = day + 0.5;
    if (day < devFrom) {
      shares[0] = 1;
    } else if (day < midFrom) {
      shares[1] = (at - devFrom) / kc.devDays();
      shares[0] = 1 - shares[1];
    } else if (day < lateFrom) {
      shares[1] = 1;
    } else if (day < seasonEnd) {
      shares[2] = (at - lateFrom) / kc.lateDays();
      shares[1] = 1 - shares[2];
    } else if (evergreen) {
      // An evergreen goes on transpiring between seasons; a bare tree does not.
      shares[0] = (at - seasonEnd) / (365 - seasonEnd);
      shares[2] = 1 - shares[0];
    }
  }

  /** Share of the month in which the plant is in leaf. */
  double inLeaf(int month) {
    return ini[month - 1] + mid[month - 1] + end[month - 1];
  }

  /**
   * The basal crop coefficient of a mature stand: transpiration without evaporation from the soil.
   *
   * @param month 1 to 12
   * @param weatherShift what the weather adds to the mid and late levels
   * @param basalDifference difference between the single and the basal coefficient
   */
  double basal(int month, double weatherShift, double basalDifference) {
    int i = month - 1;
    return basal(ini[i], mid[i], end[i], weatherShift, basalDifference);
  }

  /** The same on a day of a year without leap day, 1 to 365. */
  double basalOnDay(int dayOfYear, double weatherShift, double basalDifference) {
    int i = dayOfYear - 1;
    return basal(dailyIni[i], dailyMid[i], dailyEnd[i], weatherShift, basalDifference);
  }

  private double basal(
      double iniShare,
      double midShare,
      double endShare,
      double weatherShift,
      double basalDifference) {
    double midLevel = kc.mid() + weatherShift;
    double endLevel = kc.end() >= LEAST_ADJUSTED_END ? kc.end() + weatherShift : kc.end();
    double single = iniShare * kc.ini() + midShare * midLevel + endShare * endLevel;
    return Math.max(0, single - basalDifference * (iniShare + midShare + endShare));
  }

  /**
   * What wind and dry air add to the coefficients of mid and late season; FAO-56 equation 62, with
   * wind held to 1 to 6 m/s, humidity to 20 to 80 % and height to 0.1 to 10 m as it says.
   *
   * @param u2MPerS mean wind speed at 2 m, m/s
   * @param relativeMin mean least relative humidity, share
   * @param heightM mean plant height, metres
   */
  static double weatherShift(double u2MPerS, double relativeMin, double heightM) {
    return weatherBracket(u2MPerS, relativeMin) * heightFactor(heightM);
  }

  /** The part of {@link #weatherShift} that depends on the weather. */
  static double weatherBracket(double u2MPerS, double relativeMin) {
    double u2 = Math.max(1, Math.min(6, u2MPerS));
    double humidity = 100 * Math.max(0.2, Math.min(0.8, relativeMin));
    return 0.04 * (u2 - 2) - 0.004 * (humidity - 45);
  }

  /** The part of {@link #weatherShift} that depends on the plant. */
  static double heightFactor(double heightM) {
    return Math.pow(Math.max(0.1, Math.min(10, heightM)) / 3, 0.3);
  }
}
