package org.grovewright.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Enters the figures of a card. */
final class SeasonFigures {
  private static final String REPLAY =
      "daily dual crop coefficient balance of FAO-56 (1998) chapters 7 and 8, every year from the"
          + " soil that the half year before leaves; moist in the year in which a plant is set";
  private static final double DAY_S = 86_400;

  private final SeasonPlan plan;
  private final FigureBook book;
  private final Input years;

  private SeasonFigures(SeasonPlan plan, FigureBook book) {
    this.plan = plan;
    this.book = book;
    years =
        new Input(
            "n, years of weather",
            plan.years().spans().size(),
            Kind.COUNT,
            plan.years().drawn() ? "assumed: drawn from the monthly normals" : "description");
  }

  static void enter(SeasonPlan plan, FigureBook book) {
    SeasonFigures figures = new SeasonFigures(plan, book);
    List<Outcome> all = new ArrayList<>(List.of(plan.outcome()));
    all.addAll(plan.others());
    all.forEach(figures::enter);
    plan.outcome().plants().forEach(figures::enter);
    plan.card().programmes().forEach(figures::enter);
  }

  private String root() {
    return "season.year-" + plan.settings().planYear() + ".";
  }

  private void enter(Outcome outcome) {
    String way = FigureBook.slug(outcome.way().name());
    book.enter(
        root() + way + ".water",
        "water drawn in a mean year",
        outcome.waterM3PerYear(),
        Kind.WATER_VOLUME,
        Working.of(
            "sum over zones and waterings of minutes times flow, over n",
            "replayed day by day",
            years));
    book.enter(
        root() + way + ".stressed-days",
        "stressed days of all plants in a mean year",
        outcome.stressedPlantDays(),
        Kind.NUMBER,
        Working.of(
            "sum over plants of the days with a stress coefficient below 1, over n",
            REPLAY,
            years));
    book.enter(
        root() + way + ".lost",
        "water lost below the roots of all plants in a mean year",
        outcome.lostM3PerYear(),
        Kind.WATER_VOLUME,
        Working.of("sum of the percolation below every root zone, over n", REPLAY, years));
  }

  private void enter(PlantHistory plant) {
    String id = root() + "plant." + FigureBook.slug(plant.plantId());
    Input failed =
        new Input("k, years beyond the limit", plant.failedYears(), Kind.COUNT, "replay");
    book.enter(
        id + ".chance",
        "chance that " + plant.plantId() + " passes its limit in a year",
        plant.failedShare(),
        Kind.SHARE,
        Working.of(
            "k / n; the limit is passed on a day whose stress coefficient is below 1",
            REPLAY + "; limit: equation 84",
            failed,
            years));
    String bounds =
        "exact binomial bounds of Clopper and Pearson (1934), Biometrika 26; years taken as"
            + " independent";
    book.enter(
        id + ".chance-low",
        "lower bound of that chance",
        plant.chance().low(),
        Kind.SHARE,
        Working.of(
            "chance at which k or more of n years has a probability of 5 %",
            bounds, failed, years));
    book.enter(
        id + ".chance-high",
        "upper bound of that chance",
        plant.chance().high(),
        Kind.SHARE,
        Working.of(
            "chance at which k or fewer of n years has a probability of 5 %",
            bounds, failed, years));
    book.enter(
        id + ".chance-in-ten",
        "chance that " + plant.plantId() + " passes its limit at least once in ten such years",
        Chance.atLeastOnce(plant.failedShare(), 10),
        Kind.SHARE,
        Working.of(
            "1 - (1 - k / n)^10",
            "ten independent years with the plant as large as in this one; common practice, no"
                + " source",
            failed,
            years));
    book.enter(
        id + ".stressed-days",
        "stressed days of " + plant.plantId() + " in a mean year",
        plant.meanStressedDays(),
        Kind.NUMBER,
        Working.of("days with a stress coefficient below 1, over n", REPLAY, years));
    book.enter(
        id + ".longest-spell",
        "longest spell of stressed days of " + plant.plantId(),
        plant.longestSpell() * DAY_S,
        Kind.DAYS,
        Working.of("most such days in a row in any year", REPLAY, years));
    book.enter(
        id + ".worst-year",
        "stressed days of " + plant.plantId() + " in its worst year",
        plant.worst().stressedDays(),
        Kind.COUNT,
        Working.of(
            "most stressed days in a year",
            REPLAY,
            new Input("year from", plant.worst().year(), Kind.NUMBER, "replay")));
    book.enter(
        id + ".lost",
        "water lost below the roots of " + plant.plantId() + " in a mean year",
        plant.lostM3PerYear(),
        Kind.WATER_VOLUME,
        Working.of("sum of the percolation, over n", REPLAY, years));
  }

  private void enter(TimerCard.Line line) {
    for (TimerCard.Zone zone : line.zones()) {
      for (TimerCard.MonthStep step : line.months()) {
        String id =
            String.format(
                Locale.ROOT,
                "%s%s.month-%02d.",
                root(),
                FigureBook.slug(zone.zone()),
                step.month());
        int perStart = line.minutesPerStart(zone, step.month());
        book.enter(
            id + "minutes",
            "minutes on each watering day",
            perStart * line.startsPerDay() * 60.0,
            Kind.RUN_TIME,
            Working.of(
                "s m p in whole minutes; m, p and the days between found by search: coordinate"
                    + " descent with exact replay for the least water that keeps every plant",
                REPLAY,
                new Input("starts s", line.startsPerDay(), Kind.COUNT, "search"),
                new Input("minutes m", zone.minutes() * 60.0, Kind.RUN_TIME, "search"),
                new Input("percentage p", step.percent() / 100.0, Kind.SHARE, "search")));
        book.enter(
            id + "every",
            "days from one watering to the next",
            step.percent() == 0 ? 0 : step.rhythm().meanGap(step.month()) * DAY_S,
            Kind.DAYS,
            Working.of("found by search with exact replay", REPLAY, years));
      }
    }
  }
}
