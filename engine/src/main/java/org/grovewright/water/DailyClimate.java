package org.grovewright.water;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Site;
import org.grovewright.model.WateringDays;

/**
 * A daily weather series made ready for the water balance: plain numbers by day, shared by all
 * plants.
 */
public final class DailyClimate {
  private static final double MM_PER_INCH = 25.4;

  private final LocalDate first;
  private final double[] et0Mm;
  private final double[] rainMm;
  private final double[] runoffMm;
  private final double[] limitShift;
  private final int[] dayOfYear;
  private final int[] slot;
  private final short[] calendarBits;

  private DailyClimate(LocalDate first, int days) {
    this.first = first;
    et0Mm = new double[days];
    rainMm = new double[days];
    runoffMm = new double[days];
    limitShift = new double[days];
    dayOfYear = new int[days];
    slot = new int[days];
    calendarBits = new short[days];
  }

  /**
   * The daily series of a climate. Where no rain is known of a day, none is counted.
   *
   * @param arid whether the climate is dry, see {@link ClimateEt#arid}
   * @throws IllegalArgumentException if there is no series or a day is missing from it
   */
  public static DailyClimate of(Site site, Climate climate, boolean arid, Catalogue catalogue) {
    List<DayWeather> days = climate.daily();
    if (days.isEmpty()) {
      throw new IllegalArgumentException("the climate has no daily weather");
    }
    EtSettings settings =
        EtSettings.of(site.latitudeDeg(), site.elevationM(), climate.windHeightM(), catalogue);
    settings = arid ? settings.arid(catalogue) : settings;
    double curveNumber = catalogue.constant("water.curve-number").value();
    DailyClimate series = new DailyClimate(days.get(0).date(), days.size());
    for (int i = 0; i < days.size(); i++) {
      DayWeather day = days.get(i);
      LocalDate date = series.first.plusDays(i);
      if (!day.date().equals(date)) {
        throw new IllegalArgumentException("the daily weather has no " + date);
      }
      ReferenceEt et = ReferenceEt.daily(settings, date.getDayOfYear(), Weather.of(day));
      double rain = day.rainM().orElse(0) * 1000;
      series.set(
          i,
          date,
          et.et0MmPerDay(),
          rain,
          runoffMm(rain, curveNumber),
          KcCurve.weatherBracket(et.u2MPerS(), et.relativeMin(day.tmaxC())));
    }
    return series;
  }

  private void set(int i, LocalDate date, double et0, double rain, double runoff, double bracket) {
    et0Mm[i] = et0;
    rainMm[i] = rain;
    runoffMm[i] = runoff;
    limitShift[i] = bracket;
    // The season of a plant has no leap day: the last day of a leap year repeats the one before.
    dayOfYear[i] = Math.min(365, date.getDayOfYear());
    calendarBits[i] = (short) WateringDays.bitsOf(date);
    slot[i] =
        12 * (date.getYear() - first.getYear()) + date.getMonthValue() - first.getMonthValue();
  }

  /**
   * Runoff of a day's rain by the curve number; USDA National Engineering Handbook part 630 chapter
   * 10.
   */
  static double runoffMm(double rainMm, double curveNumber) {
    double retention = MM_PER_INCH * (1000 / curveNumber - 10);
    double abstraction = 0.2 * retention;
    if (rainMm <= abstraction) {
      return 0;
    }
    double beyond = rainMm - abstraction;
    return beyond * beyond / (beyond + retention);
  }

  /** Days of the series. */
  public int days() {
    return et0Mm.length;
  }

  /** Months of the series, the first and last counted whole. */
  public int months() {
    return slot[slot.length - 1] + 1;
  }

  /** The date of a day counted from 0. */
  public LocalDate date(int day) {
    return first.plusDays(day);
  }

  /** The calendar month of a month of the series counted from 0. */
  public YearMonth month(int at) {
    return YearMonth.from(first).plusMonths(at);
  }

  /** The month of the series, counted from 0, that a day belongs to. */
  public int slot(int day) {
    return slot[day];
  }

  /** A day's place in the week and the month, see {@link WateringDays#bitsOf}. */
  public int calendarBits(int day) {
    return calendarBits[day];
  }

  /** Reference evapotranspiration of a day, mm. */
  public double et0Mm(int day) {
    return et0Mm[day];
  }

  /** Rain of a day, mm. */
  public double rainMm(int day) {
    return rainMm[day];
  }

  /** Runoff of a day, mm. */
  public double runoffMm(int day) {
    return runoffMm[day];
  }

  /** Day of a year without leap day, 1 to 365. */
  public int dayOfYear(int day) {
    return dayOfYear[day];
  }

  /** What wind and dry air add to the limit of the crop coefficient of a plant of 3 m. */
  public double limitShift(int day) {
    return limitShift[day];
  }
}
