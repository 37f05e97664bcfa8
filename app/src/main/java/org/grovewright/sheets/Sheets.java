package org.grovewright.sheets;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.calendar.CalendarWriter;
import org.grovewright.plan.Plan;
import org.grovewright.texts.Language;

/** All sheets of a plan. */
public final class Sheets {
  private static final List<String> NAMES =
      List.of(
          "report.html", "map.svg", "plan.json", "shopping.csv", "watering.csv", "calendar.ics");

  private Sheets() {}

  /** Units of a plan's reader, in English. */
  public static ReaderUnits unitsOf(Plan plan) {
    return unitsOf(plan, Language.ENGLISH);
  }

  /** Units of a plan's reader, in a language. */
  public static ReaderUnits unitsOf(Plan plan, Language language) {
    return new ReaderUnits(
        plan.grove().preferences().units(), plan.grove().stock().currency(), language);
  }

  /** The text of every sheet by its file name, in English. */
  public static Map<String, String> of(Plan plan) {
    return of(plan, Language.ENGLISH);
  }

  /** The text of every sheet by its file name, in a language. */
  public static Map<String, String> of(Plan plan, Language language) {
    ReaderUnits units = unitsOf(plan, language);
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
   * @param units the reader's units and language
   * @param name file name of the sheet
   * @throws IllegalArgumentException if there is no such sheet
   */
  public static String of(Plan plan, ReaderUnits units, String name) {
    Language language = units.language();
    Translation translation = Translation.of(plan.grove(), language);
    return switch (name) {
      case "report.html" ->
          ReportHtml.of(translation.of(new ReportOfPlan(plan, units).report()), language);
      case "map.svg" ->
          translation.svg(MapSvg.file(MapOfPlan.scene(plan, language), units.system()));
      case "plan.json" -> PlanJson.of(plan);
      case "shopping.csv" -> CsvSheets.shopping(plan, units);
      case "watering.csv" -> CsvSheets.watering(plan, language);
      case "calendar.ics" ->
          new CalendarWriter(
                  plan.grove().site().name(),
                  plan.grove().start(),
                  plan.catalogue(),
                  quantity -> ReaderUnits.plainSpaces(units.text(quantity)),
                  language)
              .write(plan.work(), plan.care());
      default -> throw new IllegalArgumentException("no sheet " + name);
    };
  }

  /** How the plan stands, in a sentence of a language. */
  public static String verdict(Plan plan, Language language) {
    return language.say(ReportOfPlan.verdict(plan));
  }
}
