package org.grovewright.sheets;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.grovewright.irrigation.EmitterChange;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Kind;
import org.grovewright.season.Chance;
import org.grovewright.season.Outcome;
import org.grovewright.season.SeasonPlan;
import org.grovewright.season.TimerCard;

/** What the timer through the seasons is called in words. */
public final class SeasonWords {
  private SeasonWords() {}

  /** A way of watering, under the rule that binds all of them. */
  public static String way(SeasonPlan plan, Outcome outcome) {
    boolean days = !plan.rule().days().any();
    String way =
        switch (outcome.way()) {
          case SAME_HALF_HOUR ->
              days ? "Half an hour on every allowed day, all year" : way(outcome.way());
          case SAME_KEEPING, SAME_WATER, CARD, MONTHLY_NEEDS, WEEKLY_DEPTH -> way(outcome.way());
        };
    return outcome.share() < 1
        ? way + ", cut to " + Math.round(outcome.share() * 100) + "\u00a0% by what may be drawn"
        : way;
  }

  /** The rule that the card and all other ways keep; empty text where there is none. */
  public static String rule(SeasonPlan plan, ReaderUnits units) {
    if (!plan.rule().restricts()) {
      return "";
    }
    List<String> parts = new ArrayList<>();
    if (!plan.rule().days().any()) {
      parts.add("water may run only " + Words.on(plan.rule().days()));
    }
    if (plan.rule().weeklyM3() < Double.POSITIVE_INFINITY) {
      parts.add(
          "no seven days may draw more than "
              + units.text(plan.rule().weeklyM3(), Kind.WATER_VOLUME));
    }
    return Words.capital(Words.and(parts))
        + ". The card and every other way of watering shown beside it keep to this.";
  }

  /** What to do at the emitters before a card is set, one sentence a plant or group of plants. */
  public static List<String> changes(TimerCard card) {
    return EmitterChange.sentences(card.changes());
  }

  private static String way(Outcome.Way way) {
    return switch (way) {
      case CARD -> "This card";
      case MONTHLY_NEEDS -> "The plan's month-by-month programme, from monthly means";
      case SAME_HALF_HOUR -> "Half an hour every other day, all year";
      case WEEKLY_DEPTH -> "An inch (25\u00a0mm) over the roots once a week, all year";
      case SAME_KEEPING ->
          "The same minutes all year, enough to keep the plants as well as this card";
      case SAME_WATER -> "The same minutes all year, with the water of this card";
    };
  }

  /** Which twelve months the card is for. */
  public static String span(Grove grove, int planYear) {
    int from = grove.start().getMonthValue();
    int year = grove.start().getYear() + planYear - 1;
    int last = (from + 10) % 12 + 1;
    return Words.month(from)
        + " "
        + year
        + " to "
        + Words.month(last)
        + " "
        + (last < from ? year + 1 : year);
  }

  /** What the card promises and in which weather it was tested, in a sentence or two. */
  public static String promise(SeasonPlan plan) {
    int years = plan.years().spans().size();
    String tested =
        plan.years().drawn()
            ? Words.count(years, "year", "years") + " of weather drawn from your monthly normals"
            : Words.count(years, "year", "years") + " of daily weather";
    long kept = plan.outcome().kept(1 - plan.settings().keptShare());
    int all = plan.outcome().plants().size();
    return "Tested in "
        + tested
        + ", it keeps "
        + (kept == all ? "every plant" : kept + " of " + all + " plants")
        + " above its limit in at least "
        + Math.round(plan.settings().keptShare() * 10)
        + " years of 10. The limit is passed on the first day on which the soil no longer holds the"
        + " water that a plant can take up with ease.";
  }

  /** What the card saves against a rule, in a sentence; empty text where it saves nothing. */
  public static String saving(SeasonPlan plan, Outcome.Way way, ReaderUnits units) {
    return plan.other(way)
        .map(
            other -> {
              double water = other.waterM3PerYear() - plan.outcome().waterM3PerYear();
              double days = other.stressedPlantDays() - plan.outcome().stressedPlantDays();
              String less =
                  water > 0
                      ? units.text(water, Kind.WATER_VOLUME) + " less water a year"
                      : units.text(-water, Kind.WATER_VOLUME) + " more water a year";
              String suffering =
                  days > 0
                      ? Math.round(days) + " fewer stressed plant-days a year"
                      : Math.round(-days) + " more stressed plant-days a year";
              return less + ", " + suffering;
            })
        .orElse("");
  }

  /** When a programme starts, as a sentence without its end. */
  public static String starts(TimerCard.Line line) {
    return line.starts().isEmpty()
        ? "Start " + (line.startsPerDay() == 1 ? "once" : line.startsPerDay() + " times") + " a day"
        : "Start at "
            + line.starts().stream().map(LocalTime::toString).collect(Collectors.joining(", "));
  }

  /** How often a programme waters in a month. */
  public static String every(TimerCard.Line line, int month) {
    TimerCard.MonthStep step = line.months().get(month - 1);
    boolean runs = line.zones().stream().anyMatch(z -> line.minutesPerStart(z, month) > 0);
    return runs ? Words.every(step.rhythm()) : "off";
  }

  /** The days of a month's setting by the calendar, in few letters. */
  static String shortDays(TimerCard.Line line, int month) {
    return Words.shortDays(line.months().get(month - 1).rhythm().days());
  }

  /** The chance of at least one case in ten years with its range, in whole per cent. */
  public static String inTenYears(Chance chance) {
    return percent(chance.share())
        + "\u00a0% ("
        + percent(chance.low())
        + "\u00a0to\u00a0"
        + percent(chance.high())
        + ")";
  }

  private static long percent(double inYear) {
    return Math.round(Chance.atLeastOnce(inYear, 10) * 100);
  }

  /** What the risk counts of plants that nothing keeps; empty text where all can be kept. */
  public static String riskNote(SeasonPlan plan) {
    return plan.findings().stream().anyMatch(finding -> finding.code().equals("season.not-kept"))
        ? "Of a plant that no setting keeps, those years count in which it is stressed on more days"
            + " than the card lets it be."
        : "";
  }

  /** The months of a year in the order in which the plan comes to them. */
  public static List<Integer> months(Grove grove) {
    int first = grove.start().getMonthValue();
    return java.util.stream.IntStream.range(0, 12).mapToObj(i -> (first + i - 1) % 12 + 1).toList();
  }
}
