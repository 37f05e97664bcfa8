package org.grovewright.season;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.irrigation.EmitterChange;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.StartTimes;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.WaterNeeds;

/**
 * The timer through the seasons of one year of the plan: the setting of a simple timer that keeps
 * every plant above its limit in the asked share of years with the least water found, replayed
 * through all years of weather beside the plan's own programme and the rules that people use.
 *
 * @param settings what was asked
 * @param rule what may be drawn, and when; the card and the other ways keep it
 * @param years the weather
 * @param card the setting found
 * @param outcome what it does
 * @param others what the plan's own programme and the rules do
 * @param trade the least water found for each risk, the least risk first
 * @param traces the soil of every plant under the card, through the driest of the years
 * @param trials settings tried by the search
 * @param findings where the card falls short, and what was assumed
 */
public record SeasonPlan(
    SeasonSettings settings,
    WaterRule rule,
    WeatherYears years,
    TimerCard card,
    Outcome outcome,
    List<Outcome> others,
    List<TradePoint> trade,
    List<SoilTrace> traces,
    long trials,
    List<Finding> findings) {
  /** Copies the lists. */
  public SeasonPlan {
    others = List.copyOf(others);
    trade = List.copyOf(trade);
    traces = List.copyOf(traces);
    findings = List.copyOf(findings);
  }

  /** What another way of watering does, if it was run. */
  public Optional<Outcome> other(Outcome.Way way) {
    return others.stream().filter(o -> o.way() == way).findFirst();
  }

  /**
   * Searches the card of a plan and enters its figures under {@code season.year-Y}: {@code
   * .WAY.water}, {@code .WAY.stressed-days} and {@code .WAY.lost} of every way of watering, {@code
   * .plant.ID.chance}, {@code .stressed-days}, {@code .longest-spell}, {@code .worst-year} and
   * {@code .lost} of every plant, and {@code .ZONE.month-MM.minutes} and {@code .every} of the
   * card.
   *
   * @throws IllegalArgumentException if the year lies outside the programme, no zone waters a
   *     plant, or the daily weather has no whole year
   */
  public static SeasonPlan of(
      Grove grove,
      Catalogue catalogue,
      WaterNeeds needs,
      WateringSystem system,
      Programme programme,
      SeasonSettings settings,
      FigureBook book) {
    if (settings.planYear() > Programme.YEARS) {
      throw new IllegalArgumentException("the plan has no year " + settings.planYear());
    }
    WeatherYears years =
        WeatherYears.of(grove, catalogue, needs.climate(), settings.weatherYears());
    StartTimes clock = StartTimes.of(grove, catalogue, system, settings.planYear());
    List<ZoneYear> zones =
        zones(grove, catalogue, needs, system, programme, settings.planYear(), years, clock);
    if (zones.isEmpty()) {
      throw new IllegalArgumentException("no zone of the plan waters a plant");
    }
    TimerLimits limits = TimerLimits.of(grove, catalogue);
    WaterRule rule = WaterRule.of(grove);
    CardMaker.Found found = new CardMaker(zones, limits, settings, years, clock, rule).search();
    Map<String, ZoneSchedule> schedules = new HashMap<>();
    for (int g = 0; g < found.groups().size(); g++) {
      List<ZoneYear> group = found.groups().get(g);
      for (int z = 0; z < group.size(); z++) {
        schedules.put(group.get(z).id(), found.chosen().get(g).schedule(z));
      }
    }
    int most = settings.mostFailures(years.spans().size());
    WateringRules rules = new WateringRules(zones, years, limits, rule, most);
    Outcome outcome = rules.outcome(Outcome.Way.CARD, zone -> schedules.get(zone.id()));
    List<Outcome> others = rules.all(catalogue, outcome, zone -> schedules.get(zone.id()));
    Optional<List<List<LocalTime>>> starts = clock.fit(blocks(found));
    TimerCard card =
        card(
            settings.planYear(),
            EmitterChange.before(system.zones(), grove, settings.planYear()),
            found,
            starts);
    SeasonPlan plan =
        new SeasonPlan(
            settings,
            rule,
            years,
            card,
            outcome,
            others,
            found.trade(),
            traces(zones, schedules, years),
            found.trials(),
            SeasonFindings.of(settings, rule, years, outcome, found, starts.isPresent()));
    SeasonFigures.enter(plan, book);
    return plan;
  }

  private static List<ZoneYear> zones(
      Grove grove,
      Catalogue catalogue,
      WaterNeeds needs,
      WateringSystem system,
      Programme programme,
      int planYear,
      WeatherYears years,
      StartTimes clock) {
    double efficiency = catalogue.constant("irrigation.application-efficiency").value();
    List<ZoneYear> zones = new ArrayList<>();
    List<ZoneResult> inYear = system.zonesIn(planYear);
    for (int z = 0; z < inYear.size(); z++) {
      ZoneResult zone = inYear.get(z);
      String id = zone.design().id();
      List<PlantRun> plants = new ArrayList<>();
      for (Map.Entry<Integer, Double> flow : zone.plantFlows().entrySet()) {
        Planting planting = grove.plantings().get(flow.getKey());
        int wait = waitDays(grove, planting, planYear);
        if (flow.getValue() <= 0 || wait >= 365) {
          continue;
        }
        boolean main = catalogue.species().get(planting.speciesKey()).role() == Species.Role.MAIN;
        plants.add(
            new PlantRun(
                planting.id(),
                id,
                main,
                years,
                PlantSeries.inYear(grove, planting, planYear, needs, years.daily(), catalogue),
                wait,
                planting.plantedOn().isBefore(firstDay(grove, planYear)),
                flow.getValue() * 60 * efficiency));
      }
      List<TimerSetting> planned =
          programme.settings().stream()
              .filter(s -> s.zone().equals(id) && s.year() == planYear)
              .toList();
      if (!plants.isEmpty()) {
        zones.add(
            new ZoneYear(
                z,
                id,
                zone.flowM3PerS() * 60,
                Math.min(clock.longestRunMinutes(z), clock.longestSpanMinutes()),
                plants,
                planned));
      }
    }
    return zones;
  }

  /** Days from the first of the plan's year until the plant is set; 0 where it stands already. */
  private static int waitDays(Grove grove, Planting planting, int planYear) {
    return (int)
        Math.max(0, ChronoUnit.DAYS.between(firstDay(grove, planYear), planting.plantedOn()));
  }

  private static LocalDate firstDay(Grove grove, int planYear) {
    return grove.start().withDayOfMonth(1).plusYears(planYear - 1L);
  }

  private static List<StartTimes.Block> blocks(CardMaker.Found found) {
    List<StartTimes.Block> blocks = new ArrayList<>();
    for (int g = 0; g < found.groups().size(); g++) {
      blocks.add(found.chosen().get(g).block(found.groups().get(g)));
    }
    return blocks;
  }

  private static TimerCard card(
      int planYear,
      List<EmitterChange> changes,
      CardMaker.Found found,
      Optional<List<List<LocalTime>>> starts) {
    List<TimerCard.Line> lines = new ArrayList<>();
    for (int g = 0; g < found.groups().size(); g++) {
      Setting setting = found.chosen().get(g);

      List<TimerCard.Zone> zones = new ArrayList<>();
      for (int z = 0; z < setting.zones(); z++) {
        zones.add(new TimerCard.Zone(found.groups().get(g).get(z).id(), setting.base(z)));
      }
      List<TimerCard.MonthStep> months = new ArrayList<>();
      for (int month = 0; month < 12; month++) {
        months.add(
            new TimerCard.MonthStep(month + 1, setting.rhythm(month), setting.percent(month)));
      }
      int at = g;
      lines.add(
          new TimerCard.Line(
              String.valueOf((char) ('A' + g)),
              zones,
              starts.map(all -> all.get(at)).orElse(List.of()),
              setting.starts(),
              months));
    }
    return new TimerCard(planYear, changes, lines);
  }

  private static List<SoilTrace> traces(
      List<ZoneYear> zones, Map<String, ZoneSchedule> schedules, WeatherYears years) {
    WeatherYears.Span driest = years.driest();
    Map<String, SoilTrace> traces = new LinkedHashMap<>();
    for (ZoneYear zone : zones) {
      for (PlantRun plant : zone.plants()) {
        List<SoilTrace.Day> days = new ArrayList<>();
        plant.year(
            driest,
            schedules.get(zone.id()),
            (day, irrigationMm, soil) ->
                days.add(
                    new SoilTrace.Day(
                        years.daily().date(day),
                        soil.balance().uptakeMissingMm(),
                        soil.balance().readilyAvailableMm(),
                        soil.balance().totalAvailableMm(),
                        soil.rainMm(),
                        irrigationMm,
                        soil.stressed())));
        traces.put(plant.plantId(), new SoilTrace(plant.plantId(), zone.id(), days));
      }
    }
    return List.copyOf(traces.values());
  }
}
