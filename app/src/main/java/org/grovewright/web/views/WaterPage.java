package org.grovewright.web.views;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.Programme.PlantSupply;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.model.Planting;
import org.grovewright.model.WateringDays;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;
import org.grovewright.water.WaterNeeds;

/**
 * How long do I run the water?
 *
 * @param year year of the plan on the day asked for, 0 before the plan begins
 * @param month month of that day
 * @param zones the zones
 * @param remarks remarks on the watering
 */
public record WaterPage(int year, int month, List<Zone> zones, List<Remark> remarks) {
  /**
   * One zone.
   *
   * @param id its id
   * @param name what it is called
   * @param flow flow it draws
   * @param uniformity design emission uniformity
   * @param plants plants it waters
   * @param years the cards of the years planned
   */
  public record Zone(
      String id, String name, Shown flow, Shown uniformity, int plants, List<Card> years) {}

  /**
   * What the timer is set to in a year.
   *
   * @param year year of the plan, from 1
   * @param title what the year is called
   * @param months its months in their order
   */
  public record Card(int year, String title, List<Setting> months) {}

  /**
   * What the timer is set to in a month.
   *
   * @param month month, 1 to 12
   * @param name the month with its calendar year
   * @param off whether the zone stays off
   * @param every how often it waters
   * @param starts when it starts
   * @param minutes minutes of a watering
   * @param total minutes of a watering as a number, for the picture
   * @param perWeek minutes a week as a number, for the picture
   * @param shortest the plant that gets the least share of its need, empty if nothing is needed
   * @param gets what it gets
   * @param needs what it needs
   */
  public record Setting(
      int month,
      String name,
      boolean off,
      Shown every,
      String starts,
      Shown minutes,
      int total,
      long perWeek,
      String shortest,
      Shown gets,
      Shown needs) {}

  /** The page of a plan on a day. */
  public static WaterPage of(Plan plan, LocalDate day, Voice voice) {
    PlanMonth now = PlanMonth.of(day, plan.grove());
    List<Zone> zones =
        plan.watering().zones().stream()
            .map(
                zone -> {
                  String id = zone.design().id();
                  String figures = "hydraulics.zone." + FigureBook.slug(id) + ".";
                  return new Zone(
                      id,
                      voice.zone(id),
                      voice.figure(plan, figures + "flow"),
                      voice.figure(plan, figures + "emission-uniformity"),
                      zone.plantFlows().size(),
                      cards(plan, id, voice));
                })
            .toList();
    List<Remark> remarks =
        Stream.of(plan.programme().findings(), plan.watering().findings(), plan.water().findings())
            .flatMap(List::stream)
            .map(finding -> voice.remark(plan, finding))
            .toList();
    boolean begun = !day.isBefore(plan.grove().start().withDayOfMonth(1));
    return new WaterPage(begun ? now.year() : 0, now.month(), zones, remarks);
  }

  private static List<Card> cards(Plan plan, String zone, Voice voice) {
    List<Card> cards = new ArrayList<>();
    int first = plan.grove().start().getMonthValue();
    for (int year = 1; year <= Programme.YEARS; year++) {
      List<Setting> months = new ArrayList<>();
      for (int i = 0; i < 12; i++) {
        int month = (first + i - 1) % 12 + 1;
        setting(plan, zone, new PlanMonth(year, month))
            .ifPresent(setting -> months.add(month(plan, setting, voice)));
      }
      String from = voice.language().month(PlanMonth.calendar(year, first, plan.grove()));
      cards.add(new Card(year, voice.text("water.year", year, from), months));
    }
    return cards;
  }

  /** What the timer of a zone is set to in a month, if it is planned. */
  static Optional<TimerSetting> setting(Plan plan, String zone, PlanMonth when) {
    return plan.programme().settings().stream()
        .filter(s -> s.zone().equals(zone) && s.year() == when.year() && s.month() == when.month())
        .findFirst();
  }

  private static Setting month(Plan plan, TimerSetting setting, Voice voice) {
    Optional<PlantSupply> worst =
        plan.programme().shortest(setting.zone(), setting.year(), setting.month());
    return new Setting(
        setting.month(),
        voice.language().month(PlanMonth.calendar(setting.year(), setting.month(), plan.grove())),
        setting.off(),
        every(plan, setting, voice),
        starts(setting, voice),
        minutes(plan, setting, voice),
        setting.minutesPerWatering(),
        Math.round(setting.secondsPerDay() * 7 / 60),
        worst.map(supply -> plant(plan, supply).id()).orElse(""),
        worst.map(supply -> gets(plan, supply, voice)).orElse(Shown.NONE),
        worst.map(supply -> needs(plan, supply, voice)).orElse(Shown.NONE));
  }

  /** How often a zone waters. */
  static Shown every(Plan plan, TimerSetting setting, Voice voice) {
    if (setting.off()) {
      return Shown.plain(voice.text("water.off"));
    }
    String text =
        setting.rhythm().byCalendar()
            ? on(setting.rhythm().days(), voice)
            : counted(setting.everyDays(), voice);
    return voice.shown(plan, timerId(setting) + "every", text);
  }

  private static String on(WateringDays days, Voice voice) {
    return switch (days.dates()) {
      case ODD -> voice.text("water.odd-dates");
      case EVEN -> voice.text("water.even-dates");
      case ALL ->
          voice.text(
              "water.on-days",
              String.join(", ", days.weekdays().stream().map(voice.language()::weekday).toList()));
    };
  }

  private static String counted(int days, Voice voice) {
    return switch (days) {
      case 1 -> voice.text("water.every-day");
      case 2 -> voice.text("water.every-other-day");
      default -> voice.text("water.every-days", days);
    };
  }

  /** When a zone starts on a watering day. */
  static String starts(TimerSetting setting, Voice voice) {
    String times = String.join(", ", setting.starts().stream().map(LocalTime::toString).toList());
    return setting.off() || setting.rhythm().firstDay() == 0
        ? times
        : voice.text("water.first-on-day", times, setting.rhythm().firstDay() + 1);
  }

  /** How long a zone runs on a watering day. */
  static Shown minutes(Plan plan, TimerSetting setting, Voice voice) {
    if (setting.off()) {
      return Shown.NONE;
    }
    int cycles = setting.starts().size();
    return voice.shown(
        plan,
        timerId(setting) + "minutes",
        cycles == 1
            ? voice.text("water.minutes", setting.minutesPerCycle())
            : voice.text("water.cycles", cycles, setting.minutesPerCycle()));
  }

  private static Planting plant(Plan plan, PlantSupply supply) {
    return plan.grove().plantings().get(supply.plant());
  }

  /** What a plant gets. */
  static Shown gets(Plan plan, PlantSupply supply, Voice voice) {
    String id =
        Programme.timerId(supply.zone(), supply.year(), supply.month())
            + "plant."
            + FigureBook.slug(plant(plan, supply).id())
            + ".gets";
    return voice.shown(plan, id, supply.getsM3PerS(), Kind.DAILY_WATER);
  }

  /** What a plant needs. */
  static Shown needs(Plan plan, PlantSupply supply, Voice voice) {
    return voice.shown(
        plan,
        WaterNeeds.needId(plant(plan, supply).id(), supply.year(), supply.month()),
        supply.needsM3PerS(),
        Kind.DAILY_WATER);
  }

  private static String timerId(TimerSetting setting) {
    return Programme.timerId(setting.zone(), setting.year(), setting.month());
  }
}
