package org.grovewright.advice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.grovewright.advice.ZoneAdvice.Held;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.model.Supply;
import org.grovewright.model.WateringDays;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/**
 * The room that a day has for watering: whether it is allowed at all, its allowed hours, with one
 * valve open at a time, what the limits of a day and of any seven days leave to be drawn, and for
 * each zone no more than twice the longest watering of its timer card, because one plant that lags
 * behind all others is no reason to drown them.
 *
 * <p>What was drawn is known from the log, and from the timer card where the log is silent, so the
 * room is as right as the account of the soil.
 */
final class RoomToday {
  /** Days over which a weekly limit counts, today the last of them. */
  static final int WEEK = 7;

  private static final int MOST_TIMES_CARD = 2;
  private static final int DAY_S = 86_400;
  private static final String ID = "advice.room.";
  private static final String LOG = "the log, and the timer card where it is silent";

  private final Programme programme;
  private final List<ZoneDay> zones;
  private final LocalDate date;
  private final WateringDays allowedDays;
  private final int today;
  private final FigureBook book;
  private final Figure time;
  private final OptionalDouble dayLimitM3;
  private final OptionalDouble weekLimitM3;
  private double seconds;
  private double dayM3;
  private double weekM3;

  /**
   * The room before anything is watered on the day of the advice.
   *
   * @param zones all zones, followed until today
   * @param today index of the day among the days of the advice, at least six
   */
  RoomToday(
      Supply supply,
      Programme programme,
      List<ZoneDay> zones,
      LocalDate date,
      int today,
      FigureBook book) {
    this.programme = programme;
    this.zones = zones;
    this.date = date;
    this.allowedDays = supply.allowedDays();
    this.today = today;
    this.book = book;
    dayLimitM3 = supply.dailyLimitM3();
    weekLimitM3 = supply.weeklyLimitM3();
    boolean anyHour = supply.allowedHours().isEmpty();
    int hours =
        anyHour ? DAY_S : supply.allowedHours().stream().mapToInt(Supply.Hours::seconds).sum();
    double open = zones.stream().mapToDouble(ZoneDay::openToday).sum();
    seconds = Math.max(0, hours - open);
    time =
        book.enter(
            ID + "time",
            "Time left for watering today",
            seconds,
            Kind.WORK_TIME,
            Working.of(
                "allowed hours less the time that valves were open today, one at a time",
                Working.COMMON_PRACTICE,
                new Input(
                    "allowed hours",
                    hours,
                    Kind.WORK_TIME,
                    anyHour ? "assumed: any hour of the day" : "description"),
                new Input("open today", open, Kind.RUN_TIME, LOG)));
    dayM3 = left("day", "Water that may still be drawn today", "limit of a day", dayLimitM3, 1);
    weekM3 =
        left("week", "Water that may still be drawn this week", "limit of a week", weekLimitM3, 7);
  }

  private double left(String what, String label, String limitName, OptionalDouble limit, int days) {
    if (limit.isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    double drawn = 0;
    for (int day = today - days + 1; day <= today; day++) {
      drawn += drawnM3(day);
    }
    double left = Math.max(0, limit.getAsDouble() - drawn);
    book.enter(
        ID + what,
        label,
        left,
        Kind.WATER_VOLUME,
        Working.of(
            days == 1
                ? "limit less what was drawn today, not below 0"
                : "limit less what was drawn today and on the six days before, not below 0",
            "the limits of the description hold for any day and any seven days",
            new Input(limitName, limit.getAsDouble(), Kind.WATER_VOLUME, "description"),
            new Input("drawn", drawn, Kind.WATER_VOLUME, LOG)));
    return left;
  }

  private double drawnM3(int day) {
    double sum = 0;
    for (ZoneDay zone : zones) {
      sum += zone.runs.seconds()[day] * zone.result.flowM3PerS();
    }
    return sum;
  }

  /**
   * What a zone is given of the room.
   *
   * @param minutes whole minutes
   * @param held what keeps it from more, if anything
   * @param inputs the bounds as the zone met them, for its working
   */
  record Share(int minutes, Held held, List<Input> inputs) {
    /** Copies the inputs. */
    Share {
      inputs = List.copyOf(inputs);
    }
  }

  /** The share of each zone by its id; the zone with the driest plant is given room first. */
  Map<String, Share> share() {
    Map<String, Share> shares = new HashMap<>();
    zones.stream()
        .sorted(Comparator.comparingDouble(ZoneDay::dryness).reversed())
        .forEach(zone -> shares.put(zone.id(), take(zone)));
    return shares;
  }

  private Share take(ZoneDay zone) {
    double flow = zone.result.flowM3PerS();
    int minutes = zone.minutes();
    Held held = Held.FREE;
    List<Input> inputs = new ArrayList<>();
    inputs.add(new Input("time left at its turn", seconds, Kind.RUN_TIME, time.id()));
    if (whole(seconds) < minutes) {
      minutes = whole(seconds);
      held = Held.HOURS;
    }
    if (dayLimitM3.isPresent() && flow > 0) {
      inputs.add(volume("left of the day's limit at its turn", dayM3, "day"));
      if (whole(dayM3 / flow) < minutes) {
        minutes = whole(dayM3 / flow);
        held = Held.DAY_LIMIT;
      }
    }
    if (weekLimitM3.isPresent() && flow > 0) {
      inputs.add(volume("left of the week's limit at its turn", weekM3, "week"));
      if (whole(weekM3 / flow) < minutes) {
        minutes = whole(weekM3 / flow);
        held = Held.WEEK_LIMIT;
      }
    }
    if (minutes > 0 && !allowedDays.allows(date)) {
      minutes = 0;
      held = Held.NOT_ALLOWED;
    }
    int card = longestOnCard(zone.id());
    if (card > 0) {
      double most = MOST_TIMES_CARD * card * 60.0;
      inputs.add(
          new Input("twice the longest watering of its card", most, Kind.RUN_TIME, "timer card"));
      if (whole(most) < minutes) {
        minutes = whole(most);
        held = Held.CARD;
      }
    }
    seconds -= minutes * 60.0;
    dayM3 -= minutes * 60.0 * flow;
    weekM3 -= minutes * 60.0 * flow;
    return new Share(minutes, held, inputs);
  }

  private static Input volume(String symbol, double left, String what) {
    return new Input(symbol, Math.max(0, left), Kind.WATER_VOLUME, ID + what);
  }

  private static int whole(double allowedSeconds) {
    return (int) Math.max(0, Math.floor(Math.min(allowedSeconds, DAY_S) / 60 + 1e-9));
  }

  private int longestOnCard(String zone) {
    return programme.settings().stream()
        .filter(setting -> setting.zone().equals(zone))
        .mapToInt(TimerSetting::minutesPerWatering)
        .max()
        .orElse(0);
  }

  /** The first day on which a zone that is held back today may have more. */
  LocalDate askAgain(Held held) {
    int free = today + 1;
    if (held == Held.WEEK_LIMIT) {
      // A day's draw counts for the six days after it and is free again on the seventh.
      while (free < today + WEEK && drawnM3(free - WEEK) <= 0) {
        free++;
      }
    }
    LocalDate day = date.plusDays(free - today);
    while (!allowedDays.allows(day)) {
      day = day.plusDays(1);
    }
    return day;
  }
}
