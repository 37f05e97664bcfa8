package org.grovewright.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Kind;
import org.grovewright.season.Outcome;
import org.grovewright.season.PlantHistory;
import org.grovewright.season.SeasonPlan;
import org.grovewright.season.TimerCard;
import org.grovewright.season.TradePoint;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.sheets.SeasonWords;
import org.grovewright.sheets.Words;

/** The timer through the seasons as text for a terminal. */
final class SeasonsText {
  private final Grove grove;
  private final SeasonPlan plan;
  private final ReaderUnits units;

  SeasonsText(Grove grove, SeasonPlan plan, ReaderUnits units) {
    this.grove = grove;
    this.plan = plan;
    this.units = units;
  }

  void print(PrintWriter out) {
    int year = plan.settings().planYear();
    out.print(
        "Timer card for year " + year + " of the plan, " + SeasonWords.span(grove, year) + ".\n");
    out.print(SeasonWords.promise(plan) + "\n");
    String rule = ReaderUnits.plainSpaces(SeasonWords.rule(plan, units));
    out.print(rule.isEmpty() ? "" : rule + "\n");
    List<String> changes = SeasonWords.changes(plan.card());
    if (!changes.isEmpty()) {
      out.print("\nBefore this card, fit the emitters of year " + year + ":\n");
      changes.forEach(change -> out.print("  " + ReaderUnits.plainSpaces(change) + "\n"));
    }
    for (TimerCard.Line line : plan.card().programmes()) {
      out.print("\n" + programme(line));
    }
    out.print("\nAgainst other ways of watering, a mean year:\n" + ways());
    out.print("\nWater against risk (least water found):\n" + trade());
    String note = SeasonWords.riskNote(plan);
    out.print(note.isEmpty() ? "" : note + "\n");
    out.print("\nThe plants under this card:\n" + plants());
  }

  private String programme(TimerCard.Line line) {
    List<List<String>> rows = new ArrayList<>();
    List<String> head = new ArrayList<>(List.of("Month", "Water", "Per cent"));
    for (TimerCard.Zone zone : line.zones()) {
      head.add(Words.capital(Words.zone(zone.zone())) + " min/start");
    }
    rows.add(head);
    for (int month : SeasonWords.months(grove)) {
      List<String> row = new ArrayList<>();
      row.add(Words.month(month));
      row.add(SeasonWords.every(line, month));
      row.add(String.valueOf(line.months().get(month - 1).percent()));
      for (TimerCard.Zone zone : line.zones()) {
        row.add(String.valueOf(line.minutesPerStart(zone, month)));
      }
      rows.add(row);
    }
    List<String> zones =
        line.zones().stream()
            .map(z -> Words.zone(z.zone()) + " for " + z.minutes() + " minutes")
            .toList();
    return "Programme "
        + line.letter()
        + ". "
        + SeasonWords.starts(line)
        + "; at 100 per cent run "
        + Words.and(zones)
        + " after each start.\n"
        + TextTable.of(rows);
  }

  private String ways() {
    List<Outcome> all = new ArrayList<>(List.of(plan.outcome()));
    all.addAll(plan.others());
    List<List<String>> rows = new ArrayList<>();
    rows.add(
        List.of(
            "Way of watering", "Water", "Lost below roots", "Stressed plant-days", "Plants kept"));
    for (Outcome outcome : all) {
      rows.add(
          List.of(
              SeasonWords.way(plan, outcome),
              water(outcome.waterM3PerYear()),
              water(outcome.lostM3PerYear()),
              decimal(outcome.stressedPlantDays()),
              outcome.kept(1 - plan.settings().keptShare()) + " of " + outcome.plants().size()));
    }
    return TextTable.of(rows);
  }

  private String trade() {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("Years of ten the worst plant passes its limit", "Water a year"));
    for (TradePoint point : plan.trade()) {
      rows.add(List.of(decimal(point.worstShare() * 10), water(point.waterM3PerYear())));
    }
    return TextTable.of(rows);
  }

  private String plants() {
    List<List<String>> rows = new ArrayList<>();
    rows.add(
        List.of(
            "Plant",
            "Zone",
            "Years of ten beyond limit",
            "likely range",
            "one or more in ten years (range)",
            "Stressed days a year",
            "Longest spell",
            "Worst year",
            "days in it",
            "Lost below roots"));
    plan.outcome().plants().stream()
        .sorted(Comparator.comparing(PlantHistory::main).reversed())
        .forEach(
            plant ->
                rows.add(
                    List.of(
                        plant.plantId(),
                        plant.zone(),
                        decimal(plant.failedShare() * 10),
                        decimal(plant.chance().low() * 10)
                            + " to "
                            + decimal(plant.chance().high() * 10),
                        ReaderUnits.plainSpaces(SeasonWords.inTenYears(plant.chance())),
                        decimal(plant.meanStressedDays()),
                        String.valueOf(plant.longestSpell()),
                        plant.failedYears() == 0 ? "" : String.valueOf(plant.worst().year()),
                        plant.failedYears() == 0
                            ? ""
                            : String.valueOf(plant.worst().stressedDays()),
                        water(plant.lostM3PerYear()))));
    return TextTable.of(rows);
  }

  private String water(double m3) {
    return ReaderUnits.plainSpaces(units.text(m3, Kind.WATER_VOLUME));
  }

  private static String decimal(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }
}
