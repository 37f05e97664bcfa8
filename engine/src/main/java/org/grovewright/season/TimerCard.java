package org.grovewright.season;

import java.time.LocalTime;
import java.util.List;
import org.grovewright.irrigation.EmitterChange;
import org.grovewright.irrigation.Rhythm;

/**
 * A setting of a simple timer. The timer has a few programmes; each has its start times, the
 * minutes of its zones after every start, and for each month a percentage of those minutes and the
 * days from one watering to the next.
 *
 * @param planYear year of the plan it is for, from 1
 * @param changes what is done at the emitters before it is set
 * @param programmes its programmes
 */
public record TimerCard(int planYear, List<EmitterChange> changes, List<Line> programmes) {
  /** Copies the lists. */
  public TimerCard {
    changes = List.copyOf(changes);
    programmes = List.copyOf(programmes);
  }

  /**
   * One programme.
   *
   * @param letter its name on the timer, A and so on
   * @param zones its zones, which run one after the other from each start
   * @param starts start times; empty where no room was found for them in the allowed hours
   * @param startsPerDay how many starts a watering day has
   * @param months the months, January first
   */
  public record Line(
      String letter,
      List<Zone> zones,
      List<LocalTime> starts,
      int startsPerDay,
      List<MonthStep> months) {
    /** Copies the lists. */
    public Line {
      zones = List.copyOf(zones);
      starts = List.copyOf(starts);
      months = List.copyOf(months);
    }

    /** Whole minutes that a zone runs after each start in a month from 1 to 12. */
    public int minutesPerStart(Zone zone, int month) {
      return minutes(zone.minutes(), months.get(month - 1).percent());
    }
  }

  /**
   * One zone.
   *
   * @param zone the zone
   * @param minutes whole minutes after each start at 100 per cent
   */
  public record Zone(String zone, int minutes) {}

  /**
   * One month of a programme.
   *
   * @param month 1 to 12
   * @param rhythm its days
   * @param percent percentage of the minutes; 0 where the programme is off
   */
  public record MonthStep(int month, Rhythm rhythm, int percent) {}

  /** Whole minutes that a timer runs at a percentage: to the nearest, halves up. */
  public static int minutes(int base, int percent) {
    return (base * percent + 50) / 100;
  }
}
