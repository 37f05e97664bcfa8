package org.grovewright.advice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.water.Leaching;
import org.grovewright.water.RefillRule;

/** One zone on the day of the advice. */
final class ZoneDay {
  private static final int TRACE_BACK = 28;
  private static final int TRACE_AHEAD = 5;

  final ZoneResult result;
  final AssumedRuns runs;
  final List<Plant> plants;
  private final int today;
  private final AllowedDays allowed;
  private final double efficiency;
  private final double worthFilling;

  /**
   * A zone whose plants have been followed until today.
   *
   * @param allowed days on which water may run, and the timer's usual turn
   * @param efficiency share of the emitters' water that roots can use
   * @param worthFilling share of the readily available water that must be missing for a watering to
   *     be worth it
   */
  ZoneDay(
      ZoneResult result,
      AssumedRuns runs,
      List<Plant> plants,
      int today,
      AllowedDays allowed,
      double efficiency,
      double worthFilling) {
    this.result = result;
    this.runs = runs;
    this.plants = List.copyOf(plants);
    this.today = today;
    this.allowed = allowed;
    this.efficiency = efficiency;
    this.worthFilling = worthFilling;
  }

  /**
   * A plant of the zone.
   *
   * @param index its index in the grove
   * @param track its soil
   * @param flowM3PerS what its emitters give, m3/s
   * @param leaching share of its water that must run through
   */
  record Plant(int index, PlantTrack track, double flowM3PerS, Leaching leaching) {
    String id() {
      return track.planting().id();
    }

    private double wantsSeconds(int day, double efficiency) {
      return RefillRule.seconds(
          track.startMm(day), track.soilM2(day), flowM3PerS, efficiency * (1 - leaching.share()));
    }
  }

  String id() {
    return result.design().id();
  }

  /**
   * The plant that sets the minutes, if the zone wants water today. A root ball that holds little
   * more than a day's use may be dry by the evening though it is nearly full now; nothing that is
   * worth opening a valve for can be added to it yet. Where a rule names the days, whatever would
   * be dry before the next is wanted on them.
   */
  Optional<Plant> wanting() {
    boolean dry =
        plants.stream()
            .map(Plant::track)
            .anyMatch(
                track ->
                    track.isDry(today)
                        && RefillRule.isWorthIt(
                            track.startMm(today), track.limitMm(today), worthFilling));
    if (!dry && !(allowed.ruled() && allowed.may(today))) {
      return Optional.empty();
    }
    return plants.stream()
        .filter(plant -> dryBeforeNext(plant.track(), today))
        .max(Comparator.comparingDouble(plant -> plant.wantsSeconds(today, efficiency)));
  }

  /** Whether a plant begins to suffer before it can be given water on a later day than this. */
  private boolean dryBeforeNext(PlantTrack track, int day) {
    return track.isDry(Math.min(day + allowed.untilNext(day) - 1, today + WeatherToDate.AHEAD - 1));
  }

  /** Whole minutes that the zone wants today. */
  int minutes() {
    return wanting()
        .map(plant -> (int) Math.ceil(plant.wantsSeconds(today, efficiency) / 60 - 1e-9))
        .orElse(0);
  }

  /** The plant nearest to its limit or farthest beyond it. */
  Optional<Plant> driest() {
    return plants.stream().max(Comparator.comparingDouble(plant -> plant.track().dryness(today)));
  }

  /** How far that plant goes to its limit today. */
  double dryness() {
    return driest().map(plant -> plant.track().dryness(today)).orElse(0.0);
  }

  /** Time the valve has been open today already, seconds. */
  double openToday() {
    return runs.seconds()[today];
  }

  /** Follows the plants again with so many more seconds of water today. */
  void water(double seconds) {
    double[] open = runs.seconds().clone();
    open[today] += seconds;
    follow(open);
  }

  /** Whether a watering of the past seven days is counted though nobody noted it. */
  boolean assumedLately() {
    return runs.assumedDays().stream().anyMatch(day -> day >= today - RoomToday.WEEK);
  }

  /** Whole minutes that the zone would want had those waterings not run. */
  int minutesIfShut() {
    follow(runs.notedFrom(today - RoomToday.WEEK));
    int minutes = minutes();
    follow(runs.seconds());
    return minutes;
  }

  private void follow(double[] open) {
    plants.forEach(plant -> plant.track().follow(open, plant.flowM3PerS() * efficiency));
  }

  /** The first day after today on which a plant would begin to suffer, or the day for it. */
  Optional<Integer> nextDay() {
    for (int day = today + 1; day < today + WeatherToDate.AHEAD; day++) {
      int at = day;
      if (allowed.ruled() && !allowed.may(day)) {
        continue;
      }
      if (plants.stream()
          .map(Plant::track)
          .anyMatch(track -> allowed.ruled() ? dryBeforeNext(track, at) : track.isDry(at))) {
        return Optional.of(day);
      }
    }
    return Optional.empty();
  }

  /** The soil of a plant from some weeks ago until a few days ahead. */
  List<ZoneAdvice.TraceDay> trace(Plant plant, LocalDate first) {
    PlantTrack track = plant.track();
    Set<Integer> assumed = Set.copyOf(runs.assumedDays());
    List<ZoneAdvice.TraceDay> days = new ArrayList<>();
    for (int day = Math.max(0, today - TRACE_BACK); day <= today + TRACE_AHEAD; day++) {
      if (track.isPlanted(day)) {
        double total = track.totalMm(day) / 1000;
        days.add(
            new ZoneAdvice.TraceDay(
                first.plusDays(day),
                total - track.feltMm(day) / 1000,
                total - track.limitMm(day) / 1000,
                total,
                track.rainMm(day) / 1000,
                track.givenMm(day) / 1000,
                assumed.contains(day)));
      }
    }
    return days;
  }
}
