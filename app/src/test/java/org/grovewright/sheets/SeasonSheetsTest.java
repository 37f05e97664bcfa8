package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.quantity.FigureBook;
import org.grovewright.season.Outcome;
import org.grovewright.season.PlantHistory;
import org.grovewright.season.SeasonPlan;
import org.grovewright.season.SeasonSettings;
import org.grovewright.season.SoilTrace;
import org.grovewright.season.TimerCard;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The timer through the seasons of a whole plan, and its sheets. */
class SeasonSheetsTest {
  private static final int PLAN_YEAR = 1;
  private static final int YEARS = 5;

  private static Plan plan;
  private static SeasonPlan season;
  private static Map<String, String> sheets;

  @BeforeAll
  static void search() throws Exception {
    Catalogue catalogue = CatalogueFiles.load().catalogue();
    try (InputStream in =
        SeasonSheetsTest.class.getResourceAsStream("/org/grovewright/examples/us-gravity.yaml")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      plan =
          Planner.plan(
              new DescriptionReader(catalogue, new WeatherOfDescription())
                  .read(text, "us-gravity.yaml", Path.of("")),
              catalogue);
    }
    FigureBook book = new FigureBook();
    season =
        SeasonPlan.of(
            plan.grove(),
            catalogue,
            plan.water(),
            plan.watering(),
            plan.programme(),
            new SeasonSettings(PLAN_YEAR, YEARS, 4, 0.8),
            book);
    sheets = SeasonSheets.of(plan.grove(), List.of(season), book.all(), Sheets.unitsOf(plan));
  }

  @Test
  void theCardKeepsItsPromiseInTheReplay() {
    assertThat(season.outcome().plants()).isNotEmpty();
    List<String> left =
        season.findings().stream()
            .filter(f -> f.code().equals("season.not-kept"))
            .map(f -> f.subject())
            .toList();
    for (PlantHistory plant : season.outcome().plants()) {
      assertThat(plant.years()).hasSize(YEARS);
      if (!left.contains(plant.plantId())) {
        assertThat(plant.failedYears()).as(plant.plantId()).isLessThanOrEqualTo(1);
      }
    }
  }

  @Test
  void theSameMinutesAllYearTakeMoreWaterForTheSamePromise() {
    // The card may do all that a rule of constant minutes may, but for rounding to its steps.
    season
        .other(Outcome.Way.SAME_KEEPING)
        .ifPresent(
            rule ->
                assertThat(season.outcome().waterM3PerYear())
                    .isLessThan(rule.waterM3PerYear() * 1.02));
    for (int i = 1; i < season.trade().size(); i++) {
      assertThat(season.trade().get(i).waterM3PerYear())
          .isLessThanOrEqualTo(season.trade().get(i - 1).waterM3PerYear());
      assertThat(season.trade().get(i).worstShare())
          .isLessThanOrEqualTo(season.trade().get(i).allowedShare() + 1e-12);
    }
  }

  @Test
  void theCardIsWhatASimpleTimerCanDo() {
    assertThat(season.card().programmes()).hasSizeLessThanOrEqualTo(3);
    for (TimerCard.Line line : season.card().programmes()) {
      assertThat(line.startsPerDay()).isBetween(1, 4);
      assertThat(line.starts().size()).isIn(0, line.startsPerDay());
      for (TimerCard.MonthStep step : line.months()) {
        assertThat(step.percent()).isBetween(0, 200);
        assertThat(step.percent() % 10).isZero();
        assertThat(step.rhythm().everyDays()).isBetween(1, 7);
      }
      // Four changes a year: December to February are one season, and so on.
      assertThat(line.months().get(0).percent()).isEqualTo(line.months().get(11).percent());
      assertThat(line.months().get(3).percent()).isEqualTo(line.months().get(2).percent());
    }
  }

  @Test
  void theSoilIsTracedThroughAWholeYear() {
    assertThat(season.traces()).hasSameSizeAs(season.outcome().plants());
    for (SoilTrace trace : season.traces()) {
      for (SoilTrace.Day day : trace.days()) {
        assertThat(day.missingMm()).isBetween(-1e-9, day.totalMm() + 1e-9);
        assertThat(day.readilyMm()).isLessThan(day.totalMm());
      }
    }
  }

  @Test
  void waterOfTheCardIsMinutesTimesFlow() {
    // Counted from the card alone, month by month; gaps that run over the end of a month allow for
    // a watering more or less in each.
    double most = 0;
    double least = 0;
    for (TimerCard.Line line : season.card().programmes()) {
      for (TimerCard.Zone zone : line.zones()) {
        double flow =
            plan.watering().zonesIn(PLAN_YEAR).stream()
                .filter(z -> z.design().id().equals(zone.zone()))
                .findFirst()
                .orElseThrow()
                .flowM3PerS();
        for (TimerCard.MonthStep step : line.months()) {
          double each =
              60.0 * flow * line.startsPerDay() * line.minutesPerStart(zone, step.month());
          double times = 30.44 / step.rhythm().everyDays();
          most += each * (times + 1);
          least += each * Math.max(0, times - 1);
        }
      }
    }
    assertThat(season.outcome().waterM3PerYear()).isBetween(least, most);
    assertThat(season.outcome().waterM3PerYear())
        .isCloseTo((least + most) / 2, within((most - least) / 4));
  }

  @Test
  void everySheetIsWellFormed() throws Exception {
    assertThat(sheets).containsKeys("seasons.html", "timer-card.html", "water-and-risk.svg");
    assertThat(sheets.keySet().stream().filter(name -> name.startsWith("ring-"))).isNotEmpty();
    assertThat(sheets.keySet().stream().filter(name -> name.startsWith("soil-"))).isNotEmpty();
    for (Map.Entry<String, String> sheet : sheets.entrySet()) {
      XmlChecks.parse(sheet.getValue().replace("<!DOCTYPE html>", ""));
    }
  }

  @Test
  void theCardHasItsOwnPaperAndAllMonths() {
    String card = sheets.get("timer-card.html");
    // The example is in US units, so the card is an index card.
    assertThat(card).contains("size: 4in 6in").contains(plan.grove().site().name());
    for (int month = 1; month <= 12; month++) {
      assertThat(card).contains(Words.month(month));
    }
    TimerCard.Line line = season.card().programmes().get(0);
    int july = line.minutesPerStart(line.zones().get(0), 7);
    assertThat(july).isPositive();
    assertThat(card).contains(">" + july + "<").contains(SeasonWords.starts(line));
  }

  @Test
  void aRingTellsItsMinutesToThoseWhoCannotSeeIt() {
    String ring =
        YearRing.draw(
            "zone A",
            "ring",
            java.util.stream.IntStream.rangeClosed(1, 12)
                .mapToObj(
                    m ->
                        new YearRing.Month(
                            m, m == 2 ? 0 : 10 * m, m == 2 ? Rhythm.OFF : Rhythm.every(3, 0)))
                .toList());
    assertThat(ring)
        .contains("January 10 minutes every 3 days; February off;")
        .contains("December 120 minutes every 3 days.");
    assertThat(ring.split("class=\"water\"", -1)).hasSize(12);
  }
}
