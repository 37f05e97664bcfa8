package org.grovewright.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Settings from which a search may begin: the plan's own, with shorter gaps and more water. */
final class Beginnings {
  private static final double[] GAP_FACTORS = {1, 0.6, 0.35};
  private static final double[] MORE = {1, 1.2, 1.5, 2, 3, 4, 6};

  /** Percentage points that each doubling adds, so that months the plan leaves dry get some too. */
  private static final double FLOOR = 30;

  /** Several times the mean need every day: more than any plant of a sound zone can want. */
  private static final double AMPLE = 5;

  private static final double ROOM = 1.25;

  private final List<ZoneYear> zones;
  private final TimerLimits limits;
  private final int[][] steps;
  private final int starts;
  private final int[] longestRun;

  Beginnings(List<ZoneYear> zones, TimerLimits limits, int[][] steps) {
    this.zones = zones;
    this.limits = limits;
    this.steps = steps;
    longestRun = zones.stream().mapToInt(ZoneYear::longestRun).toArray();
    int needed = 1;
    for (ZoneYear zone : zones) {
      for (int month = 0; month < 12; month++) {
        double run = zone.neededMinutes(month) * zone.plannedGap(month, 1) * ROOM;
        needed = Math.max(needed, (int) Math.ceil(run / zone.longestRun() - 1e-9));
      }
    }
    starts = Math.min(limits.starts(), needed);
  }

  /** Plenty of water on every day of the year on which it may run. */
  Setting ample() {
    int[] base = new int[zones.size()];
    for (int z = 0; z < base.length; z++) {
      double days = Math.max(1, limits.rhythm(1).everyDays());
      double run = Math.ceil(Math.max(1, AMPLE * zones.get(z).peakMinutes() * days / starts));
      base[z] = (int) Math.min(longestRun[z], run);
    }
    int[] percent = new int[12];
    int[] gaps = new int[12];
    Arrays.fill(percent, 100);
    Arrays.fill(gaps, 1);
    return new Setting(starts, base, longestRun, percent, gaps, limits.rhythms());
  }

  /** The plan's own setting as near as one programme comes to it. */
  Setting planned() {
    return of(1, 1);
  }

  /** For each way of spacing the waterings, settings with ever more water. */
  List<List<Setting>> all() {
    List<List<Setting>> all = new ArrayList<>();
    for (double factor : GAP_FACTORS) {
      List<Setting> growing = new ArrayList<>();
      for (double more : MORE) {
        growing.add(of(factor, more));
      }
      all.add(growing);
    }
    return all;
  }

  private Setting of(double factor, double more) {
    int[] gaps = new int[12];
    for (int[] step : steps) {
      int longest = limits.rhythm(limits.rarest()).everyDays();
      int least = longest;
      for (int month : step) {
        for (ZoneYear zone : zones) {
          least = Math.min(least, zone.plannedGap(month, longest));
        }
      }
      int gap = limits.within((int) Math.max(1, Math.round(least * factor)));
      for (int month : step) {
        gaps[month] = gap;
      }
    }
    // The percentage makes up to double; beyond that the minutes themselves are raised.
    double byPercent = Math.min(2, more);
    double byMinutes = more / byPercent;
    int[] base = new int[zones.size()];
    double[] share = new double[12];
    for (int z = 0; z < base.length; z++) {
      double[] perStart = new double[12];
      double peak = 0;
      for (int[] step : steps) {
        for (int month : step) {
          for (int of : step) {
            double days = limits.rhythm(gaps[of]).meanGap(of + 1);
            double run = zones.get(z).neededMinutes(of) * days / starts;
            perStart[month] = Math.max(perStart[month], run);
          }
          peak = Math.max(peak, perStart[month]);
        }
      }
      double run = Math.ceil(Math.max(1, peak * byMinutes) - 1e-9);
      base[z] = (int) Math.min(longestRun[z], run);
      for (int month = 0; month < 12; month++) {
        share[month] = Math.max(share[month], perStart[month] * byMinutes / base[z]);
      }
    }
    int[] percent = new int[12];
    for (int month = 0; month < 12; month++) {
      double wanted = 100 * share[month] * byPercent + FLOOR * (byPercent - 1);
      int stepped = (int) Math.ceil(wanted / limits.percentStep() - 1e-9) * limits.percentStep();
      percent[month] = Math.min(limits.mostPercent(), stepped);
      while (runsOff(base, percent[month])) {
        percent[month] -= limits.percentStep();
      }
    }
    return new Setting(starts, base, longestRun, percent, gaps, limits.rhythms());
  }

  private boolean runsOff(int[] base, int percent) {
    for (int z = 0; z < base.length; z++) {
      if (TimerCard.minutes(base[z], percent) > longestRun[z]) {
        return true;
      }
    }
    return false;
  }
}
