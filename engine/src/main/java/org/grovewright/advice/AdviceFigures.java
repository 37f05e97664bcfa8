package org.grovewright.advice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;
import org.grovewright.water.Leaching;

/** Enters the numbers of an advice with their workings. */
final class AdviceFigures {
  private static final double DAY_S = 86_400;
  private static final String BALANCE =
      "what was missing, less rain and watering that stayed, and what the plant and the soil gave"
          + " off, day by day";
  private static final String BALANCE_SOURCE = "FAO-56 (1998) equation 85";
  private static final String ACCOUNT = "the weather, the log and the timer card";
  private static final String RULE_SOURCE =
      "FAO-56 (1998) chapter 8: the root zone is filled again when its readily available water is"
          + " used up";

  private final Plan plan;
  private final Catalogue catalogue;
  private final FigureBook book;
  private final int today;
  private final int year;

  /**
   * Figures of a plan's advice.
   *
   * @param today index of the day of the advice among its days
   * @param year year of the plan that the day falls in
   */
  AdviceFigures(Plan plan, FigureBook book, int today, int year) {
    this.plan = plan;
    this.catalogue = plan.catalogue();
    this.book = book;
    this.today = today;
    this.year = year;
  }

  private static String plantId(String plant, String what) {
    return "advice.plant." + FigureBook.slug(plant) + "." + what;
  }

  private static String zoneId(String zone, String what) {
    return "advice.zone." + FigureBook.slug(zone) + "." + what;
  }

  /** The soil of a plant this morning. */
  PlantState plant(PlantTrack track, String zone) {
    String id = track.planting().id();
    double perMm = track.soilM2(today) / 1000;
    boolean stoodBefore = track.isPlanted(today - 1);
    Input area =
        new Input("A_s", track.soilM2(today), Kind.AREA, "soil within the reach of the roots");
    Input held =
        new Input(
            "(FC - WP) Z",
            track.totalMm(today) / 1000,
            Kind.WATER_DEPTH,
            plan.water().soil().origin());
    Figure missing =
        book.enter(
            plantId(id, "missing"),
            "water missing from the root zone this morning",
            track.endMm(today - 1) * perMm,
            Kind.WATER_VOLUME,
            Working.of(
                BALANCE,
                BALANCE_SOURCE,
                new Input(
                    "missing, as a depth",
                    track.endMm(today - 1) / 1000,
                    Kind.WATER_DEPTH,
                    ACCOUNT),
                new Input(
                    "root zone", track.soilM2(today), Kind.AREA, "catalogue: species, growth")));
    Figure total =
        book.enter(
            plantId(id, "total"),
            "water that a full root zone holds for the plant",
            track.totalMm(today) * perMm,
            Kind.WATER_VOLUME,
            Working.of("(FC - WP) Z A_s", "FAO-56 (1998) equation 82", held, area));
    Figure limit =
        book.enter(
            plantId(id, "limit"),
            "water that may be missing before the plant begins to suffer",
            track.limitMm(today) * perMm,
            Kind.WATER_VOLUME,
            Working.of(
                "p (FC - WP) Z A_s",
                "FAO-56 (1998) equations 82 and 83, p by the day's use as in table 22, note 2",
                new Input(
                    "p",
                    track.totalMm(today) > 0 ? track.limitMm(today) / track.totalMm(today) : 0,
                    Kind.SHARE,
                    "catalogue: species; the day's use"),
                held,
                area));
    double felt = stoodBefore ? track.feltMm(today - 1) : 0;
    double may = stoodBefore ? track.limitMm(today - 1) : track.limitMm(today);
    Figure dryness =
        book.enter(
            plantId(id, "dryness"),
            "how far the plant has gone to where it begins to suffer",
            stoodBefore ? track.dryness(today - 1) : 0,
            Kind.SHARE,
            Working.of(
                "missing where the roots are, over what may be missing",
                "FAO-56 (1998) equation 84; where the roots are still in their ball, that is drier"
                    + " or wetter than the soil around it",
                new Input(
                    "missing where the roots are, yesterday evening",
                    felt / 1000,
                    Kind.WATER_DEPTH,
                    ACCOUNT),
                new Input(
                    "what may be missing",
                    may / 1000,
                    Kind.WATER_DEPTH,
                    "catalogue: species; the day's use")));
    return new PlantState(id, zone, missing, limit, total, dryness);
  }

  /** Minutes that a zone wants. */
  Figure wanted(ZoneDay zone) {
    return book.enter(
        zoneId(zone.id(), "wanted"),
        "Minutes that the zone's plants want today",
        zone.minutes() * 60.0,
        Kind.RUN_TIME,
        zone.wanting().map(plant -> wantedWorking(zone, plant)).orElseGet(AdviceFigures::skip));
  }

  private Working wantedWorking(ZoneDay zone, ZoneDay.Plant plant) {
    PlantTrack track = plant.track();
    Leaching leaching = plant.leaching();
    List<Input> inputs = new ArrayList<>();
    inputs.add(
        new Input(
            "missing D of " + plant.id() + " after today's rain",
            track.startMm(today) * track.soilM2(today) / 1000,
            Kind.WATER_VOLUME,
            plantId(plant.id(), "missing")));
    inputs.add(
        new Input(
            "flow q at " + plant.id(),
            plant.flowM3PerS(),
            Kind.EMITTER_FLOW,
            WateringSystem.plantFlowId(zone.id(), plant.id(), year)));
    inputs.add(catalogue.constant("irrigation.application-efficiency").as("efficiency e"));
    inputs.addAll(leaching.inputs());
    String end =
        ", in whole minutes, for the plant that wants the longest of those that would begin to"
            + " suffer";
    return leaching.share() > 0
        ? new Working("t = D / (q e (1 - L))" + end, inputs, RULE_SOURCE + "; " + Leaching.SOURCE)
        : new Working("t = D / (q e)" + end, inputs, RULE_SOURCE);
  }

  private static Working skip() {
    return Working.of(
        "nothing while no plant of the zone would use up its readily available water by this"
            + " evening",
        "FAO-56 (1998) chapter 8");
  }

  /** Minutes of a zone and how they are cut. */
  ZoneAdvice.Times times(ZoneDay zone, RoomToday.Share share, int runs, int each, int longest) {
    Figure wanted = wanted(zone);
    List<Input> bounds = new ArrayList<>();
    bounds.add(Input.from("wanted", wanted));
    bounds.addAll(share.inputs());
    Figure perRun =
        book.enter(
            zoneId(zone.id(), "per-run"),
            "Minutes of each run",
            each * 60.0,
            Kind.RUN_TIME,
            perRunWorking(share.minutes(), longest));
    Figure count =
        book.enter(
            zoneId(zone.id(), "runs"),
            "Runs that the watering is cut into",
            runs,
            Kind.COUNT,
            perRunWorking(share.minutes(), longest));
    bounds.add(Input.from("runs", count));
    Figure time =
        book.enter(
            zoneId(zone.id(), "time"),
            "Minutes to water today",
            runs * each * 60.0,
            Kind.RUN_TIME,
            new Working(
                "what is wanted, at most what the day has room for, in runs of whole minutes",
                bounds,
                Working.COMMON_PRACTICE));
    return new ZoneAdvice.Times(wanted, time, count, perRun);
  }

  private static Working perRunWorking(int minutes, int longest) {
    Input all = new Input("minutes", minutes * 60.0, Kind.RUN_TIME, "wanted and room for");
    return longest == Integer.MAX_VALUE
        ? Working.of(
            "one run, for the timer card has no watering that the soil could not drink at once",
            Working.COMMON_PRACTICE,
            all)
        : Working.of(
            "as few runs as are no longer than the longest of the timer card, all alike in whole"
                + " minutes",
            "the soil drinks no more at once: timer.cycle-and-soak",
            all,
            new Input("longest run", longest * 60.0, Kind.RUN_TIME, "timer card"));
  }

  /** Water through a zone's valve. */
  Figure volume(ZoneDay zone, Figure time) {
    double flow = zone.result.flowM3PerS();
    return book.enter(
        zoneId(zone.id(), "volume"),
        "Water through the valve today",
        time.value() * flow,
        Kind.WATER_VOLUME,
        Working.of(
            "flow times time",
            Working.COMMON_PRACTICE,
            new Input("flow", flow, Kind.FLOW, WateringSystem.zoneFlowId(zone.id(), year)),
            Input.from("time", time)));
  }

  /** Days until a zone will want water. */
  Figure daysToNext(ZoneDay zone, int day, Figure time) {
    return book.enter(
        zoneId(zone.id(), "next"),
        "Days until the zone wants water if no rain comes",
        (day - today) * DAY_S,
        Kind.DAYS,
        Working.of(
            "days until the last watering day before the readily available water of one of its"
                + " plants would be used up, today's advice followed, with forecast or usual"
                + " temperatures",
            BALANCE_SOURCE,
            Input.from("watered today", time)));
  }

  /** Waterings that are counted though nobody noted them. */
  ZoneAdvice.Assumed assumed(ZoneDay zone, LocalDate first) {
    List<LocalDate> days = zone.runs.assumedDays().stream().map(first::plusDays).toList();
    Figure count =
        book.enter(
            zoneId(zone.id(), "assumed"),
            "Waterings that are counted though the log has no note of them",
            days.size(),
            Kind.COUNT,
            Working.of(
                "turns of the timer card since the weather begins on which the log is silent,"
                    + " counted on from the last watering or skipped watering",
                Working.COMMON_PRACTICE,
                new Input("days looked at", today * DAY_S, Kind.DAYS, "the weather, the log")));
    Optional<Figure> ifShut =
        zone.assumedLately()
            ? Optional.of(
                book.enter(
                    zoneId(zone.id(), "if-shut"),
                    "Minutes that the zone would want had those of the past week not run",
                    zone.minutesIfShut() * 60.0,
                    Kind.RUN_TIME,
                    Working.of(
                        "the account made again without the waterings of the past seven days that"
                            + " nobody noted",
                        BALANCE_SOURCE,
                        Input.from("waterings without a note", count))))
            : Optional.empty();
    return new ZoneAdvice.Assumed(count, days, ifShut);
  }

  /** What makes a plant worth a look. */
  Figure look(PlantTrack track, LookAt.Reason reason, double amount) {
    String id = track.planting().id();
    return switch (reason) {
      case BY_HAND ->
          book.enter(
              plantId(id, "by-hand"),
              "water to bring by hand",
              amount,
              Kind.WATER_VOLUME,
              Working.of(
                  "what is missing from the root zone after today's rain",
                  BALANCE_SOURCE,
                  new Input(
                      "missing, as a depth",
                      track.startMm(today) / 1000,
                      Kind.WATER_DEPTH,
                      ACCOUNT),
                  new Input(
                      "root zone", track.soilM2(today), Kind.AREA, "catalogue: species, growth")));
      case THIRSTY ->
          book.enter(
              plantId(id, "dry-days"),
              "days that the plant has been too dry",
              amount,
              Kind.DAYS,
              Working.of(
                  "evenings in a row, up to yesterday's, on which more was missing than may be",
                  "FAO-56 (1998) equations 83 and 85",
                  new Input(
                      "missing where the roots are, yesterday evening",
                      track.feltMm(today - 1) / 1000,
                      Kind.WATER_DEPTH,
                      ACCOUNT),
                  new Input(
                      "what may be missing",
                      track.limitMm(today - 1) / 1000,
                      Kind.WATER_DEPTH,
                      plantId(id, "limit"))));
      case NEWLY_SET ->
          book.enter(
              plantId(id, "days-without"),
              "days that a newly set plant has been without water",
              amount,
              Kind.DAYS,
              Working.of(
                  "whole days since rain or watering last reached its root ball",
                  Working.COMMON_PRACTICE,
                  catalogue
                      .constant("water.establishment-interval")
                      .as("longest interval of a newly set plant")));
    };
  }
}
