package org.grovewright.sheets;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.calendar.CalendarWriter;
import org.grovewright.plan.Plan;

/** All sheets of a plan. */
public final class Sheets {
  private static final List<String> NAMES =
      List.of(
          "report.html", "map.svg", "plan.json", "shopping.csv", "watering.csv", "calendar.ics");

  private Sheets() {}

  /** Units of a plan's reader. */
  public static ReaderUnits unitsOf(Plan plan) {
    return new ReaderUnits(plan.grove().preferences().units(), plan.grove().stock().currency());
  }

  /** The text of every sheet by its file name. */
  public static Map<String, String> of(Plan plan) {
    ReaderUnits units = unitsOf(plan);
    // The report and the data take most of the time, about the same, and share nothing.
    List<String> texts = NAMES.parallelStream().map(name -> of(plan, units, name)).toList();
    Map<String, String> sheets = new LinkedHashMap<>();
    for (int i = 0; i < texts.size(); i++) {
      sheets.put(NAMES.get(i), texts.get(i));
    }
    return sheets;
  }

  /**
   * The text of one sheet.
   *
   * @param plan the plan
   * @param units the reader's units
   * @param name file name of the sheet
   * @throws IllegalArgumentException if there is no such sheet
   */
  public static String of(Plan plan, ReaderUnits units, String name) {
    return switch (name) {
      case "report.html" -> ReportHtml.of(new ReportOfPlan(plan, units).report());
      case "map.svg" -> MapSvg.file(MapOfPlan.scene(plan), plan.grove().preferences().units());
      case "plan.json" -> PlanJson.of(plan);
      case "shopping.csv" -> CsvSheets.shopping(plan, units);
      case "watering.csv" -> CsvSheets.watering(plan);
      case "calendar.ics" ->
          new CalendarWriter(
                  plan.grove().site().name(),
                  plan.grove().start(),
                  plan.catalogue(),
                  quantity -> ReaderUnits.plainSpaces(units.text(quantity)))
              .write(plan.work(), plan.care());
      default -> throw new IllegalArgumentException("no sheet " + name);
    };
  }

  /** How the plan stands, in a sentence. */
  public static String verdict(Plan plan) {
    return ReportOfPlan.verdict(plan);
  }
}
