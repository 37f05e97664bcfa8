package org.grovewright.irrigation;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.irrigation.Programme.PlantSupply;
import org.grovewright.model.Grove;
import org.grovewright.model.Supply.Hours;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;
import org.grovewright.water.MonthNeed;
import org.grovewright.water.WaterNeeds;

/**
 * Makes a {@link Programme}.
 *
 * <p>One valve gives all its plants the same minutes, so a zone runs as long as its neediest plant
 * wants: the minutes per day are the greatest of need over flow, divided by the application
 * efficiency. Waterings are spaced as far apart as the plant that dries out first allows. Where
 * emitters give water faster than the soil takes it in, a run is cut into cycles with pauses. Runs
 * that do not fit the allowed hours or the daily volume are spread over more days, and where that
 * does not help they are shortened and the shortage is shown. Where water may run on some days
 * only, the waterings fall on these; none is longer than the soil of the plants can hold.
 */
final class ProgrammeMaker {
  private static final int DAY_S = 86_400;
  private static final double SHORTEN_STEP = 0.97;
  private static final int MOST_PER_DAY = 4;
  private static final int WEEK = 7;

  /** Pause wished for between the waterings of a day where a plant wants more than one. */
  private static final int SPREAD_S = 3 * 3600;

  private final Grove grove;
  private final Catalogue catalogue;
  private final WateringSystem system;
  private final WaterNeeds needs;
  private final FigureBook book;
  private final double efficiency;
  private final List<List<Rhythm>> rhythms;
  private final int longestGap;
  private final double enough;
  private final double tooMuch;
  private final double leastExcess;
  private final List<Hours> hours;
  private final double dailyM3;
  private final double weeklyM3;

  /** Flow of each plant, by year and zone. */
  private final List<List<Map<Integer, Double>>> flows = new ArrayList<>();

  private final List<List<CycleRule>> cycles = new ArrayList<>();
  private final List<TimerSetting> settings = new ArrayList<>();
  private final List<PlantSupply> supplies = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  ProgrammeMaker(
      Grove grove, Catalogue catalogue, WateringSystem system, WaterNeeds needs, FigureBook book) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.system = system;
    this.needs = needs;
    this.book = book;
    efficiency = constant("application-efficiency");
    longestGap = (int) Math.round(constant("longest-gap") / DAY_S);
    rhythms = Rhythm.choices(grove.supply().allowedDays(), longestGap);
    enough = constant("enough");
    tooMuch = constant("too-much");
    leastExcess = constant("least-excess");
    hours = DayClock.allowedHours(grove, catalogue);
    dailyM3 = grove.supply().dailyLimitM3().orElse(Double.POSITIVE_INFINITY);
    weeklyM3 = grove.supply().weeklyLimitM3().orElse(Double.POSITIVE_INFINITY);
    for (int year = 1; year <= Programme.YEARS; year++) {
      List<ZoneResult> zones = system.zonesIn(year);
      flows.add(zones.stream().map(ZoneResult::plantFlows).toList());
      cycles.add(CycleRule.of(grove, catalogue, zones));
    }
  }

  private double constant(String key) {
    return catalogue.constant("irrigation." + key).value();
  }

  Programme make() {
    for (int year = 1; year <= Programme.YEARS; year++) {
      for (int month = 1; month <= 12; month++) {
        List<TimerSetting> fitted = month(year, month);
        for (int z = 0; z < fitted.size(); z++) {
          settings.add(fitted.get(z));
          enter(z, fitted.get(z));
        }
      }
    }
    Remedies remedies = new Remedies(grove, catalogue, system, supplies);
    findings.addAll(SupplyRemarks.of(grove, supplies, enough, tooMuch, leastExcess, remedies));
    DaysApart.of(grove, settings, supplies, needs).ifPresent(findings::add);
    WaterOrder.of(grove, catalogue, supplies, enough).ifPresent(findings::add);
    remarkOnCycles();
    return new Programme(settings, supplies, findings);
  }

  /** A zone's wish for a month: what would give every plant its need. */
  private record Wish(double secondsPerDay, int rarest, int perDay, int neediest) {}

  /** What a plant wants of one watering, and what its soil has room for; seconds. */
  private record Watering(double seconds, int neediest) {}

  private List<TimerSetting> month(int year, int month) {
    List<Wish> wishes = new ArrayList<>();
    for (int z = 0; z < system.zones().size(); z++) {
      wishes.add(wish(z, year, month));
    }
    // Longer gaps first: fewer, deeper waterings. Where the heaviest day does not fit, shorter gaps
    // spread the same water evenly; only then is water taken away.
    for (int rarest = 0; rarest < rhythms.size(); rarest++) {
      Optional<List<TimerSetting>> fitted = fit(wishes, year, month, rarest, 1);
      if (fitted.isPresent()) {
        return fitted.get();
      }
    }
    for (double share = SHORTEN_STEP; share > 1e-3; share *= SHORTEN_STEP) {
      for (int rarest = 0; rarest < rhythms.size(); rarest++) {
        Optional<List<TimerSetting>> fitted = fit(wishes, year, month, rarest, share);
        if (fitted.isPresent()) {
          return fitted.get();
        }
      }
    }
    return system.zones().stream().map(zone -> off(zone, year, month, 0)).toList();
  }

  private Wish wish(int z, int year, int month) {
    double seconds = 0;
    double interval = longestGap * (double) DAY_S;
    int neediest = -1;
    for (Map.Entry<Integer, Double> plant : flows.get(year - 1).get(z).entrySet()) {
      MonthNeed of = needs.plants().get(plant.getKey()).at(year, month);
      double need = of.need().value();
      if (need <= 0 || plant.getValue() <= 0) {
        continue;
      }
      double wanted = need * DAY_S / (plant.getValue() * efficiency);
      if (wanted > seconds) {
        seconds = wanted;
        neediest = plant.getKey();
      }
      interval = Math.min(interval, of.longestInterval().value());
    }
    int gap = (int) Math.max(1, Math.floor(interval / DAY_S + 1e-9));
    int rarest = 0;
    while (rarest < rhythms.size() - 1 && rhythms.get(rarest).get(0).everyDays() > gap) {
      rarest++;
    }
    int perDay = (int) Math.min(MOST_PER_DAY, Math.max(1, Math.ceil(DAY_S / interval - 1e-9)));
    return new Wish(seconds, rarest, perDay, neediest);
  }

  /** The longest that a plant of a zone wants of one watering, no longer than its soil has room. */
  private Watering watering(int z, int year, int month, Wish wish, Rhythm rhythm) {
    double seconds = 0;
    int neediest = -1;
    for (Map.Entry<Integer, Double> plant : flows.get(year - 1).get(z).entrySet()) {
      MonthNeed of = needs.plants().get(plant.getKey()).at(year, month);
      if (of.need().value() <= 0 || plant.getValue() <= 0) {
        continue;
      }
      double flow = plant.getValue() * efficiency;
      double wanted = of.need().value() * DAY_S / flow * rhythm.meanGap(month);
      // Counted days are never further apart than the soil allows; those of a calendar may be.
      double room =
          rhythm.byCalendar() ? wish.perDay() * of.totalM3() / flow : Double.POSITIVE_INFINITY;
      if (Math.min(wanted, room) > seconds) {
        seconds = Math.min(wanted, room);
        neediest = plant.getKey();
      }
    }
    return new Watering(seconds, neediest);
  }

  private Optional<List<TimerSetting>> fit(
      List<Wish> wishes, int year, int month, int rarest, double share) {
    DayClock clock = new DayClock(hours, dailyM3);
    List<TimerSetting> fitted = new ArrayList<>();
    double inSevenDaysM3 = 0;
    for (int z = 0; z < wishes.size(); z++) {
      ZoneResult zone = system.zones().get(z);
      Wish wish = wishes.get(z);
      if (wish.secondsPerDay() <= 0) {
        fitted.add(off(zone, year, month, 0));
        continue;
      }
      List<Rhythm> days = rhythms.get(Math.max(rarest, wish.rarest()));
      Watering watering = watering(z, year, month, wish, days.get(0));
      DayClock.Run run = run(z, year, wish, watering.seconds() * share, days, share < 1);
      Optional<DayClock.Place> place = clock.place(run.pausing(wish.perDay() > 1 ? SPREAD_S : 0));
      if (place.isEmpty()) {
        place = clock.place(run);
      }
      // Seven days hold at most so many waterings, wherever they begin.
      inSevenDaysM3 += run.volume() * days.get(0).mostIn(WEEK);
      if (place.isEmpty() || inSevenDaysM3 > weeklyM3 * (1 + 1e-9)) {
        return Optional.empty();
      }
      List<LocalTime> starts =
          place.get().starts().stream().map(s -> LocalTime.ofSecondOfDay(s % DAY_S)).toList();
      fitted.add(
          new TimerSetting(
              zone.design().id(),
              year,
              month,
              place.get().rhythm(),
              starts,
              run.onS() / 60,
              wish.secondsPerDay() / 60,
              watering.neediest()));
    }
    return Optional.of(fitted);
  }

  /** Whole minutes: rounded up where the need is to be met, down where water is short. */
  private DayClock.Run run(
      int z, int year, Wish wish, double wantedS, List<Rhythm> days, boolean shortened) {
    CycleRule cycle = cycles.get(year - 1).get(z);
    double minutes = wantedS / 60;
    int whole = (int) Math.max(1, shortened ? Math.floor(minutes) : Math.ceil(minutes - 1e-9));
    int longestRun = cycle.longestRunMinutes();
    int count = Math.max((whole - 1) / longestRun + 1, Math.min(whole, wish.perDay()));
    int each = shortened ? Math.max(1, whole / count) : (whole - 1) / count + 1;
    double volume = count * each * 60.0 * system.zonesIn(year).get(z).flowM3PerS();
    return new DayClock.Run(count, each * 60, cycle.soakS(), days, volume);
  }

  private static TimerSetting off(ZoneResult zone, int year, int month, double needed) {
    return new TimerSetting(zone.design().id(), year, month, Rhythm.OFF, List.of(), 0, needed, -1);
  }

  private void enter(int z, TimerSetting setting) {
    String id = Programme.timerId(setting.zone(), setting.year(), setting.month());
    Map<Integer, Double> zoneFlows = flows.get(setting.year() - 1).get(z);
    Input each =
        new Input("minutes per day t", setting.secondsPerDay(), Kind.RUN_TIME, id + "minutes");
    if (setting.neediest() >= 0) {
      book.enter(
          id + "minutes",
          "Minutes on each watering day",
          setting.minutesPerWatering() * 60.0,
          Kind.RUN_TIME,
          minutesWorking(id, setting, zoneFlows.get(setting.neediest())));
      book.enter(
          id + "every",
          "Days from one watering to the next",
          setting.rhythm().meanGap(setting.month()) * DAY_S,
          Kind.DAYS,
          setting.rhythm().byCalendar()
              ? Working.of(
                  "the fewest of the allowed days that the zone's plants allow, or all of them; as a"
                      + " mean over the month",
                  "readily available water over daily use, FAO-56 chapter 8")
              : Working.of(
                  "the shortest interval that the zone's plants allow, at most "
                      + longestGap
                      + " days; shorter where the allowed hours ask for it",
                  "readily available water over daily use, FAO-56 chapter 8"));
    }
    for (Map.Entry<Integer, Double> plant : zoneFlows.entrySet()) {
      double need = needOf(plant.getKey(), setting);
      double gets = plant.getValue() * setting.secondsPerDay() * efficiency / DAY_S;
      supplies.add(
          new PlantSupply(
              plant.getKey(), setting.zone(), setting.year(), setting.month(), need, gets));
      if (setting.off() && need <= 0) {
        continue;
      }
      String plantId = grove.plantings().get(plant.getKey()).id();
      book.enter(
          id + "plant." + FigureBook.slug(plantId) + ".gets",
          "Water that " + plantId + " gets per day",
          gets,
          Kind.DAILY_WATER,
          Working.of(
              "q t e / 86400",
              "volume is flow times time",
              new Input(
                  "flow q",
                  plant.getValue(),
                  Kind.EMITTER_FLOW,
                  WateringSystem.plantFlowId(setting.zone(), plantId, setting.year())),
              each,
              catalogue.constant("irrigation.application-efficiency").as("efficiency e")));
    }
  }

  private Working minutesWorking(String id, TimerSetting setting, double flow) {
    String plantId = grove.plantings().get(setting.neediest()).id();
    List<Input> inputs =
        new ArrayList<>(
            List.of(
                new Input(
                    "need V of " + plantId,
                    needOf(setting.neediest(), setting),
                    Kind.DAILY_WATER,
                    WaterNeeds.needId(plantId, setting.year(), setting.month())),
                new Input(
                    "flow q at " + plantId,
                    flow,
                    Kind.EMITTER_FLOW,
                    WateringSystem.plantFlowId(setting.zone(), plantId, setting.year())),
                catalogue.constant("irrigation.application-efficiency").as("efficiency e"),
                new Input(
                    "days",
                    setting.rhythm().meanGap(setting.month()) * DAY_S,
                    Kind.DAYS,
                    id + "every")));
    String formula = "t = days x 86400 V / (q e)";
    if (setting.rhythm().byCalendar()) {
      MonthNeed of = needs.plants().get(setting.neediest()).at(setting.year(), setting.month());
      inputs.add(
          new Input(
              "water W that its root zone holds",
              of.totalM3(),
              Kind.WATER_VOLUME,
              "soil and roots of the plant"));
      formula += ", no more than W / (q e)";
    }
    return Working.of(
        formula + ", the greatest of the zone's plants, in whole minutes",
        "need over flow; efficiency of the catalogue",
        inputs.toArray(Input[]::new));
  }

  private double needOf(int plant, TimerSetting setting) {
    return needs.plants().get(plant).at(setting.year(), setting.month()).need().value();
  }

  private void remarkOnCycles() {
    Map<String, Integer> most = new LinkedHashMap<>();
    for (TimerSetting s : settings) {
      most.merge(s.zone(), s.starts().size(), Math::max);
    }
    for (int z = 0; z < system.zones().size(); z++) {
      String id = system.zones().get(z).design().id();
      CycleRule fastest = fastest(z);
      if (fastest.limits() && most.getOrDefault(id, 0) > 1) {
        findings.add(
            Finding.of(
                "timer.cycle-and-soak",
                Severity.NOTE,
                id,
                "The emitters give {0} but the soil takes in {1}, so a watering is cut into short"
                    + " runs with pauses of at least {2}.",
                new Quantity(fastest.rateMPerS(), Kind.INFILTRATION),
                new Quantity(fastest.infiltrationMPerS(), Kind.INFILTRATION),
                new Quantity(fastest.soakS(), Kind.RUN_TIME)));
      }
    }
  }

  /** The rule of the year in which a zone's emitters give water fastest. */
  private CycleRule fastest(int z) {
    return cycles.stream()
        .map(zones -> zones.get(z))
        .max(Comparator.comparingDouble(CycleRule::rateMPerS))
        .orElseThrow();
  }
}
