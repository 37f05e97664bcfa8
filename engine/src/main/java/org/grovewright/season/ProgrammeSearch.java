package org.grovewright.season;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * Finds the setting of one programme that keeps its plants with the least water, by coordinate
 * descent with the exact replay: percentages are lowered step by step where every plant still keeps
 * its limit, one month is raised a step where others can then be lowered by more, and the days
 * between waterings are made longer and shorter. It ends where none of these moves helps. That is
 * not a proof of the best setting; how near it comes is tested against trying all.
 *
 * <p>While moves are tried, only the plants that ever set a limit are replayed; before a setting is
 * accepted all are, and a plant that then fails joins them.
 */
final class ProgrammeSearch {
  private static final int[] GAP_MOVES = {1, -1, 2, -2};
  private static final double LESS = 1 - 1e-9;

  private final List<ZoneLoad> zones;
  private final TimerLimits limits;
  private final int[][] steps;
  private final WeatherYears years;
  private final int[] monthOf;
  private final Predicate<Setting> room;
  private final List<Guard> guards = new ArrayList<>();
  private int mostFailures;
  private long trials;

  /** A plant and the zone of the programme that waters it. */
  private record Guard(int zone, PlantRun plant) {}

  /**
   * A zone as the search sees it.
   *
   * @param m3PerMinute what it draws from the supply, m3 a minute
   * @param plants the plants that must be kept
   */
  record ZoneLoad(double m3PerMinute, List<PlantRun> plants) {
    ZoneLoad {
      plants = List.copyOf(plants);
    }
  }

  /**
   * A search.
   *
   * @param steps the months, from 0, of each season step
   * @param room whether a setting finds room in the allowed hours and volume
   */
  ProgrammeSearch(
      List<ZoneLoad> zones,
      TimerLimits limits,
      int[][] steps,
      WeatherYears years,
      Predicate<Setting> room) {
    this.room = room;
    this.zones = List.copyOf(zones);
    this.limits = limits;
    this.steps = steps.clone();
    this.years = years;
    monthOf = ZoneSchedule.months(years.daily());
  }

  /** Settings tried so far. */
  long trials() {
    return trials;
  }

  /** Water that a setting draws in a mean year, m3. */
  double water(Setting setting) {
    double sum = 0;
    for (int z = 0; z < zones.size(); z++) {
      sum +=
          zones.get(z).m3PerMinute()
              * setting.schedule(z).minutesPerYear(years.daily(), monthOf, years.spans());
    }
    return sum;
  }

  /**
   * Whether a setting has room, no water runs off and every plant passes its limit in at most so
   * many of the years.
   */
  boolean keepsAll(Setting setting, int most) {
    if (setting.runsOff() || !room.test(setting)) {
      return false;
    }
    boolean keeps = true;
    for (int z = 0; z < zones.size(); z++) {
      ZoneSchedule schedule = setting.schedule(z);
      for (PlantRun plant : zones.get(z).plants()) {
        if (plant.failsMoreThan(most, schedule)) {
          Guard guard = new Guard(z, plant);
          if (!guards.contains(guard)) {
            guards.add(guard);
          }
          keeps = false;
        }
      }
    }
    return keeps;
  }

  /**
   * Lowers a setting that keeps all plants as far as single steps allow, and no more.
   *
   * @param most most years in which a plant may pass its limit
   * @throws IllegalArgumentException if the setting does not keep all plants
   */
  Setting lowered(Setting start, int most) {
    if (!keepsAll(start, most)) {
      throw new IllegalArgumentException("the search must start from a setting that keeps all");
    }
    mostFailures = most;
    return lowerKeeping(start);
  }

  /**
   * Improves a setting that keeps all plants until no move helps.
   *
   * @param most most years in which a plant may pass its limit
   * @throws IllegalArgumentException if the setting does not keep all plants
   */
  Setting improve(Setting start, int most) {
    Setting now = lowered(start, most);
    double before;
    do {
      before = water(now);
      now = respace(swap(now));
    } while (water(now) < before * LESS);
    return now;
  }

  private boolean keeps(Setting setting) {
    trials++;
    if (setting.runsOff() || !room.test(setting)) {
      return false;
    }
    for (int i = 0; i < guards.size(); i++) {
      Guard guard = guards.get(i);
      if (guard.plant().failsMoreThan(mostFailures, setting.schedule(guard.zone()))) {
        // What set the limit now is likely to set it next time.
        guards.remove(i);
        guards.add(0, guard);
        return false;
      }
    }
    return true;
  }

  private boolean keepsEvery(Setting setting) {
    return keeps(setting) && keepsAll(setting, mostFailures);
  }

  private Setting lowerKeeping(Setting start) {
    while (true) {
      Setting found = lower(start);
      // Those that failed have joined the guards, so the next round cannot end in the same place.
      if (keepsAll(found, mostFailures)) {
        return found;
      }
    }
  }

  /** Lowers percentages and minutes, those of the most water first, as far as the plants allow. */
  private Setting lower(Setting start) {
    Setting now = start;
    boolean[] stuck = new boolean[steps.length];
    while (true) {
      int next = thirstiest(now, stuck);
      if (next < 0) {
        break;
      }
      Setting lowered = lowerStep(now, next);
      stuck[next] = lowered == null;
      now = lowered == null ? now : lowered;
    }
    if (zones.size() > 1) {
      for (int z = 0; z < zones.size(); z++) {
        while (now.base(z) > 1 && keeps(now.withBase(z, now.base(z) - 1))) {
          now = now.withBase(z, now.base(z) - 1);
        }
      }
    }
    return now;
  }

  private int thirstiest(Setting setting, boolean[] stuck) {
    int found = -1;
    double most = 0;
    for (int step = 0; step < steps.length; step++) {
      if (!stuck[step] && waterOf(setting, step) > most) {
        most = waterOf(setting, step);
        found = step;
      }
    }
    return found;
  }

  /** Minutes times flow a day in a season step, m3; enough to rank the steps. */
  private double waterOf(Setting setting, int step) {
    double sum = 0;
    for (int month : steps[step]) {
      for (int z = 0; z < zones.size(); z++) {
        sum +=
            zones.get(z).m3PerMinute()
                * setting.minutesPerStart(z, setting.percent(month))
                / setting.rhythm(month).meanGap(month + 1);
      }
    }
    return sum;
  }

  /** The step with less water, a large leap if that holds and a small one if not, or null. */
  private Setting lowerStep(Setting now, int step) {
    int from = now.percent(steps[step][0]);
    int last = -1;
    for (double share : new double[] {0, 0.5, 0.75, 0.9, 1}) {
      int to = share == 1 ? nextLower(now, from) : down(from * share, from);
      if (to < 0 || to >= from || to == last) {
        continue;
      }
      last = to;
      Setting trial = now.with(steps[step], to, now.gap(steps[step][0]));
      if (keeps(trial)) {
        return trial;
      }
    }
    return null;
  }

  private int down(double percent, int from) {
    int to = (int) (percent / limits.percentStep()) * limits.percentStep();
    return to == from ? from - limits.percentStep() : to;
  }

  /** The next lower percentage that changes whole minutes; -1 where there is none. */
  private int nextLower(Setting setting, int from) {
    for (int to = from - limits.percentStep(); to >= 0; to -= limits.percentStep()) {
      if (changes(setting, from, to)) {
        return to;
      }
    }
    return -1;
  }

  private int nextHigher(Setting setting, int from) {
    for (int to = from + limits.percentStep();
        to <= limits.mostPercent();
        to += limits.percentStep()) {
      if (changes(setting, from, to)) {
        return to;
      }
    }
    return -1;
  }

  private boolean changes(Setting setting, int from, int to) {
    for (int z = 0; z < zones.size(); z++) {
      if (setting.minutesPerStart(z, from) != setting.minutesPerStart(z, to)) {
        return true;
      }
    }
    return false;
  }

  /** Raises one step and lowers another where that saves water. */
  private Setting swap(Setting start) {
    Setting now = start;
    for (int up = 0; up < steps.length; up++) {
      for (int down = 0; down < steps.length; down++) {
        Setting swapped = up == down ? null : swapped(now, up, down);
        if (swapped != null) {
          now = lowerKeeping(swapped);
        }
      }
    }
    return now;
  }

  private Setting swapped(Setting now, int up, int down) {
    int higher = nextHigher(now, now.percent(steps[up][0]));
    if (higher < 0) {
      return null;
    }
    Setting raised = now.with(steps[up], higher, now.gap(steps[up][0]));
    double most = water(now) * LESS;
    int to = nextLower(raised, raised.percent(steps[down][0]));
    while (to >= 0) {
      Setting trial = raised.with(steps[down], to, raised.gap(steps[down][0]));
      if (water(trial) < most) {
        return keepsEvery(trial) ? trial : null;
      }
      to = nextLower(trial, to);
    }
    return null;
  }

  /** Tries shorter and longer gaps in each step, with the minutes that then keep the plants. */
  private Setting respace(Setting start) {
    Setting now = start;
    for (int step = 0; step < steps.length; step++) {
      int month = steps[step][0];
      if (now.percent(month) == 0) {
        continue;
      }
      for (int move : GAP_MOVES) {
        int gap = now.gap(month) + move;
        if (gap >= 1 && gap <= limits.rarest()) {
          Setting better = respaced(now, step, gap);
          now = better == null ? now : better;
        }
      }
    }
    return now;
  }

  private Setting respaced(Setting now, int step, int gap) {
    int month = steps[step][0];
    double same =
        now.percent(month)
            * limits.rhythm(gap).meanGap(month + 1)
            / now.rhythm(month).meanGap(month + 1);
    int percent = (int) Math.ceil(same / limits.percentStep() - 1e-9) * limits.percentStep();
    Setting best = null;
    double least = water(now) * LESS;
    int from = Math.min(limits.mostPercent(), percent + 2 * limits.percentStep());
    for (int p = from; p >= 0; p -= limits.percentStep()) {
      Setting trial = now.with(steps[step], p, gap);
      if (water(trial) >= least) {
        continue;
      }
      if (!keepsEvery(trial)) {
        break;
      }
      best = trial;
      least = water(trial);
    }
    return best;
  }
}
