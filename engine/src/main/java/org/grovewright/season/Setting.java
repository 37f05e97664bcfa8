package org.grovewright.season;

import java.util.List;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.irrigation.StartTimes;

/**
 * A setting of one programme while it is searched for: minutes of its zones, and for every season
 * step a percentage and a gap. It does not change.
 */
final class Setting {
  private final int starts;
  private final int[] base;
  private final int[] longestRun;
  private final int[] percent;
  private final int[] gaps;
  private final List<Rhythm> rhythms;

  /**
   * A setting.
   *
   * @param starts starts on a watering day
   * @param base minutes of each zone after each start at 100 per cent
   * @param longestRun most minutes of each zone after one start
   * @param percent percentage by month from January
   * @param gaps place of its days among the rhythms by month, from 1
   * @param rhythms days on which the timer can water, the most frequent first
   */
  Setting(
      int starts, int[] base, int[] longestRun, int[] percent, int[] gaps, List<Rhythm> rhythms) {
    this.starts = starts;
    this.base = base.clone();
    this.longestRun = longestRun;
    this.percent = percent.clone();
    this.gaps = gaps.clone();
    this.rhythms = rhythms;
  }

  int starts() {
    return starts;
  }

  int zones() {
    return base.length;
  }

  int base(int zone) {
    return base[zone];
  }

  int percent(int month) {
    return percent[month];
  }

  int gap(int month) {
    return gaps[month];
  }

  Rhythm rhythm(int month) {
    return rhythms.get(gaps[month] - 1);
  }

  /** The same with another percentage and gap in some months. */
  Setting with(int[] months, int newPercent, int newGap) {
    int[] changed = percent.clone();
    int[] changedGaps = gaps.clone();
    for (int month : months) {
      changed[month] = newPercent;
      changedGaps[month] = newGap;
    }
    return new Setting(starts, base, longestRun, changed, changedGaps, rhythms);
  }

  /** The same with other minutes of a zone. */
  Setting withBase(int zone, int minutes) {
    int[] changed = base.clone();
    changed[zone] = minutes;
    return new Setting(starts, changed, longestRun, percent, gaps, rhythms);
  }

  /** Minutes of a zone after each start at a percentage. */
  int minutesPerStart(int zone, int atPercent) {
    return TimerCard.minutes(base[zone], atPercent);
  }

  /** Whether any run is longer than the soil can drink. */
  boolean runsOff() {
    for (int zone = 0; zone < base.length; zone++) {
      for (int of : percent) {
        if (minutesPerStart(zone, of) > longestRun[zone]) {
          return true;
        }
      }
    }
    return false;
  }

  /** The days and minutes of a zone. */
  ZoneSchedule schedule(int zone) {
    int[] minutes = new int[12];
    for (int month = 0; month < 12; month++) {
      minutes[month] = starts * minutesPerStart(zone, percent[month]);
    }
    Rhythm[] days = new Rhythm[12];
    for (int month = 0; month < 12; month++) {
      days[month] = rhythm(month);
    }
    return new ZoneSchedule(minutes, days);
  }

  /** What it draws on its days. */
  WeekDraw.Load load(List<ZoneYear> group) {
    double[] m3 = new double[12];
    Rhythm[] days = new Rhythm[12];
    for (int month = 0; month < 12; month++) {
      days[month] = rhythm(month);
      for (int zone = 0; zone < base.length; zone++) {
        m3[month] += starts * minutesPerStart(zone, percent[month]) * group.get(zone).m3PerMinute();
      }
    }
    return new WeekDraw.Load(m3, days);
  }

  /** The longest runs of a day and the most water, for finding room for them. */
  StartTimes.Block block(List<ZoneYear> group) {
    int longest = 0;
    double most = 0;
    for (int of : percent) {
      int minutes = 0;
      double m3 = 0;
      for (int zone = 0; zone < base.length; zone++) {
        int run = minutesPerStart(zone, of);
        minutes += run;
        m3 += starts * run * group.get(zone).m3PerMinute();
      }
      longest = Math.max(longest, minutes);
      most = Math.max(most, m3);
    }
    return new StartTimes.Block(
        group.stream().map(ZoneYear::index).toList(), starts, longest, most);
  }
}
