package org.grovewright.sheets;

import java.util.LinkedHashMap;
import java.util.Map;
import org.grovewright.calendar.CalendarWriter;
import org.grovewright.plan.Plan;

/** All sheets of a plan. */
public final class Sheets {
  private Sheets() {}

  /** Units of a plan's reader. */
  public static ReaderUnits unitsOf(Plan plan) {
    return new ReaderUnits(plan.grove().preferences().units(), plan.grove().stock().currency());
  }

  /** The text of every sheet by its file name. */
  public static Map<String, String> of(Plan plan) {
    ReaderUnits units = unitsOf(plan);
    Map<String, String> sheets = new LinkedHashMap<>();
    sheets.put("report.html", ReportHtml.of(new ReportOfPlan(plan, units).report()));
    sheets.put("map.svg", MapSvg.file(MapOfPlan.scene(plan), plan.grove().preferences().units()));
    sheets.put("plan.json", PlanJson.of(plan));
    sheets.put("shopping.csv", CsvSheets.shopping(plan, units));
    sheets.put("watering.csv", CsvSheets.watering(plan));
    sheets.put(
        "calendar.ics",
        new CalendarWriter(
                plan.grove().site().name(),
                plan.grove().start(),
                plan.catalogue(),
                quantity -> ReaderUnits.plainSpaces(units.text(quantity)))
            .write(plan.work(), plan.care()));
    return sheets;
  }

  /** How the plan stands, in a sentence. */
  public static String verdict(Plan plan) {
    return ReportOfPlan.verdict(plan);
  }
}
