package org.grovewright.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.season.Outcome.Way;

/** Rules by which people water, run through the same years as the card. */
final class WateringRules {
  private static final int WEEK = 7;
  private static final double DAY_S = 86_400;

  /** Several times the mean need: where this keeps no plant, no amount at that spacing does. */
  private static final double AMPLE = 6;

  private final List<ZoneYear> zones;
  private final WeatherYears years;
  private final int[] monthOf;
  private final Set<String> beyondHelp;
  private final int most;

  WateringRules(List<ZoneYear> zones, WeatherYears years, Set<String> beyondHelp, int most) {
    this.zones = zones;
    this.years = years;
    this.beyondHelp = beyondHelp;
    this.most = most;
    monthOf = ZoneSchedule.months(years.daily());
  }

  double water(ZoneYear zone, ZoneSchedule schedule) {
    return zone.m3PerMinute() * schedule.minutesPerYear(years.daily(), monthOf, years.spans());
  }

  /** What one schedule for each zone does. */
  Outcome outcome(Way way, Function<ZoneYear, ZoneSchedule> schedules) {
    double water = 0;
    List<PlantHistory> plants = new ArrayList<>();
    for (ZoneYear zone : zones) {
      ZoneSchedule schedule = schedules.apply(zone);
      water += water(zone, schedule);
      zone.plants().forEach(plant -> plants.add(plant.history(schedule)));
    }
    return new Outcome(way, water, plants);
  }

  /** The rules, those with the card's water and promise last. */
  List<Outcome> all(Catalogue catalogue, Outcome card, Function<ZoneYear, ZoneSchedule> ofCard) {
    List<Outcome> all = new ArrayList<>();
    all.add(outcome(Way.MONTHLY_NEEDS, ZoneYear::plannedSchedule));
    int half = (int) Math.round(catalogue.constant("season.rule-minutes").value() / 60);
    int gap = (int) Math.round(catalogue.constant("season.rule-gap").value() / DAY_S);
    all.add(outcome(Way.SAME_HALF_HOUR, zone -> ZoneSchedule.constant(half, gap)));
    double depth = catalogue.constant("season.rule-depth").value();
    all.add(outcome(Way.WEEKLY_DEPTH, zone -> weekly(zone, depth)));
    List<Optional<ZoneSchedule>> keeping = zones.stream().map(this::keeping).toList();
    if (keeping.stream().allMatch(Optional::isPresent)) {
      all.add(outcome(Way.SAME_KEEPING, zone -> keeping.get(zones.indexOf(zone)).orElseThrow()));
    }
    all.add(outcome(Way.SAME_WATER, zone -> spending(zone, water(zone, ofCard.apply(zone)))));
    return all;
  }

  /** The depth over the soil of a mean plant of the zone, once a week. */
  private static ZoneSchedule weekly(ZoneYear zone, double depthM) {
    double soil = zone.plants().stream().mapToDouble(PlantRun::meanSoilM2).sum();
    double rate = zone.plants().stream().mapToDouble(PlantRun::m3PerMinute).sum();
    return ZoneSchedule.constant((int) Math.max(1, Math.round(depthM * soil / rate)), WEEK);
  }

  /** The same minutes all year with the least water that keeps the plants, if any do. */
  private Optional<ZoneSchedule> keeping(ZoneYear zone) {
    ZoneSchedule best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int gap = 1; gap <= WEEK; gap++) {
      int enough = (int) Math.ceil(Math.max(1, AMPLE * zone.peakMinutes() * gap));
      int tooFew = 0;
      if (!keeps(zone, ZoneSchedule.constant(enough, gap))) {
        continue;
      }
      while (enough - tooFew > 1) {
        int middle = (enough + tooFew) / 2;
        if (keeps(zone, ZoneSchedule.constant(middle, gap))) {
          enough = middle;
        } else {
          tooFew = middle;
        }
      }
      ZoneSchedule found = ZoneSchedule.constant(enough, gap);
      if (water(zone, found) < least) {
        best = found;
        least = water(zone, found);
      }
    }
    return Optional.ofNullable(best);
  }

  private boolean keeps(ZoneYear zone, ZoneSchedule schedule) {
    for (PlantRun plant : zone.plants()) {
      if (!beyondHelp.contains(plant.plantId()) && plant.failsMoreThan(most, schedule)) {
        return false;
      }
    }
    return true;
  }

  /** The same minutes all year for about so much water, in the spacing that stresses least. */
  private ZoneSchedule spending(ZoneYear zone, double m3PerYear) {
    ZoneSchedule best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int gap = 1; gap <= WEEK; gap++) {
      double perMinute = water(zone, ZoneSchedule.constant(1, gap));
      ZoneSchedule found = ZoneSchedule.constant((int) Math.round(m3PerYear / perMinute), gap);
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
