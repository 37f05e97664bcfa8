package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;
import org.grovewright.season.Outcome;
import org.grovewright.season.PlantHistory;
import org.grovewright.season.SeasonPlan;
import org.grovewright.season.SoilTrace;
import org.grovewright.season.TimerCard;
import org.grovewright.season.TradePoint;

/** The timer through the seasons: its card, what it saves, and how every plant fares. */
final class SeasonSections {
  private static final int NAMED = 6;

  private final Grove grove;
  private final SeasonPlan plan;
  private final Workings workings;
  private final ReaderUnits units;

  SeasonSections(Grove grove, SeasonPlan plan, Workings workings, ReaderUnits units) {
    this.grove = grove;
    this.plan = plan;
    this.workings = workings;
    this.units = units;
  }

  List<Section> sections() {
    List<Section> sections = new ArrayList<>();
    sections.add(new Section("season-card", "How to set the timer", card()));
    sections.add(new Section("season-ways", "What the card saves", ways()));
    sections.add(new Section("season-plants", "How each plant fares", plants()));
    sections.add(new Section("season-soil", "The soil through a dry year", soil()));
    if (!plan.findings().isEmpty()) {
      sections.add(new Section("season-remarks", "What to know about this card", remarks()));
    }
    return sections;
  }

  private String root() {
    return "season.year-" + plan.settings().planYear() + ".";
  }

  private List<Block> card() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(Block.Paragraph.of(SeasonWords.promise(plan)));
    String rule = SeasonWords.rule(plan, units);
    if (!rule.isEmpty()) {
      blocks.add(Block.Paragraph.of(rule));
    }
    List<String> changes = SeasonWords.changes(plan.card());
    if (!changes.isEmpty()) {
      blocks.add(
          new Block.Heading("Before this card: the emitters of year " + plan.card().planYear()));
      blocks.add(
          Block.Paragraph.of(
              "The plants have grown, and this card counts on their new emitters. Fit these"
                  + " first:"));
      blocks.add(
          new Block.Remarks(
              false, changes.stream().map(change -> new Block.Remark("", change)).toList()));
    }
    for (TimerCard.Line line : plan.card().programmes()) {
      blocks.add(new Block.Heading("Programme " + line.letter()));
      List<String> zones =
          line.zones().stream()
              .map(z -> Words.zone(z.zone()) + " for " + z.minutes() + " minutes")
              .toList();
      blocks.add(
          Block.Paragraph.of(
              SeasonWords.starts(line)
                  + ". After each start run "
                  + Words.and(zones)
                  + ", at 100 per cent. On the first of each month set the percentage and the days"
                  + " between waterings of that month."));
      blocks.add(table(line));
      List<Block.Drawing> rings = new ArrayList<>();
      for (TimerCard.Zone zone : line.zones()) {
        rings.add(
            new Block.Drawing(
                ring(line, zone),
                Words.capital(Words.zone(zone.zone()))
                    + " round the year. The longer the bar, the more minutes a day on average; the"
                    + " words give the minutes of a watering day."));
      }
      blocks.add(new Block.Pictures(rings));
    }
    return blocks;
  }

  static String ring(TimerCard.Line line, TimerCard.Zone zone) {
    return YearRing.draw(
        Words.zone(zone.zone()),
        "season-ring-" + FigureBook.slug(zone.zone()),
        line.months().stream()
            .map(
                step ->
                    new YearRing.Month(
                        step.month(),
                        line.minutesPerStart(zone, step.month()) * line.startsPerDay(),
                        step.percent() == 0 ? Rhythm.OFF : step.rhythm()))
            .toList());
  }

  private Block.Table table(TimerCard.Line line) {
    List<Block.Column> columns = new ArrayList<>();
    columns.add(Block.Column.words("Month"));
    columns.add(Block.Column.words("Water"));
    columns.add(Block.Column.numbers("Percentage"));
    for (TimerCard.Zone zone : line.zones()) {
      columns.add(
          Block.Column.numbers(Words.capital(Words.zone(zone.zone())) + ", a watering day"));
    }
    List<List<Cell>> rows = new ArrayList<>();
    for (int month : SeasonWords.months(grove)) {
      String every = SeasonWords.every(line, month);
      boolean off = every.equals("off");
      List<Cell> row = new ArrayList<>();
      row.add(Cell.of(Words.month(month)));
      row.add(workings.cell(id(line.zones().get(0), month) + "every", every));
      row.add(off ? Cell.NONE : Cell.of(line.months().get(month - 1).percent() + "\u00a0%"));
      for (TimerCard.Zone zone : line.zones()) {
        int each = line.minutesPerStart(zone, month);
        String text =
            line.startsPerDay() == 1
                ? each + "\u00a0min"
                : line.startsPerDay() + " \u00d7 " + each + "\u00a0min";
        row.add(each == 0 ? Cell.NONE : workings.cell(id(zone, month) + "minutes", text));
      }
      rows.add(row);
    }
    return new Block.Table(
        "Programme " + line.letter() + ", " + SeasonWords.span(grove, plan.settings().planYear()),
        columns,
        rows);
  }

  private String id(TimerCard.Zone zone, int month) {
    return root()
        + FigureBook.slug(zone.zone())
        + (month < 10 ? ".month-0" : ".month-")
        + month
        + ".";
  }

  private List<Block> ways() {
    List<Outcome> all = new ArrayList<>(List.of(plan.outcome()));
    all.addAll(plan.others());
    List<List<Cell>> rows = new ArrayList<>();
    for (Outcome outcome : all) {
      String id = root() + FigureBook.slug(outcome.way().name());
      rows.add(
          List.of(
              Cell.of(SeasonWords.way(plan, outcome)),
              workings.cell(id + ".water"),
              workings.cell(id + ".lost"),
              workings.cell(id + ".stressed-days", tenths(outcome.stressedPlantDays())),
              Cell.of(
                  units
                      .language()
                      .text(
                          "list.of",
                          outcome.kept(1 - plan.settings().keptShare()),
                          outcome.plants().size()))));
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Table(
            "Ways of watering in a mean year",
            List.of(
                Block.Column.words("Way"),
                Block.Column.numbers("Water"),
                Block.Column.numbers("Lost below the roots, rain included"),
                Block.Column.numbers("Stressed plant-days"),
                Block.Column.numbers("Plants kept")),
            rows));
    String against = SeasonWords.saving(plan, Outcome.Way.SAME_KEEPING, units);
    if (!against.isEmpty()) {
      blocks.add(
          Block.Paragraph.of(
              "Against the same minutes all year that keep the plants as well: " + against + "."));
    }
    blocks.add(
        Block.Paragraph.of(
            "Against half an hour every other day: "
                + SeasonWords.saving(plan, Outcome.Way.SAME_HALF_HOUR, units)
                + ". Against an inch a week: "
                + SeasonWords.saving(plan, Outcome.Way.WEEKLY_DEPTH, units)
                + ". A stressed plant-day is a day on which one plant cannot take up all it"
                + " wants."));
    if (plan.trade().size() > 1) {
      blocks.add(new Block.Heading("Water against risk"));
      blocks.add(
          new Block.Drawing(
              tradeChart(),
              "The least water found for each risk: how many years in ten the worst plant passes"
                  + " its limit. Less water is to the left, less risk is down."));
      String note = SeasonWords.riskNote(plan);
      if (!note.isEmpty()) {
        blocks.add(Block.Paragraph.of(note));
      }
      blocks.add(
          new Block.Table(
              "Water against risk",
              List.of(
                  Block.Column.numbers("Years in ten beyond the limit"),
                  Block.Column.numbers("Least water found, a year")),
              plan.trade().stream()
                  .map(
                      point ->
                          List.of(
                              Cell.of(tenths(point.worstShare() * 10)),
                              Cell.of(units.text(point.waterM3PerYear(), Kind.WATER_VOLUME))))
                  .toList()));
    }
    return blocks;
  }

  /** The trade between water and risk with the card and the plan's own programme on it. */
  String tradeChart() {
    ReaderUnits.Unit water = units.chartUnit(Kind.WATER_VOLUME);
    List<double[]> curve = new ArrayList<>();
    for (TradePoint point : plan.trade()) {
      curve.add(0, new double[] {water.of(point.waterM3PerYear()), point.worstShare() * 10});
    }
    List<CurveChart.Mark> marks = new ArrayList<>();
    double least = curve.get(0)[0];
    double most = curve.get(curve.size() - 1)[0];
    List<Outcome> shown = new ArrayList<>(List.of(plan.outcome()));
    plan.other(Outcome.Way.MONTHLY_NEEDS).ifPresent(shown::add);
    for (Outcome outcome : shown) {
      double x = water.of(outcome.waterM3PerYear());
      least = Math.min(least, x);
      most = Math.max(most, x);
      marks.add(
          new CurveChart.Mark(
              outcome.way() == Outcome.Way.CARD ? "This card" : "Plan from monthly means",
              x,
              outcome.worst().failedShare() * 10));
    }
    return CurveChart.draw(
        "Water a year against years in ten beyond the limit",
        "season-trade",
        CurveChart.Axis.around("Water a year, " + water.symbol(), least, most, most * 2),
        new CurveChart.Axis("Years in ten beyond the limit", 10),
        curve,
        marks);
  }

  private List<Block> plants() {
    List<Block> blocks = new ArrayList<>();
    int allowed =
        (int) Math.floor((1 - plan.settings().keptShare()) * plan.years().spans().size() + 1e-9);
    List<String> setters =
        plan.outcome().plants().stream()
            .filter(p -> p.failedYears() == allowed && p.failedYears() > 0)
            .map(PlantHistory::plantId)
            .toList();
    if (!setters.isEmpty()) {
      blocks.add(
          Block.Paragraph.of(
              "The minutes are set by the plants that come nearest to their limit: "
                  + named(setters)
                  + ". More emitters at these would let the whole zone run less."));
    }
    List<PlantHistory> main = plan.outcome().plants().stream().filter(PlantHistory::main).toList();
    List<PlantHistory> others = plan.outcome().plants().stream().filter(p -> !p.main()).toList();
    blocks.add(
        Block.Paragraph.of(
            "Years in ten is how often a plant passed its limit in the years tested. So few years"
                + " cannot say it sharply: the true number lies in the likely range nine times of"
                + " ten. A young tree has its first summer only once; the next column says how"
                + " likely it is that of ten such summers at least one is too dry, with the range"
                + " that follows from the other."));
    if (!main.isEmpty()) {
      blocks.add(table("Main plants", main));
    }
    if (!others.isEmpty()) {
      blocks.add(new Block.Fold("Companions", false, List.of(table("Companions", others))));
    }
    return blocks;
  }

  /** The first few of many names, and how many more there are. */
  private static String named(List<String> names) {
    if (names.size() <= NAMED) {
      return Words.and(names);
    }
    List<String> first = new ArrayList<>(names.subList(0, NAMED));
    first.add((names.size() - NAMED) + " more");
    return Words.and(first);
  }

  private Block table(String caption, List<PlantHistory> plants) {
    List<List<Cell>> rows = new ArrayList<>();
    for (PlantHistory plant : plants) {
      String id = root() + "plant." + FigureBook.slug(plant.plantId());
      boolean never = plant.failedYears() == 0;
      rows.add(
          List.of(
              Cell.of(plant.plantId()),
              workings.cell(id + ".chance", tenths(plant.failedShare() * 10)),
              workings.cell(
                  id + ".chance-high",
                  tenths(plant.chance().low() * 10)
                      + "\u00a0to\u00a0"
                      + tenths(plant.chance().high() * 10)),
              workings.cell(id + ".chance-in-ten", SeasonWords.inTenYears(plant.chance())),
              never
                  ? Cell.NONE
                  : workings.cell(id + ".stressed-days", tenths(plant.meanStressedDays())),
              never ? Cell.NONE : workings.cell(id + ".longest-spell"),
              never
                  ? Cell.NONE
                  : workings.cell(
                      id + ".worst-year",
                      Words.count(plant.worst().stressedDays(), "day", "days")
                          + (plan.years().drawn() ? "" : " from " + plant.worst().year())),
              workings.cell(id + ".lost")));
    }
    return new Block.Table(
        caption,
        List.of(
            Block.Column.words("Plant"),
            Block.Column.numbers("Years in ten beyond its limit"),
            Block.Column.numbers("likely range"),
            Block.Column.numbers("Chance of one or more in ten years"),
            Block.Column.numbers("Stressed days a year"),
            Block.Column.numbers("Longest dry spell"),
            Block.Column.numbers("Worst year"),
            Block.Column.numbers("Water lost below its roots")),
        rows);
  }

  private List<Block> soil() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.Paragraph.of(
            "The driest of the years, day by day, under this card, for one plant of each kind and"
                + " zone: that which comes nearest to its limit. While the water stays above the"
                + " stress line, the plant takes up all it wants; at field capacity the soil is"
                + " full, and more water runs through."));
    boolean open = true;
    for (SoilTrace trace : shown()) {
      blocks.add(
          new Block.Fold(
              trace.plantId(),
              open,
              List.of(
                  new Block.Plot(
                      SoilTraceChart.draw(
                          trace, "season-soil-" + FigureBook.slug(trace.plantId()), units),
                      "Water in the soil of " + trace.plantId() + " through a dry year",
                      "Depths are over the soil that its roots draw from."))));
      open = false;
    }
    return blocks;
  }

  /** One plant of each kind and zone, the one nearest to its limit. */
  List<SoilTrace> shown() {
    Map<String, String> species = new LinkedHashMap<>();
    grove.plantings().forEach(p -> species.put(p.id(), p.speciesKey()));
    Map<String, PlantHistory> nearest = new LinkedHashMap<>();
    plan.outcome().plants().stream()
        .sorted(Comparator.comparing(PlantHistory::main).reversed())
        .forEach(
            plant ->
                nearest.merge(
                    plant.zone() + " " + species.get(plant.plantId()),
                    plant,
                    (a, b) -> b.meanStressedDays() > a.meanStressedDays() ? b : a));
    List<SoilTrace> shown = new ArrayList<>();
    for (PlantHistory plant : nearest.values()) {
      plan.traces().stream()
          .filter(trace -> trace.plantId().equals(plant.plantId()))
          .forEach(shown::add);
    }
    return shown;
  }

  private List<Block> remarks() {
    return List.of(
        new Block.Remarks(
            false,
            plan.findings().stream()
                .map(f -> new Block.Remark(f.subject(), Words.message(f, units)))
                .toList()));
  }

  private static String tenths(double value) {
    return Decimals.fixed(value, 1);
  }
}
