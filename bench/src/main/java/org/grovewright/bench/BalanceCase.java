package org.grovewright.bench;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.model.Climate;
import org.grovewright.model.Crew;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences;
import org.grovewright.model.Site;
import org.grovewright.model.Soil;
import org.grovewright.model.Stock;
import org.grovewright.model.Supply;
import org.grovewright.model.Watering;
import org.grovewright.model.WateringDays;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.BalanceRun;
import org.grovewright.water.BalanceTotals;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.WaterNeeds;

/** A made-up large grove and thirty years of made-up weather, the same every time. */
final class BalanceCase {
  static final int YEARS = 30;
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final LocalDate START = LocalDate.of(2026, 3, 1);

  final Catalogue catalogue = CatalogueFiles.load().catalogue();
  final Grove grove;
  final WaterNeeds needs;
  final DailyClimate weather;
  final List<PlantSeries> plants = new ArrayList<>();
  final double[] irrigationM3;

  BalanceCase(int plantCount) {
    grove = grove(plantCount, new Random(1));
    needs = WaterNeeds.of(grove, catalogue, new FigureBook());
    weather = DailyClimate.of(grove.site(), grove.climate(), needs.climate().arid(), catalogue);
    irrigationM3 = new double[weather.days()];
    for (int day = 0; day < irrigationM3.length; day += 3) {
      int month = weather.date(day).getMonthValue();
      irrigationM3[day] = month >= 5 && month <= 10 ? 0.12 : 0;
    }
    buildPlants();
  }

  /** Makes the series of every plant anew. */
  void buildPlants() {
    plants.clear();
    for (Planting planting : grove.plantings()) {
      plants.add(PlantSeries.growing(grove, planting, needs, weather, catalogue));
    }
  }

  BalanceTotals run(int plant) {
    return BalanceRun.run(
        weather, plants.get(plant), BalanceRun.Watering.GIVEN, irrigationM3, null);
  }

  private static Grove grove(int plantCount, Random random) {
    String[] species = {"avocado", "lemon", "peach", "fig", "apple"};
    List<Planting> plantings = new ArrayList<>(plantCount);
    for (int i = 0; i < plantCount; i++) {
      plantings.add(
          new Planting(
              "p" + i,
              species[i % species.length],
              Optional.empty(),
              new Point(i % 40 * 6, i / 40 * 6),
              Optional.empty(),
              START.minusDays(random.nextInt(1500)),
              // Bare-rooted: the C loop knows one layer of soil, so there is no ball of another
              // mix.
              0,
              Planting.Measured.NOTHING,
              NONE,
              NONE));
    }
    return new Grove(
        new Site("invented", 37, -120, 60, List.of(), 0, List.of(), List.of()),
        new Soil(Optional.of("loam"), NONE, NONE, 1.5, Optional.empty(), NONE, Soil.SoilTest.NONE),
        climate(random),
        new Supply(
            Supply.SupplyKind.HOUSE_TAP,
            new Point(0, 0),
            0,
            OptionalDouble.of(300_000),
            NONE,
            NONE,
            List.of(),
            Optional.empty(),
            NONE,
            NONE,
            List.of(new Supply.Hours(LocalTime.of(5, 0), LocalTime.of(9, 0))),
            WateringDays.ANY,
            NONE,
            Optional.empty()),
        List.of(),
        plantings,
        new Watering(
            true,
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of()),
        new Stock(Map.of(), Map.of(), "USD"),
        new Crew(1, Map.of(), Set.of()),
        START,
        new Preferences(Preferences.Units.METRIC, Preferences.Friction.HAZEN_WILLIAMS));
  }

  private static Climate climate(Random random) {
    List<Climate.MonthNormal> normals = new ArrayList<>();
    for (int month = 1; month <= 12; month++) {
      double warm = Math.sin((month - 4) * Math.PI / 6);
      normals.add(
          new Climate.MonthNormal(
              month,
              10 + 6 * warm,
              23 + 10 * warm,
              NONE,
              OptionalDouble.of(8 + 3 * warm),
              OptionalDouble.of(2.2),
              OptionalDouble.of(200 + 110 * warm),
              NONE,
              OptionalDouble.of(Math.max(0, 0.04 - 0.04 * warm))));
    }
    List<Climate.DayWeather> days = new ArrayList<>();
    LocalDate end = LocalDate.of(1990 + YEARS, 1, 1);
    for (LocalDate day = LocalDate.of(1990, 1, 1); day.isBefore(end); day = day.plusDays(1)) {
      Climate.MonthNormal normal = normals.get(day.getMonthValue() - 1);
      double off = 2 * random.nextGaussian();
      double rain = normal.rainM().orElse(0) / 30 * (random.nextInt(6) == 0 ? 6 : 0);
      days.add(
          new Climate.DayWeather(
              day,
              normal.tminC() + off,
              normal.tmaxC() + off,
              NONE,
              normal.dewPointC(),
              normal.windMPerS(),
              normal.solarWPerM2(),
              NONE,
              OptionalDouble.of(rain)));
    }
    return new Climate(normals, days, 2, "invented");
  }
}
