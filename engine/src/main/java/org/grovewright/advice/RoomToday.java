package org.grovewright.advice;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.model.Supply;

/**
 * The room that a day has for watering: its allowed hours, with one valve open at a time, the
 * volume that may be drawn, and for each zone no more than twice the longest watering of its timer
 * card, because one plant that lags behind all others is no reason to drown them.
 */
final class RoomToday {
  private static final int MOST_TIMES_CARD = 2;
  private static final int DAY_S = 86_400;

  private final Programme programme;
  private double seconds;
  private double volumeM3;

  RoomToday(Supply supply, Programme programme) {
    this.programme = programme;
    seconds =
        supply.allowedHours().isEmpty()
            ? DAY_S
            : supply.allowedHours().stream().mapToInt(Supply.Hours::seconds).sum();
    volumeM3 = supply.dailyLimitM3().orElse(Double.POSITIVE_INFINITY);
  }

  /** Whole minutes of each zone by its id; the zone with the driest plant is given room first. */
  Map<String, Integer> share(List<ZoneDay> zones) {
    zones.forEach(this::takeWhatIsDrawn);
    Map<String, Integer> minutes = new HashMap<>();
    zones.stream()
        .sorted(Comparator.comparingDouble(ZoneDay::dryness).reversed())
        .forEach(zone -> minutes.put(zone.id(), take(zone)));
    return minutes;
  }

  private void takeWhatIsDrawn(ZoneDay zone) {
    double open = zone.openToday();
    seconds -= open;
    volumeM3 -= open * zone.result.flowM3PerS();
  }

  private int take(ZoneDay zone) {
    double flow = zone.result.flowM3PerS();
    double room = Math.min(seconds, flow > 0 ? volumeM3 / flow : 0);
    int minutes = Math.min(zone.minutes(), (int) Math.max(0, Math.floor(room / 60 + 1e-9)));
    int card =
        programme.settings().stream()
            .filter(setting -> setting.zone().equals(zone.id()))
            .mapToInt(TimerSetting::minutesPerWatering)
            .max()
            .orElse(0);
    if (card > 0) {
      minutes = Math.min(minutes, MOST_TIMES_CARD * card);
    }
    seconds -= minutes * 60.0;
    volumeM3 -= minutes * 60.0 * flow;
    return minutes;
  }
}
