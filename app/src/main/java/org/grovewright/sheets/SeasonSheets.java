package org.grovewright.sheets;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Grove;
import org.grovewright.model.Preferences.Units;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.season.Outcome;
import org.grovewright.season.SeasonPlan;
import org.grovewright.season.SoilTrace;
import org.grovewright.season.TimerCard;
import org.grovewright.texts.Language;

/** The sheets of the timer through the seasons. */
public final class SeasonSheets {
  private SeasonSheets() {}

  /**
   * The text of every sheet by its file name: a report and the drawings of each year, and one file
   * with all cards for the timer.
   *
   * @param plans the years asked for, at least one
   * @param figures the figures of the plan and of the seasons
   */
  public static Map<String, String> of(
      Grove grove, List<SeasonPlan> plans, List<Figure> figures, ReaderUnits units) {
    Workings workings = new Workings(figures, units);
    Translation translation = Translation.of(grove, units.language());
    Map<String, String> sheets = new LinkedHashMap<>();
    sheets.put("timer-card.html", card(grove, plans, units));
    for (SeasonPlan plan : plans) {
      String year = plans.size() == 1 ? "" : "year-" + plan.settings().planYear() + "-";
      SeasonSections sections = new SeasonSections(grove, plan, workings, units);
      sheets.put(
          year + "seasons.html",
          ReportHtml.of(translation.of(report(grove, plan, workings, sections)), units.language()));
      for (TimerCard.Line line : plan.card().programmes()) {
        for (TimerCard.Zone zone : line.zones()) {
          sheets.put(
              year + "ring-" + FigureBook.slug(zone.zone()) + ".svg",
              alone(translation.svg(SeasonSections.ring(line, zone))));
        }
      }
      if (plan.trade().size() > 1) {
        sheets.put(year + "water-and-risk.svg", alone(translation.svg(sections.tradeChart())));
      }
      for (SoilTrace trace : sections.shown()) {
        String slug = FigureBook.slug(trace.plantId());
        sheets.put(
            year + "soil-" + slug + ".svg",
            alone(translation.svg(SoilTraceChart.draw(trace, "soil", units))));
      }
    }
    return sheets;
  }

  private static ReportHtml.Report report(
      Grove grove, SeasonPlan plan, Workings workings, SeasonSections sections) {
    List<Section> all = sections.sections();
    boolean falls = plan.findings().stream().anyMatch(f -> f.severity() == Severity.SHORTFALL);
    String root = "season.year-" + plan.settings().planYear() + ".";
    List<ReportHtml.Fact> facts =
        List.of(
            new ReportHtml.Fact("Water a year", workings.cell(root + "card.water")),
            new ReportHtml.Fact(
                "Stressed plant-days a year",
                workings.cell(
                    root + "card.stressed-days",
                    Decimals.fixed(plan.outcome().stressedPlantDays(), 1))),
            new ReportHtml.Fact(
                "The same from monthly means",
                workings.cell(
                    root + "monthly-needs.stressed-days",
                    Decimals.fixed(
                        plan.other(Outcome.Way.MONTHLY_NEEDS).orElseThrow().stressedPlantDays(),
                        1))),
            new ReportHtml.Fact(
                "Years of weather", Cell.of(String.valueOf(plan.years().spans().size()))));
    return new ReportHtml.Report(
        grove.site().name() + ", the timer through the seasons",
        "Year "
            + plan.settings().planYear()
            + " of the plan, "
            + SeasonWords.span(grove, plan.settings().planYear())
            + ".",
        falls,
        falls
            ? "A card was found, but it falls short; the remarks at the end say where."
            : "The card keeps all that was asked of it.",
        facts,
        all,
        workings.entries());
  }

  /** The cards alone, one page of a postcard's size for each programme and year. */
  static String card(Grove grove, List<SeasonPlan> plans, ReaderUnits units) {
    Language language = units.language();
    return Templates.page(
        "timer-card.ftlh",
        Map.of(
            "css",
            Resources.text("timer-card.css"),
            "page",
            units.system() == Units.US ? "4in 6in" : "105mm 148mm",
            "name",
            grove.site().name(),
            "language",
            language,
            "years",
            plans.stream()
                .map(
                    plan ->
                        new CardYear(
                            plan.card().planYear(),
                            language.say(SeasonWords.span(grove, plan.card().planYear())),
                            plan.rule().days().any()
                                ? ""
                                : language.say(Words.on(plan.rule().days())),
                            SeasonWords.changes(plan.card()).stream().map(language::say).toList(),
                            plan.card().programmes().stream()
                                .map(line -> page(grove, plan.card(), line, language))
                                .toList()))
                .toList()));
  }

  private static CardPage page(
      Grove grove, TimerCard card, TimerCard.Line line, Language language) {
    Set<String> zones = line.zones().stream().map(TimerCard.Zone::zone).collect(Collectors.toSet());
    long changed = card.changes().stream().filter(c -> zones.contains(c.zone())).count();
    return new CardPage(
        line.letter(),
        language.say(SeasonWords.starts(line)),
        changed == 0
            ? ""
            : language.say(
                "First fit the emitters of year "
                    + card.planYear()
                    + " at "
                    + Words.count(changed, "plant", "plants")
                    + "; see the list."),
        line.zones().stream().map(z -> language.say(Words.zone(z.zone()))).toList(),
        line.zones().stream().map(z -> String.valueOf(z.minutes())).toList(),
        SeasonWords.months(grove).stream()
            .map(
                month -> {
                  String every = SeasonWords.every(line, month);
                  boolean off = every.equals("off");
                  return new CardRow(
                      language.month(month),
                      language.say(
                          every.startsWith("on ") ? SeasonWords.shortDays(line, month) : every),
                      off ? "" : line.months().get(month - 1).percent() + "\u00a0%",
                      line.zones().stream()
                          .map(
                              z -> {
                                int minutes = line.minutesPerStart(z, month);
                                return minutes == 0 ? "\u2013" : String.valueOf(minutes);
                              })
                          .toList());
                })
            .toList());
  }

  /** The cards of one year. */
  public record CardYear(
      int year, String span, String rule, List<String> changes, List<CardPage> cards) {
    /** Copies the lists. */
    public CardYear {
      changes = List.copyOf(changes);
      cards = List.copyOf(cards);
    }
  }

  /** What one programme's card says. */
  public record CardPage(
      String letter,
      String starts,
      String first,
      List<String> zones,
      List<String> base,
      List<CardRow> rows) {
    /** Copies the lists. */
    public CardPage {
      zones = List.copyOf(zones);
      base = List.copyOf(base);
      rows = List.copyOf(rows);
    }
  }

  /** One month of a card. */
  public record CardRow(String month, String every, String percent, List<String> minutes) {
    /** Copies the list. */
    public CardRow {
      minutes = List.copyOf(minutes);
    }
  }

  /** A drawing that stands alone, with the part of the styles in it that drawings use. */
  private static String alone(String svg) {
    String report = Resources.text("report.css");
    String colours = report.substring(0, report.indexOf('}') + 2);
    String charts =
        report.lines().filter(line -> line.startsWith(".chart")).collect(Collectors.joining("\n"));
    int end = svg.indexOf('>') + 1;
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        + svg.substring(0, end)
        + "\n<style>\n"
        + "svg { font-family: system-ui, \"Liberation Sans\", Arial, sans-serif; }\n"
        + colours.replace("light dark", "light")
        + charts
        + "\n"
        + Resources.text("season.css")
        + "</style>"
        + svg.substring(end);
  }
}
