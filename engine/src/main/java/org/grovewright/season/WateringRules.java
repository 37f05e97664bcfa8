package org.grovewright.season;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.season.Outcome.Way;

/** Rules by which people water, run through the same years as the card. */
final class WateringRules {
  private static final int WEEK = 7;
  private static final double DAY_S = 86_400;

  /** Several times the mean need: where this keeps no plant, no amount at that spacing does. */
  private static final double AMPLE = 6;

  private final List<ZoneYear> zones;
  private final TimerLimits limits;
  private final WaterRule rule;
  private final WeatherYears years;
  private final int[] monthOf;
  private final int most;

  /**
   * Rules for some zones.
   *
   * @param limits days on which water may run
   * @param rule what may be drawn
   * @param most most years in which a plant may pass its limit
   */
  WateringRules(
      List<ZoneYear> zones, WeatherYears years, TimerLimits limits, WaterRule rule, int most) {
    this.zones = zones;
    this.limits = limits;
    this.rule = rule;
    this.years = years;
    this.most = most;
    monthOf = ZoneSchedule.months(years.daily());
  }

  double water(ZoneYear zone, ZoneSchedule schedule) {
    return zone.m3PerMinute() * schedule.minutesPerYear(years.daily(), monthOf, years.spans());
  }

  /** What one schedule for each zone does that keeps the rule. */
  Outcome outcome(Way way, Function<ZoneYear, ZoneSchedule> schedules) {
    return outcome(way, schedules, 1);
  }

  /** What one schedule for each zone does, cut alike to what may be drawn. */
  private Outcome held(Way way, Function<ZoneYear, ZoneSchedule> schedules) {
    return outcome(way, schedules, rule.share(loads(schedules)));
  }

  private Outcome outcome(Way way, Function<ZoneYear, ZoneSchedule> schedules, double share) {
    double water = 0;
    List<PlantHistory> plants = new ArrayList<>();
    for (ZoneYear zone : zones) {
      ZoneSchedule wanted = schedules.apply(zone);
      ZoneSchedule schedule = share < 1 ? wanted.times(share) : wanted;
      water += water(zone, schedule);
      zone.plants().forEach(plant -> plants.add(plant.history(schedule)));
    }
    return new Outcome(way, water, share, plants);
  }

  private List<WeekDraw.Load> loads(Function<ZoneYear, ZoneSchedule> schedules) {
    return zones.stream().map(zone -> schedules.apply(zone).load(zone.m3PerMinute())).toList();
  }

  /** The rules, those with the card's water and promise last. */
  List<Outcome> all(Catalogue catalogue, Outcome card, Function<ZoneYear, ZoneSchedule> ofCard) {
    List<Outcome> all = new ArrayList<>();
    all.add(outcome(Way.MONTHLY_NEEDS, ZoneYear::plannedSchedule));
    int half = (int) Math.round(catalogue.constant("season.rule-minutes").value() / 60);
    int gap = (int) Math.round(catalogue.constant("season.rule-gap").value() / DAY_S);
    Rhythm often = limits.rhythm(limits.within(gap));
    all.add(held(Way.SAME_HALF_HOUR, zone -> ZoneSchedule.constant(half, often)));
    double depth = catalogue.constant("season.rule-depth").value();
    Rhythm weekly = limits.rhythm(limits.within(WEEK));
    all.add(held(Way.WEEKLY_DEPTH, zone -> weekly(zone, depth, weekly)));
    List<Optional<ZoneSchedule>> keeping = zones.stream().map(this::keeping).toList();
    if (keeping.stream().allMatch(Optional::isPresent)) {
      Function<ZoneYear, ZoneSchedule> schedules =
          zone -> keeping.get(zones.indexOf(zone)).orElseThrow();
      if (rule.share(loads(schedules)) == 1) {
        all.add(outcome(Way.SAME_KEEPING, schedules));
      }
    }
    Map<String, ZoneSchedule> spending = new HashMap<>();
    for (ZoneYear zone : zones) {
      spending.put(zone.id(), spending(zone, water(zone, ofCard.apply(zone))));
    }
    all.add(held(Way.SAME_WATER, zone -> spending.get(zone.id())));
    return all;
  }

  /** The depth over the soil of a mean plant of the zone, once a week or as often as is allowed. */
  private static ZoneSchedule weekly(ZoneYear zone, double depthM, Rhythm rhythm) {
    double soil = zone.plants().stream().mapToDouble(PlantRun::meanSoilM2).sum();
    double rate = zone.plants().stream().mapToDouble(PlantRun::m3PerMinute).sum();
    double times =
        rhythm.byCalendar() ? rhythm.days().share() * WEEK : (double) WEEK / rhythm.everyDays();
    int minutes = (int) Math.max(1, Math.round(depthM * soil / rate / times));
    return ZoneSchedule.constant(minutes, rhythm);
  }

  /** The same minutes all year with the least water that keeps the plants, if any do. */
  private Optional<ZoneSchedule> keeping(ZoneYear zone) {
    ZoneSchedule best = null;
    double least = Double.POSITIVE_INFINITY;
    for (Rhythm rhythm : rhythms()) {
      int enough = (int) Math.ceil(Math.max(1, AMPLE * zone.peakMinutes() * rhythm.everyDays()));
      int tooFew = 0;
      if (!keeps(zone, ZoneSchedule.constant(enough, rhythm))) {
        continue;
      }
      while (enough - tooFew > 1) {
        int middle = (enough + tooFew) / 2;
        if (keeps(zone, ZoneSchedule.constant(middle, rhythm))) {
          enough = middle;
        } else {
          tooFew = middle;
        }
      }
      ZoneSchedule found = ZoneSchedule.constant(enough, rhythm);
      if (water(zone, found) < least) {
        best = found;
        least = water(zone, found);
      }
    }
    return Optional.ofNullable(best);
  }

  /** Those that people use: no rarer than once a week, or what the allowed days leave. */
  private List<Rhythm> rhythms() {
    return limits.rhythms().subList(0, limits.within(WEEK));
  }

  private boolean keeps(ZoneYear zone, ZoneSchedule schedule) {
    for (PlantRun plant : zone.plants()) {
      if (plant.failsMoreThan(most, schedule)) {
        return false;
      }
    }
    return true;
  }

  /** The same minutes all year for about so much water, in the spacing that stresses least. */
  private ZoneSchedule spending(ZoneYear zone, double m3PerYear) {
    ZoneSchedule best = null;
    double least = Double.POSITIVE_INFINITY;
    for (Rhythm rhythm : rhythms()) {
      double perMinute = water(zone, ZoneSchedule.constant(1, rhythm));
      ZoneSchedule found = ZoneSchedule.constant((int) Math.round(m3PerYear / perMinute), rhythm);
      double stressed = 0;
      for (PlantRun plant : zone.plants()) {
        stressed += plant.history(found).meanStressedDays();
      }
      if (stressed < least) {
        best = found;
        least = stressed;
      }
    }
    return best;
  }
}
