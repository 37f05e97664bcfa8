package org.grovewright.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.BalanceRun;
import org.grovewright.water.BalanceTotals;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.PlantSoil;
import org.grovewright.water.TestCatalogue;
import org.grovewright.water.TestGroves;
import org.grovewright.water.WaterNeeds;
import org.junit.jupiter.api.Test;

class PlantRunTest {
  private static final Catalogue CATALOGUE = TestCatalogue.of(TestCatalogue.evergreen());
  private static final Planting TREE = TestGroves.plant("tree", "evergreen", 20, TestGroves.START);
  private static final double M3_PER_MINUTE = 0.00025;

  private final Climate all = TestGroves.dailyDrySummer(2026, 5, 11);
  private final Grove grove = TestGroves.grove(37, all, TREE);
  private final WaterNeeds needs = WaterNeeds.of(grove, CATALOGUE, new FigureBook());
  private final WeatherYears years = WeatherYears.of(grove, CATALOGUE, needs.climate(), 0);

  private PlantRun run(WeatherYears of, int wait) {
    return run(of, wait, false);
  }

  private PlantRun run(WeatherYears of, int wait, boolean standing) {
    return new PlantRun(
        "tree",
        "zone-1",
        true,
        of,
        PlantSeries.inYear(grove, TREE, 1, needs, of.daily(), CATALOGUE),
        wait,
        standing,
        M3_PER_MINUTE);
  }

  @Test
  void yearsRunFromTheMonthOfTheStartAndKeepLeapDays() {
    assertThat(years.spans()).hasSize(4);
    assertThat(years.drawn()).isFalse();
    for (WeatherYears.Span span : years.spans()) {
      assertThat(years.daily().date(span.from())).isEqualTo(LocalDate.of(span.year(), 3, 1));
      // The year from March 2027 holds 29 February 2028.
      assertThat(span.until() - span.from()).isEqualTo(span.year() == 2027 ? 366 : 365);
    }
    assertThat(WeatherYears.of(grove, CATALOGUE, needs.climate(), 2).spans())
        .extracting(WeatherYears.Span::year)
        .containsExactly(2028, 2029);
  }

  @Test
  void tooShortWeatherIsRefused() {
    List<DayWeather> months = all.daily().subList(0, 300);
    Grove brief = TestGroves.grove(37, new Climate(all.normals(), months, 2, "invented"), TREE);
    assertThatThrownBy(() -> WeatherYears.of(brief, CATALOGUE, needs.climate(), 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("one whole year");
  }

  @Test
  void aYearIsTheDailyBalanceOfThoseDays() {
    // The same year by the plain run of the balance along a series that holds only its days.
    WeatherYears.Span second = years.spans().get(1);
    List<DayWeather> days = all.daily().subList(second.from(), second.until());
    Climate one = new Climate(all.normals(), days, 2, "invented");
    Grove alone = TestGroves.grove(37, one, TREE);
    WeatherYears single = WeatherYears.of(alone, CATALOGUE, needs.climate(), 0);
    ZoneSchedule schedule = ZoneSchedule.constant(14, Rhythm.every(3, 0));
    double[] given = new double[single.daily().days()];
    for (int day = 0; day < given.length; day += 3) {
      given[day] = 14 * M3_PER_MINUTE;
    }
    PlantSeries plant = PlantSeries.inYear(grove, TREE, 1, needs, single.daily(), CATALOGUE);
    BalanceTotals totals =
        BalanceRun.run(single.daily(), plant, BalanceRun.Watering.GIVEN, given, null);
    PlantYear year = run(years, 0).year(second, schedule, null);
    assertThat(year.stressedDays()).isEqualTo(totals.stressedDays()).isBetween(20, 300);
    assertThat(year.waterM3()).isCloseTo(totals.irrigationM3(), within(1e-9));
    assertThat(year.lostM3()).isCloseTo(totals.lostM3(), within(1e-9));
    assertThat(year.shortfall())
        .isCloseTo(1 - totals.transpiredM3() / totals.wantedM3(), within(1e-9));
    assertThat(year.longestSpell()).isBetween(1, year.stressedDays());
  }

  @Test
  void theQuickTestAgreesWithTheHistory() {
    PlantRun plant = run(years, 0);
    for (int minutes = 2; minutes <= 40; minutes += 2) {
      ZoneSchedule schedule = ZoneSchedule.constant(minutes, Rhythm.every(2, 0));
      int failed = plant.history(schedule).failedYears();
      for (int most = 0; most <= 4; most++) {
        assertThat(plant.failsMoreThan(most, schedule)).isEqualTo(failed > most);
      }
    }
  }

  @Test
  void worstYearAndSpellsAreThoseOfTheYears() {
    List<PlantYear> four = new ArrayList<>();
    int[] stressed = {0, 4, 9, 9};
    for (int i = 0; i < 4; i++) {
      four.add(new PlantYear(2000 + i, stressed[i], i, 0, 1, 0.5));
    }
    PlantHistory history = new PlantHistory("tree", "zone-1", true, four);
    assertThat(history.failedYears()).isEqualTo(3);
    assertThat(history.failedShare()).isEqualTo(0.75);
    assertThat(history.worst().year()).isEqualTo(2002);
    assertThat(history.longestSpell()).isEqualTo(3);
    assertThat(history.meanStressedDays()).isEqualTo(5.5);
  }

  @Test
  void aPlantSetLaterSuffersNothingBefore() {
    ZoneSchedule nothing = ZoneSchedule.constant(0, Rhythm.every(1, 0));
    int early = run(years, 0).history(nothing).years().get(0).stressedDays();
    int late = run(years, 200).history(nothing).years().get(0).stressedDays();
    assertThat(early).isGreaterThan(late);
    assertThat(run(years, 365).history(nothing).failedYears()).isZero();
  }

  @Test
  void minutesOfTheTimerAreWhole() {
    assertThat(TimerCard.minutes(15, 110)).isEqualTo(17);
    assertThat(TimerCard.minutes(15, 50)).isEqualTo(8);
    assertThat(TimerCard.minutes(4, 10)).isZero();
    ZoneSchedule schedule = ZoneSchedule.constant(10, Rhythm.every(7, 0));
    // 52 or 53 waterings a year.
    double minutes =
        schedule.minutesPerYear(years.daily(), ZoneSchedule.months(years.daily()), years.spans());
    assertThat(minutes).isBetween(520.0, 530.0);
  }

  /**
   * The half year before makes the soil, whatever it held when that began: full and all but dry
   * come to the same water before each year, watered or not.
   */
  @Test
  void halfAYearForgetsHowItBegan() {
    WeatherYears.Span span = years.spans().get(1);
    PlantSeries plant = PlantSeries.inYear(grove, TREE, 1, needs, years.daily(), CATALOGUE);
    int slot = years.daily().slot(span.from());
    for (double mm : new double[] {0, 3}) {
      double[] missing = new double[2];
      for (int dry = 0; dry < 2; dry++) {
        PlantSoil soil = new PlantSoil(years.daily(), plant);
        soil.balance().start(0, dry * 60);
        for (int day = span.from() - PlantRun.BEFORE_DAYS; day < span.from(); day++) {
          soil.day(day, slot, day % 3 == 0 ? mm : 0);
        }
        missing[dry] = soil.balance().uptakeMissingMm();
      }
      assertThat(missing[0]).isCloseTo(missing[1], within(0.5));
    }
  }

  /** What stands when the year begins meets the soil that the dry months before have left. */
  @Test
  void aStandingPlantDoesNotBeginEachYearMoist() {
    Climate dry = TestGroves.dailyDrySummer(2026, 5, 11);
    LocalDate august = LocalDate.of(2026, 8, 1);
    Grove late =
        TestGroves.grove(
            37, dry, TestGroves.plant("tree", "evergreen", 20, TestGroves.START.minusYears(1)));
    late =
        new Grove(
            late.site(),
            late.soil(),
            late.climate(),
            late.supply(),
            late.rows(),
            late.plantings(),
            late.watering(),
            late.stock(),
            late.crew(),
            august,
            late.preferences());
    WaterNeeds of = WaterNeeds.of(late, CATALOGUE, new FigureBook());
    WeatherYears from = WeatherYears.of(late, CATALOGUE, of.climate(), 0);
    PlantSeries series =
        PlantSeries.inYear(late, late.plantings().get(0), 1, of, from.daily(), CATALOGUE);
    PlantRun stood = new PlantRun("tree", "z", true, from, series, 0, true, M3_PER_MINUTE);
    PlantRun set = new PlantRun("tree", "z", true, from, series, 0, false, M3_PER_MINUTE);
    ZoneSchedule nothing = ZoneSchedule.constant(0, Rhythm.every(1, 0));
    for (WeatherYears.Span span : from.spans()) {
      boolean[] first = new boolean[2];
      stood.year(
          span, nothing, (day, mm, soil) -> first[0] |= day == span.from() && soil.stressed());
      set.year(span, nothing, (day, mm, soil) -> first[1] |= day == span.from() && soil.stressed());
      assertThat(first).as("%s", span.year()).containsExactly(true, false);
    }
    ZoneSchedule plenty = ZoneSchedule.constant(120, Rhythm.every(1, 0));
    assertThat(stood.failsMoreThan(0, plenty)).isEqualTo(set.failsMoreThan(0, plenty));
  }

  @Test
  void toleratedDaysLetAYearPass() {
    PlantRun plant = run(years, 0);
    ZoneSchedule nothing = ZoneSchedule.constant(0, Rhythm.every(1, 0));
    List<PlantYear> bare = plant.history(nothing).years();
    int most = bare.stream().mapToInt(PlantYear::stressedDays).max().orElseThrow();
    plant.tolerate(most - 1);
    assertThat(plant.failsMoreThan(0, nothing)).isTrue();
    plant.tolerate(most);
    assertThat(plant.failsMoreThan(0, nothing)).isFalse();
    assertThat(plant.history(nothing).failedYears()).isEqualTo(years.spans().size());
  }
}
