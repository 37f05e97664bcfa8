package org.grovewright.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.grovewright.advice.TodayAdvice.MeasuredWeather;
import org.grovewright.advice.ZoneAdvice.Action;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.quantity.FigureBook;
import org.junit.jupiter.api.Test;

/** The stories of a watering season on the invented example with a tank. */
class TodayAdviceTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final Plan PLAN =
      Planner.plan(
          new DescriptionReader(CATALOGUE, null).read(Path.of("../examples/us-gravity.yaml")),
          CATALOGUE);
  private static final LocalDate TODAY = LocalDate.of(2027, 7, 12);
  private static final LocalDate FIRST = LocalDate.of(2027, 3, 1);

  /** A dry summer: every day like the next, with the warmth of the season, and no rain. */
  private static MeasuredWeather dry(LocalDate until) {
    List<DayWeather> days = new ArrayList<>();
    for (LocalDate day = FIRST; !day.isAfter(until); day = day.plusDays(1)) {
      double warm = Math.sin((day.getDayOfYear() - 105) * 2 * Math.PI / 365);
      days.add(day(day, 9 + 6 * warm, 22 + 11 * warm, 0));
    }
    return new MeasuredWeather(days, 2);
  }

  private static DayWeather day(LocalDate date, double tmin, double tmax, double rainM) {
    return new DayWeather(
        date,
        tmin,
        tmax,
        OptionalDouble.of(0.5),
        OptionalDouble.empty(),
        OptionalDouble.of(2),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.of(rainM));
  }

  private static TodayAdvice ask(MeasuredWeather weather, WaterLog log, LocalDate date) {
    return TodayAdvice.of(PLAN, weather, log, date, new FigureBook());
  }

  private static WaterLog log(List<WaterLog.Run> runs) {
    return new WaterLog(runs, new TreeMap<>());
  }

  private static WaterLog rained(LocalDate date, double metres) {
    TreeMap<LocalDate, Double> gauge = new TreeMap<>();
    gauge.put(date, metres);
    return new WaterLog(List.of(), gauge);
  }

  /** Asks every day, notes what was done, and does it; skips some days. */
  private static List<WaterLog.Run> follow(LocalDate from, LocalDate until, LocalDate... skipped) {
    List<LocalDate> shut = List.of(skipped);
    MeasuredWeather weather = dry(until);
    List<WaterLog.Run> runs = new ArrayList<>();
    for (LocalDate day = from; day.isBefore(until); day = day.plusDays(1)) {
      for (ZoneAdvice zone : ask(weather, log(runs), day).zones()) {
        double seconds = shut.contains(day) ? 0 : zone.minutes() * 60.0;
        runs.add(WaterLog.Run.timed(day, zone.zone(), seconds));
      }
    }
    return runs;
  }

  @Test
  void whoFollowsTheAdviceKeepsPlantsFromSuffering() {
    List<WaterLog.Run> runs = follow(TODAY.minusDays(20), TODAY);
    TodayAdvice advice = ask(dry(TODAY), log(runs), TODAY);
    assertThat(advice.lookAt()).noneMatch(look -> look.reason() == LookAt.Reason.THIRSTY);
    assertThat(advice.plants()).isNotEmpty().allMatch(plant -> plant.dryness() <= 1.001);
  }

  @Test
  void afterASkippedWeekItAsksForMoreAndSoonIsRightAgain() {
    LocalDate from = TODAY.minusDays(25);
    LocalDate[] week = TODAY.minusDays(14).datesUntil(TODAY.minusDays(7)).toArray(LocalDate[]::new);
    List<WaterLog.Run> usual = follow(from, TODAY);
    List<WaterLog.Run> lapsed = follow(from, TODAY, week);
    LocalDate back = TODAY.minusDays(7);

    TodayAdvice before = ask(dry(TODAY), log(until(back, usual)), back);
    TodayAdvice after = ask(dry(TODAY), log(until(back, lapsed)), back);
    assertThat(after.lookAt()).anyMatch(look -> look.reason() == LookAt.Reason.THIRSTY);
    for (int z = 0; z < after.zones().size(); z++) {
      assertThat(after.zones().get(z).action()).isEqualTo(Action.WATER);
      assertThat(after.zones().get(z).wantedMinutes())
          .isGreaterThan(2 * before.zones().get(z).wantedMinutes());
    }
    // A week later nothing tells the two apart but a little water.
    TodayAdvice settled = ask(dry(TODAY), log(lapsed), TODAY);
    assertThat(settled.lookAt()).isEqualTo(ask(dry(TODAY), log(usual), TODAY).lookAt());
    assertThat(settled.plants()).allMatch(plant -> plant.dryness() <= 1.001);
  }

  private static List<WaterLog.Run> until(LocalDate date, List<WaterLog.Run> runs) {
    return runs.stream().filter(run -> run.date().isBefore(date)).toList();
  }

  @Test
  void whatWasGivenThisMorningIsNotAskedForAgain() {
    List<WaterLog.Run> runs = new ArrayList<>(skippedSince(TODAY.minusDays(3)));
    runs.removeIf(run -> !run.date().isBefore(TODAY));
    TodayAdvice morning = ask(dry(TODAY), log(runs), TODAY);
    for (ZoneAdvice zone : morning.zones()) {
      assertThat(zone.action()).isEqualTo(Action.WATER);
      runs.add(WaterLog.Run.timed(TODAY, zone.zone(), zone.wantedMinutes() * 60.0));
    }
    assertThat(ask(dry(TODAY), log(runs), TODAY).zones())
        .allMatch(zone -> zone.action() == Action.SKIP);
  }

  @Test
  void heavyRainInTheGaugeStopsTheWateringThoughTheStationSawNone() {
    TodayAdvice dry = ask(dry(TODAY), log(skippedSince(TODAY.minusDays(6))), TODAY);
    assertThat(dry.zones()).allMatch(zone -> zone.action() == Action.WATER);

    WaterLog wet =
        new WaterLog(skippedSince(TODAY.minusDays(6)), rained(TODAY.minusDays(1), 0.08).gaugeM());
    TodayAdvice advice = ask(dry(TODAY), wet, TODAY);
    assertThat(advice.zones()).allMatch(zone -> zone.action() == Action.SKIP);
    assertThat(advice.zones()).allMatch(zone -> zone.minutes() == 0);
    assertThat(advice.lookAt()).isEmpty();
    // It dries again by itself, without a word from the owner.
    LocalDate later = TODAY.plusDays(6);
    assertThat(
            ask(dry(later), new WaterLog(skippedSince(TODAY.minusDays(6)), wet.gaugeM()), later)
                .zones())
        .allMatch(zone -> zone.action() == Action.WATER);
  }

  private static List<WaterLog.Run> skippedSince(LocalDate from) {
    return from.datesUntil(TODAY.plusDays(10)).map(d -> WaterLog.Run.skipped(d, "")).toList();
  }

  @Test
  void theGaugeGoesBeforeTheStationInBothDirections() {
    List<DayWeather> days = new ArrayList<>(dry(TODAY).days());
    LocalDate yesterday = TODAY.minusDays(1);
    days.removeIf(day -> !day.date().isBefore(yesterday));
    days.add(day(yesterday, 15, 33, 0.08));
    WaterLog log = log(skippedSince(TODAY.minusDays(6)));
    TodayAdvice station = ask(new MeasuredWeather(days, 2), log, TODAY);
    assertThat(station.zones()).allMatch(zone -> zone.action() == Action.SKIP);
    WaterLog none = new WaterLog(log.runs(), rained(yesterday, 0).gaugeM());
    TodayAdvice gauge = ask(new MeasuredWeather(days, 2), none, TODAY);
    assertThat(gauge.zones()).allMatch(zone -> zone.action() == Action.WATER);
  }

  @Test
  void theMinutesFillTheServedPlantAndTheVolumeIsFlowTimesTime() {
    TodayAdvice advice = ask(dry(TODAY), log(skippedSince(TODAY.minusDays(4))), TODAY);
    double efficiency = CATALOGUE.constant("irrigation.application-efficiency").value();
    for (int z = 0; z < advice.zones().size(); z++) {
      ZoneAdvice zone = advice.zones().get(z);
      ZoneResult result = PLAN.watering().zonesIn(1).get(z);
      assertThat(zone.volume().value())
          .isCloseTo(zone.minutes() * 60 * result.flowM3PerS(), within(1e-9));
      int index = -1;
      for (int i = 0; i < PLAN.grove().plantings().size(); i++) {
        index = PLAN.grove().plantings().get(i).id().equals(zone.servedPlantId()) ? i : index;
      }
      double usable = result.plantFlows().get(index) * efficiency * 60;
      double missing =
          advice.plants().stream()
              .filter(plant -> plant.plantId().equals(zone.servedPlantId()))
              .findFirst()
              .orElseThrow()
              .missing()
              .value();
      assertThat(zone.wantedMinutes() * usable).isGreaterThanOrEqualTo(missing - 1e-9);
      assertThat((zone.wantedMinutes() - 1) * usable).isLessThan(missing);
    }
  }

  @Test
  void litresCountAsTheMinutesInWhichTheZoneGivesThem() {
    ZoneResult zone = PLAN.watering().zonesIn(1).get(0);
    List<WaterLog.Run> byClock = new ArrayList<>(skippedSince(TODAY.minusDays(4)));
    List<WaterLog.Run> byMeter = new ArrayList<>(byClock);
    LocalDate day = TODAY.minusDays(2);
    byClock.add(WaterLog.Run.timed(day, zone.design().id(), 3600));
    byMeter.add(WaterLog.Run.metered(day, zone.design().id(), 3600 * zone.flowM3PerS()));
    assertThat(ask(dry(TODAY), log(byMeter), TODAY).zones().get(0).wantedMinutes())
        .isEqualTo(ask(dry(TODAY), log(byClock), TODAY).zones().get(0).wantedMinutes());
  }

  @Test
  void saysWhatItAssumes() {
    TodayAdvice silent = ask(dry(TODAY), WaterLog.EMPTY, TODAY);
    assertThat(silent.findings()).extracting(Finding::code).contains("advice.assumed-waterings");
    MeasuredWeather old = dry(TODAY.minusDays(9));
    assertThat(ask(old, WaterLog.EMPTY, TODAY).findings())
        .filteredOn(f -> f.code().equals("advice.missing-weather"))
        .singleElement()
        .satisfies(f -> assertThat(f.quantities().get(0).value()).isEqualTo(8 * 86_400.0));
    MeasuredWeather few = new MeasuredWeather(dry(TODAY).days().subList(125, 130), 2);
    assertThat(ask(few, WaterLog.EMPTY, TODAY).findings())
        .extracting(Finding::code)
        .contains("advice.short-weather");
  }

  @Test
  void beforePlantingThereIsNothingToWater() {
    LocalDate early = LocalDate.of(2027, 3, 3);
    assertThat(ask(dry(early), WaterLog.EMPTY, early).zones())
        .allMatch(zone -> zone.action() == Action.NOTHING_PLANTED);
  }

  @Test
  void weatherThatBeginsAfterTodayIsRefused() {
    assertThatThrownBy(() -> ask(dry(TODAY), WaterLog.EMPTY, FIRST.minusDays(1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("begins on 2027-03-01");
  }

  /** A wetting of 20 mm more, whenever it falls, never makes a zone want more minutes. */
  @Property(tries = 40)
  void moreRainNeverWantsMoreMinutes(
      @ForAll @IntRange(min = 1, max = 12) int daysAgo,
      @ForAll @IntRange(min = 1, max = 9) int skippedDays,
      @ForAll @DoubleRange(min = 0, max = 0.03) double rain) {
    LocalDate day = TODAY.minusDays(daysAgo);
    List<WaterLog.Run> runs = skippedSince(TODAY.minusDays(skippedDays));
    TodayAdvice less = ask(dry(TODAY), new WaterLog(runs, rained(day, rain).gaugeM()), TODAY);
    TodayAdvice more =
        ask(dry(TODAY), new WaterLog(runs, rained(day, rain + 0.02).gaugeM()), TODAY);
    for (int z = 0; z < less.zones().size(); z++) {
      assertThat(more.zones().get(z).wantedMinutes())
          .isLessThanOrEqualTo(less.zones().get(z).wantedMinutes());
    }
  }
}
