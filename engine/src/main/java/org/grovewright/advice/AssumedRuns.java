package org.grovewright.advice;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.water.NeedWatering;

/**
 * How long the valve of a zone was open on each day: as noted where it was noted, and as the timer
 * card says where not. The timer's cycle is counted on from the last watering or skipped watering,
 * so who notes every watering is never credited with others.
 */
final class AssumedRuns {
  private final String zone;
  private final LocalDate start;
  private final Map<Integer, TimerSetting> settings = new HashMap<>();
  private final Map<LocalDate, Double> noted = new HashMap<>();
  private double[] seconds = {};
  private final List<Integer> assumed = new ArrayList<>();

  /**
   * The runs of a zone.
   *
   * @param start first day on which the timer runs
   * @param flowM3PerS flow of the zone, m3/s
   */
  AssumedRuns(String zone, Programme programme, WaterLog log, LocalDate start, double flowM3PerS) {
    this.zone = zone;
    this.start = start;
    for (TimerSetting setting : programme.settings()) {
      if (setting.zone().equals(zone)) {
        settings.put(setting.year() * 12 + setting.month(), setting);
      }
    }
    for (WaterLog.Run run : log.runs()) {
      if (run.isOf(zone)) {
        noted.merge(run.date(), run.secondsAt(flowM3PerS), Double::sum);
      }
    }
  }

  /** The timer's setting on a day. */
  TimerSetting setting(LocalDate date) {
    int year = NeedWatering.planYear(YearMonth.from(start), YearMonth.from(date));
    TimerSetting setting = settings.get(year * 12 + date.getMonthValue());
    if (setting == null) {
      throw new IllegalArgumentException("the timer has no setting of zone " + zone);
    }
    return setting;
  }

  /**
   * Fills in the days from the first until today; {@link #seconds} and {@link #assumedDays} can be
   * read then. Nothing is assumed of today: that is what is being asked.
   */
  void fill(LocalDate first, LocalDate today) {
    seconds = new double[(int) (today.toEpochDay() - first.toEpochDay()) + 1];
    assumed.clear();
    LocalDate last = null;
    for (int i = 0; i < seconds.length; i++) {
      LocalDate date = first.plusDays(i);
      Double note = noted.get(date);
      if (note != null) {
        seconds[i] = note;
        last = date;
      } else if (date.isBefore(today) && isDue(date, last)) {
        seconds[i] = setting(date).minutesPerWatering() * 60.0;
        assumed.add(i);
        last = date;
      }
    }
  }

  private boolean isDue(LocalDate date, LocalDate last) {
    if (date.isBefore(start)) {
      return false;
    }
    TimerSetting setting = setting(date);
    if (setting.off()) {
      return false;
    }
    return last == null ? setting.rhythm().waters(date, start) : setting.rhythm().isDue(date, last);
  }

  /** Time the valve was open by day, seconds. */
  double[] seconds() {
    return seconds;
  }

  /** Days, counted from the first, of waterings not noted but taken from the timer card. */
  List<Integer> assumedDays() {
    return List.copyOf(assumed);
  }

  /** The time by day without the assumed waterings from a day on. */
  double[] notedFrom(int day) {
    double[] without = seconds.clone();
    for (int at : assumed) {
      if (at >= day) {
        without[at] = 0;
      }
    }
    return without;
  }
}
