package org.grovewright.advice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Climate;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.PlantSeries;

/** Makes a {@link TodayAdvice}. */
final class AdviceMaker {
  private static final String BALANCE =
      "what was missing, less rain and watering that stayed, and what the plant and the soil gave"
          + " off, day by day";
  private static final String BALANCE_SOURCE = "FAO-56 (1998) equation 85";
  private static final int LONGEST_HORIZON = 7;

  private final Plan plan;
  private final Grove grove;
  private final Catalogue catalogue;
  private final FigureBook book;
  private final WaterLog log;
  private final LocalDate date;
  private final LocalDate first;
  private final int today;
  private final double efficiency;
  private final PlantTrack[] tracks;
  private final List<ZoneDay> zones = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  AdviceMaker(
      Plan plan,
      TodayAdvice.MeasuredWeather weather,
      WaterLog log,
      LocalDate date,
      FigureBook book) {
    this.plan = plan;
    this.grove = plan.grove();
    this.catalogue = plan.catalogue();
    this.book = book;
    this.log = log;
    this.date = date;
    efficiency = catalogue.constant("irrigation.application-efficiency").value();
    WeatherToDate toDate =
        WeatherToDate.of(
            grove.climate(), weather.days(), weather.windHeightM(), log.gaugeM(), date);
    first = toDate.climate().daily().get(0).date();
    today = toDate.today();
    findings.addAll(toDate.findings());
    tracks = tracks(toDate.climate());
  }

  private PlantTrack[] tracks(Climate climate) {
    Map<Integer, DailyClimate> byStart = new HashMap<>();
    PlantTrack[] found = new PlantTrack[grove.plantings().size()];
    for (int i = 0; i < found.length; i++) {
      Planting planting = grove.plantings().get(i);
      if (planting.plantedOn().isAfter(date)) {
        continue;
      }
      int offset = (int) Math.max(0, planting.plantedOn().toEpochDay() - first.toEpochDay());
      DailyClimate days =
          byStart.computeIfAbsent(
              offset,
              from ->
                  DailyClimate.of(
                      grove.site(),
                      new Climate(
                          climate.normals(),
                          climate.daily().subList(from, climate.daily().size()),
                          climate.windHeightM(),
                          climate.source()),
                      plan.water().climate().arid(),
                      catalogue));
      PlantSeries series = PlantSeries.dated(grove, planting, plan.water(), days, catalogue);
      found[i] = new PlantTrack(planting, days, series, offset);
    }
    return found;
  }

  TodayAdvice make() {
    boolean[] served = new boolean[tracks.length];
    int assumed = 0;
    for (ZoneResult zone : plan.watering().zonesIn(grove.yearAt(date))) {
      ZoneDay day = zoneDay(zone);
      assumed += day.runs.assumed();
      day.plants.forEach(plant -> served[plant.index()] = true);
      zones.add(day);
    }
    double[] shut = new double[today + 1];
    for (int i = 0; i < tracks.length; i++) {
      if (tracks[i] != null && !served[i]) {
        tracks[i].follow(shut, 0);
      }
    }
    if (assumed > 0) {
      findings.add(
          Finding.of(
              "advice.assumed-waterings",
              Severity.NOTE,
              "",
              "The log does not tell of every watering: {0} since "
                  + first
                  + (assumed == 1 ? " is" : " are")
                  + " taken to have run as the timer card says. Note what was different, and"
                  + " the advice will be right again.",
              new Quantity(assumed, Kind.COUNT)));
    }
    long later =
        log.runs().stream().filter(run -> run.date().isAfter(date)).count()
            + log.gaugeM().tailMap(date, false).size();
    if (later > 0) {
      findings.add(
          Finding.of(
              "advice.later-notes",
              Severity.NOTE,
              "",
              "Notes of the log on days after " + date + " are not counted: {0}.",
              new Quantity(later, Kind.COUNT)));
    }
    List<PlantState> states = states();
    Map<String, Integer> minutes = new RoomToday(grove.supply(), plan.programme()).share(zones);
    List<LookAt> lookAt = new Looks(tracks, zones, minutes, catalogue, today, date).list();
    List<ZoneAdvice> advice = new ArrayList<>();
    for (ZoneDay zone : zones) {
      advice.add(advice(zone, minutes.get(zone.id())));
    }
    return new TodayAdvice(date, advice, states, lookAt, findings);
  }

  private ZoneDay zoneDay(ZoneResult zone) {
    String id = zone.design().id();
    AssumedRuns runs = new AssumedRuns(id, plan.programme(), log, grove.start(), zone.flowM3PerS());
    runs.fill(first, date);
    List<ZoneDay.Plant> plants = new ArrayList<>();
    zone.plantFlows()
        .forEach(
            (index, flow) -> {
              PlantTrack track = tracks[index];
              if (track != null && flow > 0) {
                track.follow(runs.seconds(), flow * efficiency);
                plants.add(new ZoneDay.Plant(index, track, flow));
              }
            });
    int usual = runs.setting(date).everyDays();
    int horizon = Math.max(1, Math.min(LONGEST_HORIZON, usual));
    AllowedDays allowed = new AllowedDays(grove.supply().allowedDays(), first, horizon);
    if (zones.isEmpty()) {
      allowed.remark(today).ifPresent(findings::add);
    }
    return new ZoneDay(zone, runs, plants, today, allowed, efficiency);
  }

  private List<PlantState> states() {
    String[] zoneOf = new String[tracks.length];
    for (ZoneDay zone : zones) {
      zone.plants.forEach(plant -> zoneOf[plant.index()] = zone.id());
    }
    List<PlantState> states = new ArrayList<>();
    for (int i = 0; i < tracks.length; i++) {
      PlantTrack track = tracks[i];
      if (track != null) {
        states.add(state(track, zoneOf[i] == null ? "" : zoneOf[i]));
      }
    }
    return states;
  }

  private PlantState state(PlantTrack track, String zone) {
    String plantId = track.planting().id();
    double perMm = track.soilM2(today) / 1000;
    Figure missing =
        book.enter(
            missingId(plantId),
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
                    "the weather, the log and the timer card"),
                new Input(
                    "root zone", track.soilM2(today), Kind.AREA, "catalogue: species, growth")));
    Figure limit =
        book.enter(
            "advice.plant." + FigureBook.slug(plantId) + ".limit",
            "water that may be missing before the plant begins to suffer",
            track.limitMm(today) * perMm,
            Kind.WATER_VOLUME,
            Working.of(
                "p (FC - WP) Z A_s",
                "FAO-56 (1998) equations 82 and 83, p by the day's use as in table 22, note 2",
                new Input(
                    "(FC - WP) Z",
                    track.totalMm(today) / 1000,
                    Kind.WATER_DEPTH,
                    plan.water().soil().origin()),
                new Input(
                    "A_s", track.soilM2(today), Kind.AREA, "soil within the reach of the roots")));
    return new PlantState(
        plantId, zone, missing, limit, track.totalMm(today) * perMm, morningDryness(track));
  }

  private double morningDryness(PlantTrack track) {
    int before = today - 1;
    return track.isPlanted(before) ? track.dryness(before) : 0;
  }

  private static String missingId(String plantId) {
    return "advice.plant." + FigureBook.slug(plantId) + ".missing";
  }

  private ZoneAdvice advice(ZoneDay zone, int allowed) {
    int wanted = zone.minutes();
    int longest = longestRun(zone.id());
    int runs = allowed == 0 ? 0 : (allowed - 1) / longest + 1;
    int each = runs == 0 ? 0 : allowed / runs;
    int minutes = runs * each;
    if (wanted > minutes + runs) {
      findings.add(
          Finding.of(
              "advice.no-room",
              Severity.SHORTFALL,
              zone.id(),
              "Zone "
                  + zone.id()
                  + " wants {0} of water, more than one day should or may give. Ask again tomorrow,"
                  + " and see first to the plants that are too dry.",
              new Quantity(wanted * 60.0, Kind.RUN_TIME)));
    }
    double flow = zone.result.flowM3PerS();
    String id = "advice.zone." + FigureBook.slug(zone.id());
    Optional<ZoneDay.Plant> wanting = zone.wanting();
    Figure time =
        book.enter(
            id + ".time",
            "Minutes to water today",
            minutes * 60.0,
            Kind.RUN_TIME,
            wanting.map(plant -> timeWorking(zone, plant)).orElseGet(AdviceMaker::skipWorking));
    Figure volume =
        book.enter(
            id + ".volume",
            "Water through the valve today",
            minutes * 60.0 * flow,
            Kind.WATER_VOLUME,
            Working.of(
                "flow times time",
                Working.COMMON_PRACTICE,
                new Input(
                    "flow",
                    flow,
                    Kind.FLOW,
                    "hydraulics.zone." + FigureBook.slug(zone.id()) + ".flow"),
                Input.from("time", time)));
    Optional<ZoneDay.Plant> driest = zone.driest();
    zone.water(minutes * 60.0);
    return new ZoneAdvice(
        zone.id(),
        zone.plants.isEmpty()
            ? ZoneAdvice.Action.NOTHING_PLANTED
            : minutes > 0
                ? ZoneAdvice.Action.WATER
                : wanting.isPresent() ? ZoneAdvice.Action.WAIT : ZoneAdvice.Action.SKIP,
        wanted,
        minutes,
        runs,
        each,
        volume,
        driest.map(ZoneDay.Plant::id).orElse(""),
        wanting.map(ZoneDay.Plant::id).orElse(""),
        zone.nextDay().map(first::plusDays),
        driest.map(plant -> zone.trace(plant, first)).orElse(List.of()));
  }

  private Working timeWorking(ZoneDay zone, ZoneDay.Plant plant) {
    PlantTrack track = plant.track();
    return Working.of(
        "t = D / (q e), in whole minutes, for the plant that wants the longest of those that would"
            + " begin to suffer; at most what the day has room for",
        "FAO-56 (1998) chapter 8: the root zone is filled again when its readily available water is"
            + " used up",
        new Input(
            "missing D of " + plant.id() + " after today's rain",
            track.startMm(today) * track.soilM2(today) / 1000,
            Kind.WATER_VOLUME,
            missingId(plant.id())),
        new Input(
            "flow q at " + plant.id(),
            plant.flowM3PerS(),
            Kind.EMITTER_FLOW,
            WateringSystem.plantFlowId(zone.id(), plant.id())),
        catalogue.constant("irrigation.application-efficiency").as("efficiency e"));
  }

  private static Working skipWorking() {
    return Working.of(
        "nothing while no plant of the zone would use up its readily available water by this"
            + " evening",
        "FAO-56 (1998) chapter 8");
  }

  /** The longest run that the soil of a zone drinks, as its timer card cuts them. */
  private int longestRun(String zone) {
    return plan.programme().settings().stream()
        .filter(s -> s.zone().equals(zone) && s.starts().size() > 1)
        .mapToInt(s -> s.minutesPerCycle())
        .max()
        .orElse(Integer.MAX_VALUE);
  }
}
