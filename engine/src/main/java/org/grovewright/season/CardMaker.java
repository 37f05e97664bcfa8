package org.grovewright.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.grovewright.irrigation.StartTimes;
import org.grovewright.season.ProgrammeSearch.ZoneLoad;

/** Searches the programmes of a card one by one, and the trade between water and risk. */
final class CardMaker {
  /** Shares of years at which the trade is shown. */
  private static final double[] SHARES = {0, 0.05, 0.1, 0.2, 0.3, 0.5};

  /** Share of the stressed days beyond help that may come on top of them to save water. */
  private static final double SLACK = 0.1;

  private final List<List<ZoneYear>> groups;
  private final TimerLimits limits;
  private final SeasonSettings settings;
  private final WeatherYears years;
  private final StartTimes clock;
  private final WaterRule rule;
  private final Set<String> beyondHelp = new HashSet<>();
  private final Set<String> beyondRule = new LinkedHashSet<>();
  private long trials;

  CardMaker(
      List<ZoneYear> zones,
      TimerLimits limits,
      SeasonSettings settings,
      WeatherYears years,
      StartTimes clock,
      WaterRule rule) {
    this.clock = clock;
    this.rule = rule;
    this.groups = grouped(zones, limits.programmes());
    this.limits = limits;
    this.settings = settings;
    this.years = years;
  }

  /**
   * What was found.
   *
   * @param groups the zones of each programme
   * @param chosen the setting of each programme
   * @param trade the trade between water and risk, the least risk first
   * @param beyondHelp plants that no setting of their zone can keep, which the search keeps about
   *     as well as plenty of water would
   * @param beyondRule plants that no setting found keeps with the water that may be drawn
   * @param trials settings tried
   */
  record Found(
      List<List<ZoneYear>> groups,
      List<Setting> chosen,
      List<TradePoint> trade,
      Set<String> beyondHelp,
      Set<String> beyondRule,
      long trials) {}

  Found search() {
    int count = years.spans().size();
    int target = settings.mostFailures(count);
    List<Integer> allowed = new ArrayList<>(List.of(target));
    for (double share : SHARES) {
      int failures = SeasonSettings.failures(share, count);
      if (!allowed.contains(failures)) {
        allowed.add(failures);
      }
    }
    allowed.sort(Comparator.naturalOrder());
    List<List<Setting>> fronts = new ArrayList<>();
    List<Setting> chosen = new ArrayList<>();
    for (int g = 0; g < groups.size(); g++) {
      List<Setting> front = front(g, allowed, target, chosen);
      fronts.add(front);
      chosen.add(front.get(allowed.indexOf(target)));
    }
    List<TradePoint> trade = new ArrayList<>();
    for (int i = 0; i < allowed.size(); i++) {
      List<Setting> point = new ArrayList<>();
      for (List<Setting> front : fronts) {
        point.add(front.get(i));
      }
      boolean card = allowed.get(i) == target && beyondRule.isEmpty();
      // Each was found beside the card's other programmes; together they must keep the rule too.
      if (!point.contains(null) && (card || rule.allowsWeek(loads(point)))) {
        trade.add(tradePoint(point, (double) allowed.get(i) / count));
      }
    }
    return new Found(groups, chosen, trade, beyondHelp, beyondRule, trials);
  }

  private TradePoint tradePoint(List<Setting> settings, double allowedShare) {
    double water = 0;
    int worst = 0;
    for (int g = 0; g < settings.size(); g++) {
      water += search(groups.get(g), ignored -> true).water(settings.get(g));
      worst = Math.max(worst, worstFailures(groups.get(g), settings.get(g)));
    }
    return new TradePoint(allowedShare, (double) worst / years.spans().size(), water);
  }

  private List<WeekDraw.Load> loads(List<Setting> settings) {
    List<WeekDraw.Load> loads = new ArrayList<>();
    for (int g = 0; g < settings.size(); g++) {
      loads.add(settings.get(g).load(groups.get(g)));
    }
    return loads;
  }

  private int worstFailures(List<ZoneYear> group, Setting setting) {
    int worst = 0;
    for (int z = 0; z < group.size(); z++) {
      for (PlantRun plant : group.get(z).plants()) {
        worst = Math.max(worst, plant.failures(setting.schedule(z)));
      }
    }
    return worst;
  }

  /** Room in the hours beside the programmes already found and the plan's own for the others. */
  private Predicate<Setting> hours(int group, List<Setting> chosen) {
    List<StartTimes.Block> others = new ArrayList<>();
    for (int g = 0; g < groups.size(); g++) {
      if (g != group) {
        Setting setting = g < chosen.size() ? chosen.get(g) : planned(g);
        others.add(setting.block(groups.get(g)));
      }
    }
    return setting -> {
      List<StartTimes.Block> all = new ArrayList<>(others);
      all.add(setting.block(groups.get(group)));
      return clock.fit(all).isPresent();
    };
  }

  /**
   * Room in the water of a week beside the programmes already found and the plan's own for the
   * others, these cut alike where all of the plan's together would draw too much.
   */
  private Predicate<Setting> week(int group, List<Setting> chosen) {
    List<WeekDraw.Load> all = new ArrayList<>();
    for (int g = 0; g < groups.size(); g++) {
      all.add(planned(g).load(groups.get(g)));
    }
    double share = rule.share(all);
    List<WeekDraw.Load> others = new ArrayList<>();
    for (int g = 0; g < groups.size(); g++) {
      if (g < chosen.size()) {
        others.add(chosen.get(g).load(groups.get(g)));
      } else if (g != group) {
        others.add(all.get(g).times(share));
      }
    }
    return setting -> {
      List<WeekDraw.Load> with = new ArrayList<>(others);
      with.add(setting.load(groups.get(group)));
      return rule.allowsWeek(with);
    };
  }

  private Setting planned(int group) {
    return new Beginnings(groups.get(group), limits, settings.months()).planned();
  }

  private ProgrammeSearch search(List<ZoneYear> group, Predicate<Setting> room) {
    List<ZoneLoad> loads =
        group.stream().map(z -> new ZoneLoad(z.m3PerMinute(), z.plants())).toList();
    return new ProgrammeSearch(loads, limits, settings.months(), years, room);
  }

  /** The least water found for each number of years that may fail, in rising order. */
  private List<Setting> front(int g, List<Integer> allowed, int target, List<Setting> chosen) {
    List<ZoneYear> group = groups.get(g);
    Predicate<Setting> week = week(g, chosen);
    Predicate<Setting> room = week.and(hours(g, chosen));
    Beginnings beginnings = new Beginnings(group, limits, settings.months());
    Setting ample = beginnings.ample();
    // Whom plenty of water every day does not keep in the asked share of years, nothing keeps.
    for (int z = 0; z < group.size(); z++) {
      for (PlantRun plant : group.get(z).plants()) {
        if (plant.failsMoreThan(target, ample.schedule(z))) {
          beyondHelp.add(plant.plantId());
          plant.tolerate(tolerated(plant.history(ample.schedule(z)), target));
        }
      }
    }
    List<List<Setting>> starts = new ArrayList<>(beginnings.all());
    starts.add(List.of(ample));
    ProgrammeSearch search = search(group, room);
    Setting best = best(search, starts, target);
    if (best == null) {
      // No hours for what the plants want: the card says so instead of letting them dry.
      search = search(group, week);
      best = best(search, starts, target);
    }
    if (best == null) {
      return shortened(group, beginnings.planned(), week, allowed, target);
    }
    List<Setting> front = new ArrayList<>();
    Setting stricter = null;
    for (int failures : allowed) {
      Setting found = stricter == null ? null : search.improve(stricter, failures);
      if (failures == target) {
        found = found == null || search.water(best) < search.water(found) ? best : found;
      } else if (found == null) {
        found = best(search, starts, failures);
      }
      // Null where not even plenty of water keeps all in so many years.
      front.add(found);
      stricter = found == null ? stricter : found;
    }
    trials += search.trials();
    return front;
  }

  /** Stressed days a year that plenty of water leaves in all but so many years, and a few more. */
  private static int tolerated(PlantHistory best, int target) {
    int[] days = best.years().stream().mapToInt(PlantYear::stressedDays).sorted().toArray();
    return 1 + (int) Math.ceil(days[days.length - 1 - target] * (1 + SLACK));
  }

  /** The mean needs cut down to what may be drawn, where that does not keep all plants. */
  private List<Setting> shortened(
      List<ZoneYear> group,
      Setting planned,
      Predicate<Setting> week,
      List<Integer> allowed,
      int target) {
    Setting now = planned;
    for (int[] step : settings.months()) {
      while (now.percent(step[0]) > 0 && !week.test(alone(now, step))) {
        now = lower(now, step);
      }
    }
    // Seven days at the turn of a month may still hold more than either month alone.
    while (!week.test(now) && Arrays.stream(settings.months()).anyMatch(on(now))) {
      for (int[] step : settings.months()) {
        now = lower(now, step);
      }
    }
    for (int z = 0; z < group.size(); z++) {
      for (PlantRun plant : group.get(z).plants()) {
        if (plant.failsMoreThan(target, now.schedule(z))) {
          beyondRule.add(plant.plantId());
        }
      }
    }
    List<Setting> front = new ArrayList<>();
    for (int failures : allowed) {
      front.add(failures == target ? now : null);
    }
    return front;
  }

  private Setting lower(Setting setting, int[] step) {
    int percent = Math.max(0, setting.percent(step[0]) - limits.percentStep());
    return setting.with(step, percent, setting.gap(step[0]));
  }

  private static Predicate<int[]> on(Setting setting) {
    return step -> setting.percent(step[0]) > 0;
  }

  /** The setting with all other steps of the year off. */
  private Setting alone(Setting setting, int[] kept) {
    Setting alone = setting;
    for (int[] step : settings.months()) {
      if (step[0] != kept[0]) {
        alone = alone.with(step, 0, alone.gap(step[0]));
      }
    }
    return alone;
  }

  /** The best of several beginnings, or null where none keeps all plants. */
  private static Setting best(ProgrammeSearch search, List<List<Setting>> starts, int failures) {
    Setting best = null;
    for (List<Setting> growing : starts) {
      for (Setting start : growing) {
        if (search.keepsAll(start, failures)) {
          Setting found = search.lowered(start, failures);
          best = best == null || search.water(found) < search.water(best) ? found : best;
          break;
        }
      }
    }
    return best == null ? null : search.improve(best, failures);
  }

  /** Zones to programmes: one each, and where the timer has too few, those most alike together. */
  static List<List<ZoneYear>> grouped(List<ZoneYear> zones, int programmes) {
    List<List<ZoneYear>> groups = new ArrayList<>();
    for (ZoneYear zone : zones) {
      groups.add(new ArrayList<>(List.of(zone)));
    }
    while (groups.size() > programmes) {
      int into = 0;
      int gone = 1;
      double least = Double.POSITIVE_INFINITY;
      for (int a = 0; a < groups.size(); a++) {
        for (int b = a + 1; b < groups.size(); b++) {
          double apart = apart(groups.get(a), groups.get(b));
          if (apart < least) {
            least = apart;
            into = a;
            gone = b;
          }
        }
      }
      groups.get(into).addAll(groups.remove(gone));
    }
    return groups;
  }

  private static double apart(List<ZoneYear> a, List<ZoneYear> b) {
    double most = 0;
    for (ZoneYear one : a) {
      for (ZoneYear other : b) {
        double sum = 0;
        for (int month = 0; month < 12; month++) {
          double shape =
              one.neededMinutes(month) / Math.max(1e-9, one.peakMinutes())
                  - other.neededMinutes(month) / Math.max(1e-9, other.peakMinutes());
          double gaps = Math.log((double) one.plannedGap(month, 7) / other.plannedGap(month, 7));
          sum += shape * shape + gaps * gaps;
        }
        most = Math.max(most, sum);
      }
    }
    return most;
  }
}
