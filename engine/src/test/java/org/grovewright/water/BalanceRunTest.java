package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Climate;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.FigureBook;
import org.junit.jupiter.api.Test;

class BalanceRunTest {
  private static final Catalogue CATALOGUE =
      TestCatalogue.of(TestCatalogue.evergreen(), TestCatalogue.deciduous());
  private static final int YEARS = 6;
  private static final Planting YOUNG =
      TestGroves.plant("young", "evergreen", 20, TestGroves.START);
  private static final Planting OLD =
      TestGroves.plant("old", "deciduous", 20, TestGroves.START.minusYears(60));

  private final Grove grove =
      TestGroves.grove(37, TestGroves.dailyDrySummer(2026, YEARS, 7), YOUNG, OLD);
  private final WaterNeeds needs = WaterNeeds.of(grove, CATALOGUE, new FigureBook());
  private final DailyClimate weather =
      DailyClimate.of(grove.site(), grove.climate(), needs.climate().arid(), CATALOGUE);

  private PlantSeries inYear(Planting planting, int year) {
    return PlantSeries.inYear(grove, planting, year, needs, weather, CATALOGUE);
  }

  private BalanceTotals run(PlantSeries plant, BalanceRun.Watering watering) {
    return BalanceRun.run(weather, plant, watering, null, null);
  }

  @Test
  void wateredWhenDryAPlantHardlySuffers() {
    for (Planting planting : List.of(YOUNG, OLD)) {
      BalanceTotals totals = run(inYear(planting, 2), BalanceRun.Watering.WHEN_DRY);
      assertThat(totals.transpiredM3()).isGreaterThan(0.97 * totals.wantedM3());
    }
  }

  @Test
  void withoutWaterItSuffersThroughTheDrySummer() {
    for (Planting planting : List.of(YOUNG, OLD)) {
      BalanceTotals totals = run(inYear(planting, 2), BalanceRun.Watering.NONE);
      assertThat(totals.stressedDays()).isGreaterThan(60 * YEARS);
      assertThat(totals.transpiredM3()).isLessThan(0.7 * totals.wantedM3());
      assertThat(totals.irrigationM3()).isZero();
    }
  }

  @Test
  void theMonthlyNeedAgreesWithTheDailyBalance() {
    // Two ways to the same number: the mean need of a month, and what a year of days asks for.
    for (int year = 1; year <= 3; year++) {
      double[] given = new double[13];
      PlantSeries plant = inYear(YOUNG, year);
      BalanceRun.run(
          weather,
          plant,
          BalanceRun.Watering.WHEN_DRY,
          null,
          (day, irrigationMm, balance) ->
              given[weather.date(day).getMonthValue()] +=
                  irrigationMm / 1000 * plant.soilM2(weather.slot(day)) / YEARS);
      for (int month = 5; month <= 9; month++) {
        double need = needs.plant("young").at(year, month).need().value();
        double daily = given[month] / (YearMonth.of(2026, month).lengthOfMonth() * 86_400);
        assertThat(daily / need).as("year %s month %s", year, month).isBetween(0.8, 1.25);
      }
    }
  }

  @Test
  void waterIsNeitherLostNorMade() {
    // The old tree does not grow any more, so that its root zone stays as it is.
    PlantSeries plant = inYear(OLD, 1);
    double[] irrigation = new double[weather.days()];
    for (int day = 0; day < irrigation.length; day += 3) {
      irrigation[day] = 0.15;
    }
    double[] last = new double[1];
    BalanceTotals totals =
        BalanceRun.run(
            weather,
            plant,
            BalanceRun.Watering.GIVEN,
            irrigation,
            (day, irrigationMm, balance) -> last[0] = balance.rootMissingMm());
    double missingM3 = last[0] / 1000 * plant.soilM2(0);
    assertThat(plant.soilM2(weather.months() - 1)).isCloseTo(plant.soilM2(0), within(1e-9));
    assertThat(totals.rainM3() + totals.irrigationM3())
        .isCloseTo(
            totals.transpiredM3() + totals.evaporatedM3() + totals.lostM3() - missingM3,
            within(1e-6));
    assertThat(totals.irrigationM3()).isCloseTo(0.15 * ((weather.days() + 2) / 3), within(1e-9));
  }

  @Test
  void aGrowingPlantUsesMoreEachYear() {
    PlantSeries plant = PlantSeries.growing(grove, YOUNG, needs, weather, CATALOGUE);
    double[] used = new double[YEARS];
    BalanceRun.run(
        weather,
        plant,
        BalanceRun.Watering.WHEN_DRY,
        null,
        (day, irrigationMm, balance) ->
            used[weather.date(day).getYear() - 2026] +=
                balance.transpirationMm() * plant.soilM2(weather.slot(day)));
    for (int year = 1; year < YEARS; year++) {
      assertThat(used[year]).isGreaterThan(1.1 * used[year - 1]);
    }
    assertThat(plant.rootDepthM(weather.months() - 1)).isGreaterThan(plant.rootDepthM(0));
  }

  @Test
  void runoffFollowsTheCurveNumber() {
    // USDA TR-55 (1986) table 2-1, from memory: 4.0 inches give 2.04 at 80 and 1.03 at 65.
    assertThat(DailyClimate.runoffMm(4 * 25.4, 80)).isCloseTo(2.04 * 25.4, within(0.15));
    assertThat(DailyClimate.runoffMm(4 * 25.4, 65)).isCloseTo(1.03 * 25.4, within(0.15));
    assertThat(DailyClimate.runoffMm(20, 65)).isZero();
  }

  @Test
  void aMissingDayIsNamed() {
    List<Climate.DayWeather> days = new ArrayList<>(grove.climate().daily());
    days.remove(40);
    Climate climate = new Climate(grove.climate().normals(), days, 2, "invented");
    assertThatThrownBy(() -> DailyClimate.of(grove.site(), climate, false, CATALOGUE))
        .hasMessageContaining("2026-02-10");
  }
}
