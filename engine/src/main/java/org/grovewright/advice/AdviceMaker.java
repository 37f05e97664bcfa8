package org.grovewright.advice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Climate;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.Leaching;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.RefillRule;

/** Makes a {@link TodayAdvice}. */
final class AdviceMaker {
  private static final int LONGEST_HORIZON = 7;

  private final Plan plan;
  private final Grove grove;
  private final Catalogue catalogue;
  private final FigureBook book;
  private final AdviceFigures figures;
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
    figures = new AdviceFigures(plan, book, today, grove.yearAt(date));
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
    for (ZoneResult zone : plan.watering().zonesIn(grove.yearAt(date))) {
      ZoneDay day = zoneDay(zone);
      day.plants.forEach(plant -> served[plant.index()] = true);
      zones.add(day);
    }
    double[] shut = new double[today + 1];
    for (int i = 0; i < tracks.length; i++) {
      if (tracks[i] != null && !served[i]) {
        tracks[i].follow(shut, 0);
      }
    }
    List<PlantState> states = states();
    RoomToday room = new RoomToday(grove.supply(), plan.programme(), zones, date, today, book);
    Map<String, RoomToday.Share> shares = room.share();
    List<LookAt> lookAt = new Looks(tracks, zones, shares, catalogue, figures, today, date).list();
    List<ZoneAdvice> advice = new ArrayList<>();
    for (ZoneDay zone : zones) {
      advice.add(advice(zone, shares.get(zone.id()), room));
    }
    AdviceFindings remarks = new AdviceFindings(first, date);
    advice.forEach(zone -> findings.addAll(remarks.zone(zone)));
    remarks.later(log).ifPresent(findings::add);
    return new TodayAdvice(date, advice, states, lookAt, findings);
  }

  private ZoneDay zoneDay(ZoneResult zone) {
    String id = zone.design().id();
    AssumedRuns runs = new AssumedRuns(id, plan.programme(), log, grove.start(), zone.flowM3PerS());
    runs.fill(first, date);
    double salinity = grove.supply().salinitySPerM().orElse(0);
    List<ZoneDay.Plant> plants = new ArrayList<>();
    zone.plantFlows()
        .forEach(
            (index, flow) -> {
              PlantTrack track = tracks[index];
              if (track != null && flow > 0) {
                track.follow(runs.seconds(), flow * efficiency);
                Species species = catalogue.species().get(track.planting().speciesKey());
                Leaching leaching = Leaching.of(species, salinity, catalogue);
                plants.add(new ZoneDay.Plant(index, track, flow, leaching));
              }
            });
    int usual = runs.setting(date).everyDays();
    int horizon = Math.max(1, Math.min(LONGEST_HORIZON, usual));
    AllowedDays allowed = new AllowedDays(grove.supply().allowedDays(), first, horizon);
    if (zones.isEmpty()) {
      allowed.remark(today).ifPresent(findings::add);
    }
    return new ZoneDay(
        zone,
        runs,
        plants,
        today,
        allowed,
        efficiency,
        catalogue.constant(RefillRule.WORTH_FILLING).value());
  }

  private List<PlantState> states() {
    String[] zoneOf = new String[tracks.length];
    for (ZoneDay zone : zones) {
      zone.plants.forEach(plant -> zoneOf[plant.index()] = zone.id());
    }
    List<PlantState> states = new ArrayList<>();
    for (int i = 0; i < tracks.length; i++) {
      if (tracks[i] != null) {
        states.add(figures.plant(tracks[i], zoneOf[i] == null ? "" : zoneOf[i]));
      }
    }
    return states;
  }

  private ZoneAdvice advice(ZoneDay zone, RoomToday.Share share, RoomToday room) {
    int longest = longestRun(zone.id());
    int runs = share.minutes() == 0 ? 0 : (share.minutes() - 1) / longest + 1;
    int each = runs == 0 ? 0 : share.minutes() / runs;
    Optional<ZoneDay.Plant> wanting = zone.wanting();
    Optional<ZoneDay.Plant> driest = zone.driest();
    ZoneAdvice.Times times = figures.times(zone, share, runs, each, longest);
    Figure volume = figures.volume(zone, times.time());
    ZoneAdvice.Assumed assumed = figures.assumed(zone, first);
    zone.water(times.time().value());
    Optional<Integer> next = zone.nextDay();
    return new ZoneAdvice(
        zone.id(),
        zone.plants.isEmpty()
            ? ZoneAdvice.Action.NOTHING_PLANTED
            : runs > 0
                ? ZoneAdvice.Action.WATER
                : wanting.isPresent() ? ZoneAdvice.Action.WAIT : ZoneAdvice.Action.SKIP,
        share.held(),
        times,
        volume,
        driest.map(ZoneDay.Plant::id).orElse(""),
        wanting.map(ZoneDay.Plant::id).orElse(""),
        new ZoneAdvice.Next(
            next.map(first::plusDays),
            next.map(day -> figures.daysToNext(zone, day, times.time())),
            share.held() == ZoneAdvice.Held.FREE
                ? Optional.empty()
                : Optional.of(room.askAgain(share.held()))),
        assumed,
        driest.map(plant -> zone.trace(plant, first)).orElse(List.of()));
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
