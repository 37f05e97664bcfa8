package org.grovewright.irrigation;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Grove;
import org.grovewright.model.Supply.Hours;

/**
 * Where the runs of a timer find room in the hours and under the daily volume that a supply allows,
 * when all of them may fall on the same day.
 */
public final class StartTimes {
  private static final int DAY_S = 86_400;

  /** The runs of all blocks may fall on the same day. */
  private static final List<Rhythm> DAILY = List.of(Rhythm.every(1, 0));

  private final List<CycleRule> cycles;
  private final List<Hours> hours;
  private final double dailyM3;

  private StartTimes(List<CycleRule> cycles, List<Hours> hours, double dailyM3) {
    this.cycles = cycles;
    this.hours = hours;
    this.dailyM3 = dailyM3;
  }

  /**
   * The start times of a system.
   *
   * @param year year of the plan, from 1, whose emitters are open
   */
  public static StartTimes of(Grove grove, Catalogue catalogue, WateringSystem system, int year) {
    return new StartTimes(
        CycleRule.of(grove, catalogue, system.zonesIn(year)),
        DayClock.allowedHours(grove, catalogue),
        grove.supply().dailyLimitM3().orElse(Double.POSITIVE_INFINITY));
  }

  /**
   * Longest run of a zone before water would run off, whole minutes.
   *
   * @param zone index of the zone in the system
   */
  public int longestRunMinutes(int zone) {
    return cycles.get(zone).longestRunMinutes();
  }

  /** Longest span of allowed hours, whole minutes. */
  public int longestSpanMinutes() {
    return hours.stream().mapToInt(Hours::seconds).max().orElse(DAY_S) / 60;
  }

  /**
   * Zones that run one after the other from each of their starts.
   *
   * @param zones indices of the zones
   * @param starts starts a day
   * @param minutes minutes of all zones together after one start
   * @param volumeM3 water of a day, m3
   */
  public record Block(List<Integer> zones, int starts, int minutes, double volumeM3) {
    /** Copies the list. */
    public Block {
      zones = List.copyOf(zones);
    }
  }

  /** Start times for all blocks such that none overlap on any day, if there are such. */
  public Optional<List<List<LocalTime>>> fit(List<Block> blocks) {
    DayClock clock = new DayClock(hours, dailyM3);
    List<List<LocalTime>> found = new ArrayList<>();
    for (Block block : blocks) {
      if (block.minutes() == 0) {
        found.add(List.of());
        continue;
      }
      int soak = 0;
      for (int zone : block.zones()) {
        soak = Math.max(soak, cycles.get(zone).soakS());
      }
      Optional<DayClock.Place> place =
          clock.place(
              new DayClock.Run(
                  block.starts(), block.minutes() * 60, soak, DAILY, block.volumeM3()));
      if (place.isEmpty()) {
        return Optional.empty();
      }
      found.add(
          place.get().starts().stream().map(s -> LocalTime.ofSecondOfDay(s % DAY_S)).toList());
    }
    return Optional.of(found);
  }
}
