package org.grovewright.storage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.Leaching;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.RefillRule;
import org.grovewright.water.WaterNeeds;

/**
 * What a plan's timer draws by day, m3.
 *
 * <p>A simple timer has no rain sensor and runs its card in the rain too. An owner who skips
 * waterings stops it on a day of its turn when, if no more rain came, no plant of the zone would
 * miss half of what it takes up with ease before the next turn; and otherwise lets it run until all
 * plants have their soil full, and never longer than the card. The soil is that of the daily
 * balance; the rain of the day is known, and none is counted on for the days to come.
 */
final class TimerDraw {
  /** Days looked ahead at the end of a season, in which no turn comes any more. */
  private static final int LONGEST_AHEAD = 30;

  private final Grove grove;
  private final Catalogue catalogue;
  private final WaterNeeds needs;
  private final WateringSystem system;
  private final Programme programme;
  private final List<DayWeather> days;
  private final DailyClimate weather;
  private final DailyClimate rainless;
  private final double efficiency;
  private final double worthFilling;

  /**
   * The draws of a plan under some weather.
   *
   * @throws IllegalArgumentException if a day is missing from the weather
   */
  TimerDraw(
      Grove grove,
      Catalogue catalogue,
      WaterNeeds needs,
      WateringSystem system,
      Programme programme,
      List<DayWeather> days) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.needs = needs;
    this.system = system;
    this.programme = programme;
    this.days = days;
    weather = daily(days);
    rainless = daily(days.stream().map(day -> day.withRain(0)).toList());
    efficiency = catalogue.constant("irrigation.application-efficiency").value();
    worthFilling = catalogue.constant(RefillRule.WORTH_FILLING).value();
  }

  private DailyClimate daily(List<DayWeather> some) {
    Climate climate = grove.climate();
    return DailyClimate.of(
        grove.site(),
        new Climate(climate.normals(), some, climate.windHeightM(), climate.source()),
        needs.climate().arid(),
        catalogue);
  }

  /**
   * The draws of a year of the plan.
   *
   * @param cardM3 as the card says, m3 by day
   * @param advisedM3 where waterings are skipped or shortened by the soil, m3 by day
   * @param cardStress days on which a plant suffers under the card, of all plants and days
   * @param advisedStress the same where waterings are skipped or shortened
   */
  record Draws(double[] cardM3, double[] advisedM3, long cardStress, long advisedStress) {}

  Draws in(int year) {
    double[] cardM3 = new double[days.size()];
    double[] advisedM3 = new double[days.size()];
    long cardStress = 0;
    long advisedStress = 0;
    for (ZoneResult zone : system.zonesIn(year)) {
      TimerSetting[] settings = settings(zone.design().id(), year);
      List<PlantDemand> plants = plants(zone, year);
      cardStress += zone(zone, settings, plants, false, cardM3);
      plants.forEach(PlantDemand::beginAnew);
      advisedStress += zone(zone, settings, plants, true, advisedM3);
    }
    return new Draws(cardM3, advisedM3, cardStress, advisedStress);
  }

  private TimerSetting[] settings(String zone, int year) {
    TimerSetting[] settings = new TimerSetting[13];
    for (TimerSetting setting : programme.settings()) {
      if (setting.year() == year && setting.zone().equals(zone)) {
        settings[setting.month()] = setting;
      }
    }
    return settings;
  }

  private List<PlantDemand> plants(ZoneResult zone, int year) {
    double salinity = grove.supply().salinitySPerM().orElse(0);
    List<PlantDemand> plants = new ArrayList<>();
    for (Map.Entry<Integer, Double> flow : zone.plantFlows().entrySet()) {
      if (flow.getValue() <= 0) {
        continue;
      }
      Planting planting = grove.plantings().get(flow.getKey());
      Species species = catalogue.species().get(planting.speciesKey());
      double stays = efficiency * (1 - Leaching.of(species, salinity, catalogue).share());
      plants.add(
          new PlantDemand(
              grove,
              planting,
              year,
              weather,
              rainless,
              PlantSeries.inYear(grove, planting, year, needs, weather, catalogue),
              flow.getValue() * 60 * stays,
              worthFilling));
    }
    return plants;
  }

  /** Adds what a zone draws by day to the sum; returns the days on which its plants suffer. */
  private long zone(
      ZoneResult zone,
      TimerSetting[] settings,
      List<PlantDemand> plants,
      boolean advised,
      double[] sumM3) {
    LocalDate last = LocalDate.MIN;
    for (int day = 0; day < days.size(); day++) {
      LocalDate date = days.get(day).date();
      TimerSetting setting = settings[date.getMonthValue()];
      int minutes = 0;
      if (setting.rhythm().isDue(date, last)) {
        last = date;
        minutes = setting.minutesPerWatering();
        if (advised) {
          minutes = Math.min(minutes, asked(plants, day, next(settings, day)));
        }
        sumM3[day] += minutes * 60.0 * zone.flowM3PerS();
      }
      for (PlantDemand plant : plants) {
        plant.water(day, minutes);
      }
    }
    return plants.stream().mapToLong(PlantDemand::stressedDays).sum();
  }

  /** The day of the next turn, or so many days ahead that none comes in time. */
  private int next(TimerSetting[] settings, int day) {
    LocalDate last = days.get(day).date();
    int next = day + 1;
    while (next < days.size() && next < day + LONGEST_AHEAD) {
      LocalDate date = days.get(next).date();
      TimerSetting setting = settings[date.getMonthValue()];
      if (setting.rhythm().isDue(date, last)) {
        break;
      }
      next++;
    }
    return next;
  }

  private static int asked(List<PlantDemand> plants, int day, int until) {
    boolean wanted = false;
    double most = 0;
    for (PlantDemand plant : plants) {
      PlantDemand.Ask ask = plant.ask(day, until);
      wanted |= ask.wanted();
      most = Math.max(most, ask.minutes());
    }
    return wanted ? (int) Math.ceil(most - 1e-9) : 0;
  }
}
