package org.grovewright.formats.weather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import org.grovewright.model.Climate.DayWeather;

/**
 * Fills the holes of a daily series. A hole of a few days in a temperature is bridged by a straight
 * line; a longer one, and any in the rain, takes the same day of the nearest year that has it, so
 * that rain keeps falling in showers. Wind, humidity, radiation and sunshine stay unknown where
 * they were: their place is taken when evapotranspiration is found.
 */
final class GapFilling {
  /** Longest hole that is bridged; weather rarely keeps its course for longer. */
  private static final int BRIDGED_DAYS = 5;

  private final String file;
  private final NavigableMap<LocalDate, RawDay> raw;
  private final int leftOut;
  private int swapped;
  private int interpolated;
  private int borrowed;
  private int rainBorrowed;

  private GapFilling(String file, NavigableMap<LocalDate, RawDay> raw, int leftOut) {
    this.file = file;
    this.raw = raw;
    this.leftOut = leftOut;
  }

  /**
   * Fills a series; the days given are changed.
   *
   * @param leftOut values already left out, for the remarks
   * @throws WeatherFileException if there is no day with both temperatures or a hole cannot be
   *     filled
   */
  static FilledSeries of(String file, NavigableMap<LocalDate, RawDay> raw, int leftOut) {
    return new GapFilling(file, raw, leftOut).fill();
  }

  private FilledSeries fill() {
    trim();
    LocalDate first = raw.firstKey();
    LocalDate last = raw.lastKey();
    for (RawDay day : raw.values()) {
      if (day.tminC > day.tmaxC) {
        double low = day.tmaxC;
        day.tmaxC = day.tminC;
        day.tminC = low;
        swapped++;
      }
    }
    List<RawDay> days = new ArrayList<>();
    for (LocalDate date = first; !date.isAfter(last); date = date.plusDays(1)) {
      days.add(raw.computeIfAbsent(date, absent -> new RawDay()));
    }
    double[] tmin = days.stream().mapToDouble(day -> day.tminC).toArray();
    double[] tmax = days.stream().mapToDouble(day -> day.tmaxC).toArray();
    temperatures(tmin, first, "lowest");
    temperatures(tmax, first, "highest");
    double[] rain = days.stream().mapToDouble(day -> day.rainM).toArray();
    rain(rain, first);
    List<DayWeather> filled = new ArrayList<>(days.size());
    for (int i = 0; i < tmin.length; i++) {
      RawDay day = days.get(i);
      // A bridged low may come to lie above a measured high.
      day.tminC = Math.min(tmin[i], tmax[i]);
      day.tmaxC = Math.max(tmin[i], tmax[i]);
      day.rainM = rain[i];
      filled.add(day.at(first.plusDays(i)));
    }
    return new FilledSeries(filled, leftOut, 0, swapped, interpolated, borrowed, rainBorrowed);
  }

  /** Leaves out what comes before the first and after the last day with both temperatures. */
  private void trim() {
    raw.values().removeIf(GapFilling::isEmpty);
    while (!raw.isEmpty() && !hasBoth(raw.firstEntry().getValue())) {
      raw.pollFirstEntry();
    }
    while (!raw.isEmpty() && !hasBoth(raw.lastEntry().getValue())) {
      raw.pollLastEntry();
    }
    if (raw.isEmpty()) {
      throw failure("has no day with both a lowest and a highest temperature");
    }
  }

  private static boolean isEmpty(RawDay day) {
    return Double.isNaN(day.tminC) && Double.isNaN(day.tmaxC) && Double.isNaN(day.rainM);
  }

  private static boolean hasBoth(RawDay day) {
    return !Double.isNaN(day.tminC) && !Double.isNaN(day.tmaxC);
  }

  private void temperatures(double[] values, LocalDate first, String which) {
    double[] measured = values.clone();
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(measured[i])) {
        continue;
      }
      int end = i;
      while (Double.isNaN(measured[end])) {
        end++;
      }
      int length = end - i;
      for (int k = i; k < end; k++) {
        if (length <= BRIDGED_DAYS) {
          double share = (k - i + 1.0) / (length + 1);
          values[k] = measured[i - 1] + share * (measured[end] - measured[i - 1]);
          interpolated++;
        } else {
          values[k] = nearestYear(measured, first, k);
          borrowed++;
        }
        if (Double.isNaN(values[k])) {
          throw failure(
              "has no "
                  + which
                  + " temperature from "
                  + first.plusDays(i)
                  + " to "
                  + first.plusDays(end - 1)
                  + ", which is too long to bridge, and no other year has those days");
        }
      }
      i = end;
    }
  }

  private void rain(double[] values, LocalDate first) {
    double[] measured = values.clone();
    for (int i = 0; i < values.length; i++) {
      if (Double.isNaN(measured[i])) {
        values[i] = nearestYear(measured, first, i);
        rainBorrowed += Double.isNaN(values[i]) ? 0 : 1;
      }
    }
  }

  /** The value of the same calendar day in the nearest year that has it, or NaN. */
  private static double nearestYear(double[] measured, LocalDate first, int at) {
    LocalDate date = first.plusDays(at);
    LocalDate last = first.plusDays(measured.length - 1);
    int most = last.getYear() - first.getYear();
    for (int years = 1; years <= most; years++) {
      for (int sign = -1; sign <= 1; sign += 2) {
        // A leap day becomes the 28th in other years.
        LocalDate other = date.plusYears((long) sign * years);
        if (!other.isBefore(first) && !other.isAfter(last)) {
          int day = (int) java.time.temporal.ChronoUnit.DAYS.between(first, other);
          if (!Double.isNaN(measured[day])) {
            return measured[day];
          }
        }
      }
    }
    return Double.NaN;
  }

  private WeatherFileException failure(String message) {
    return new WeatherFileException(file, List.of(new WeatherProblem(0, "", message)));
  }
}
