package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.quantity.FigureBook;
import org.grovewright.season.Outcome;
import org.grovewright.season.Outcome.Way;
import org.grovewright.season.PlantHistory;
import org.grovewright.season.SeasonPlan;
import org.grovewright.season.SeasonSettings;
import org.grovewright.season.TimerCard;
import org.junit.jupiter.api.Test;

/** The season card under drought rules, each written into the invented example with a tank. */
class SeasonRulesTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final double GALLON_M3 = 3.785411784e-3;
  private static final int YEARS = 10;

  private record Made(Plan plan, SeasonPlan season, Map<String, String> sheets) {}

  private static Made made(String rule, int planYear) {
    try {
      String text =
          Files.readString(Path.of("../examples/us-gravity.yaml"))
              .replace("  tank_volume:", rule + "  tank_volume:");
      Plan plan =
          Planner.plan(
              new DescriptionReader(CATALOGUE, null).read(text, "grove.yaml", Path.of("")),
              CATALOGUE);
      FigureBook book = new FigureBook();
      SeasonPlan season =
          SeasonPlan.of(
              plan.grove(),
              CATALOGUE,
              plan.water(),
              plan.watering(),
              plan.programme(),
              new SeasonSettings(planYear, YEARS, 4, 0.9),
              book);
      return new Made(
          plan,
          season,
          SeasonSheets.of(plan.grove(), List.of(season), book.all(), Sheets.unitsOf(plan)));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /**
   * The most water of any seven days when the card is followed from the start of a year on, day by
   * day through many years, m3.
   */
  private static double heaviestWeek(Made made, boolean keepsDays) {
    int days = 28 * 365;
    LocalDate first = LocalDate.of(2027, 2, 1);
    double[] drawn = new double[days];
    for (TimerCard.Line line : made.season.card().programmes()) {
      double[] perDay = new double[12];
      for (TimerCard.Zone zone : line.zones()) {
        double flow =
            made.plan.watering().zonesIn(made.season.card().planYear()).stream()
                .filter(z -> z.design().id().equals(zone.zone()))
                .findFirst()
                .orElseThrow()
                .flowM3PerS();
        for (int month = 1; month <= 12; month++) {
          perDay[month - 1] +=
              60.0 * flow * line.startsPerDay() * line.minutesPerStart(zone, month);
        }
      }
      int since = 100;
      for (int day = 0; day < days; day++) {
        LocalDate date = first.plusDays(day);
        TimerCard.MonthStep step = line.months().get(date.getMonthValue() - 1);
        since++;
        boolean due =
            step.rhythm().byCalendar()
                ? step.rhythm().days().allows(date)
                : since >= step.rhythm().everyDays();
        if (due && perDay[date.getMonthValue() - 1] > 0) {
          if (keepsDays) {
            assertThat(date.getDayOfWeek()).isIn(DayOfWeek.TUESDAY, DayOfWeek.SATURDAY);
          }
          drawn[day] += perDay[date.getMonthValue() - 1];
          since = 0;
        }
      }
    }
    double most = 0;
    for (int day = 0; day + 7 <= days; day++) {
      double sum = 0;
      for (int i = day; i < day + 7; i++) {
        sum += drawn[i];
      }
      most = Math.max(most, sum);
    }
    return most;
  }

  @Test
  void aVolumeAWeekBindsTheCardAndAllThatItIsComparedWith() {
    Made free = made("", 2);
    double wanted = heaviestWeek(free, false);
    double limit = Math.floor(0.7 * wanted / GALLON_M3);
    Made held = made("  weekly_limit: " + limit + " gal\n", 2);
    assertThat(heaviestWeek(held, false)).isLessThanOrEqualTo(limit * GALLON_M3 * (1 + 1e-9));
    assertThat(held.season.other(Way.SAME_KEEPING)).isEmpty();
    double mostAYear = limit * GALLON_M3 * 366 / 7;
    for (Outcome other : held.season.others()) {
      assertThat(other.waterM3PerYear()).isLessThanOrEqualTo(mostAYear);
    }
    // What is short of water is said, and the water that may be drawn is used for it.
    List<String> short_ =
        held.season.findings().stream()
            .filter(f -> f.code().equals("season.rule-short"))
            .map(Finding::subject)
            .toList();
    long notKept = held.season.outcome().plants().stream().filter(p -> p.failedYears() > 1).count();
    assertThat(short_.isEmpty()).isEqualTo(notKept == 0);
    if (!short_.isEmpty()) {
      assertThat(heaviestWeek(held, false)).isGreaterThan(0.8 * limit * GALLON_M3);
    }
    assertThat(held.sheets.get("seasons.html")).contains("No seven days may draw more than");
    assertThat(free.sheets.get("seasons.html")).doesNotContain("may draw more than");
  }

  @Test
  void allowedDaysBindTheCardAndNoPlantIsGivenUp() {
    Made held = made("  days: [Tue, Sat]\n", 1);
    heaviestWeek(held, true);
    SeasonPlan season = held.season;
    // Young trees cannot wait from Saturday to Tuesday; the card still gives them what helps.
    assertThat(season.findings()).extracting(Finding::code).contains("season.not-kept");
    assertThat(season.outcome().waterM3PerYear()).isPositive();
    double card = season.outcome().stressedPlantDays();
    double same = season.other(Way.SAME_WATER).orElseThrow().stressedPlantDays();
    assertThat(card).isLessThan(same);
    for (PlantHistory plant : season.outcome().plants()) {
      assertThat(plant.meanStressedDays()).as(plant.plantId()).isLessThan(150);
    }
    String card_ = held.sheets.get("timer-card.html");
    assertThat(card_).contains("Tue Sat").contains("Water may run only on Tuesday and Saturday.");
    assertThat(held.sheets.get("seasons.html"))
        .contains("Water may run only on Tuesday and Saturday.")
        .contains("Half an hour on every allowed day");
    assertThat(
            season.card().programmes().stream()
                .flatMap(line -> line.months().stream())
                .map(step -> step.rhythm().days().weekdays())
                .allMatch(Set.of(DayOfWeek.TUESDAY, DayOfWeek.SATURDAY)::containsAll))
        .isTrue();
  }

  @Test
  void cardsOfLaterYearsSayWhichEmittersComeFirst() {
    Made second = made("", 2);
    TimerCard card = second.season.card();
    // By the design itself: what is open in the second year and was not in the first.
    long fitted =
        second.plan.watering().zones().stream()
            .flatMap(zone -> zone.design().allOutlets().stream())
            .filter(outlet -> outlet.fromYear() == 2)
            .count();
    assertThat(fitted).isPositive();
    assertThat(
            card.changes().stream()
                .flatMap(change -> change.add().values().stream())
                .mapToInt(Integer::intValue)
                .sum())
        .isEqualTo((int) fitted);
    assertThat(second.sheets.get("timer-card.html"))
        .contains("Emitters to fit first")
        .contains("First fit the emitters of year 2 at");
    Made first = made("", 1);
    assertThat(first.season.card().changes()).isEmpty();
    assertThat(first.sheets.get("timer-card.html")).doesNotContain("Emitters to fit first");
  }
}
