package org.grovewright.irrigation;

import java.time.LocalTime;
import java.util.List;

/**
 * What the timer is set to for one zone in one month.
 *
 * @param zone id of the zone
 * @param year year of the plan, 1 for the first twelve months from the start
 * @param month month, 1 to 12
 * @param rhythm its days
 * @param starts times at which a cycle starts on a watering day
 * @param minutesPerCycle whole minutes of each cycle
 * @param neededMinutesPerDay minutes a day, as a mean, that would give every plant what it needs
 * @param neediest index of the plant that sets the minutes; -1 where the zone stays off
 */
public record TimerSetting(
    String zone,
    int year,
    int month,
    Rhythm rhythm,
    List<LocalTime> starts,
    int minutesPerCycle,
    double neededMinutesPerDay,
    int neediest) {
  /** Copies the times. */
  public TimerSetting {
    starts = List.copyOf(starts);
  }

  /** Whether the zone stays off all month. */
  public boolean off() {
    return rhythm.off();
  }

  /** Most days from one watering to the next; 0 where the zone stays off. */
  public int everyDays() {
    return rhythm.everyDays();
  }

  /** Minutes on each watering day. */
  public int minutesPerWatering() {
    return starts.size() * minutesPerCycle;
  }

  /** Seconds a day, as a mean over the month. */
  public double secondsPerDay() {
    return off() ? 0 : minutesPerWatering() * 60.0 / rhythm.meanGap(month);
  }
}
