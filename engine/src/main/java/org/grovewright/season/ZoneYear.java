package org.grovewright.season;

import java.util.List;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.irrigation.TimerSetting;

/**
 * A zone in one year of the plan: its plants ready for replay and what the plan sets it to.
 *
 * @param index its index in the system
 * @param id its id
 * @param m3PerMinute what it draws, m3 a minute
 * @param longestRun most minutes after one start before water would run off
 * @param plants all its plants
 * @param planned the plan's setting of each month, January first
 */
record ZoneYear(
    int index,
    String id,
    double m3PerMinute,
    int longestRun,
    List<PlantRun> plants,
    List<TimerSetting> planned) {
  ZoneYear {
    plants = List.copyOf(plants);
    planned = List.copyOf(planned);
  }

  /** The plan's own minutes and days. */
  ZoneSchedule plannedSchedule() {
    int[] minutes = new int[12];
    Rhythm[] rhythms = new Rhythm[12];
    for (int month = 0; month < 12; month++) {
      TimerSetting setting = planned.get(month);
      minutes[month] = setting.minutesPerWatering();
      rhythms[month] = setting.rhythm();
    }
    return new ZoneSchedule(minutes, rhythms);
  }

  /** Minutes a day, as a mean, that would give every plant its need in a month from 0. */
  double neededMinutes(int month) {
    return planned.get(month).neededMinutesPerDay();
  }

  /** Days between waterings in the plan in a month from 0, or those given where it is off. */
  int plannedGap(int month, int whenOff) {
    return planned.get(month).off() ? whenOff : planned.get(month).everyDays();
  }

  double peakMinutes() {
    return planned.stream().mapToDouble(TimerSetting::neededMinutesPerDay).max().orElse(0);
  }
}
