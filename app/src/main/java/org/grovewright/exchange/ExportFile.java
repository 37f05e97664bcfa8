package org.grovewright.exchange;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import org.grovewright.plan.Plan;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.sheets.Sheets;

/** The files of a site that an owner may take away. */
public enum ExportFile {
  /** The description as it stands, with the owner's remarks. */
  DESCRIPTION("description.yaml", "text/yaml; charset=utf-8"),
  /** Land and plants for maps. */
  GEOJSON("site.geojson", "application/geo+json"),
  /** Land and plants for hand-held receivers. */
  GPX("site.gpx", "application/gpx+xml"),
  /** The map as a drawing. */
  MAP_SVG("map.svg", "image/svg+xml"),
  /** The map on paper. */
  MAP_PDF("map.pdf", "application/pdf"),
  /** The report as a page of its own. */
  REPORT_HTML("report.html", "text/html; charset=utf-8"),
  /** The report on paper. */
  REPORT_PDF("report.pdf", "application/pdf"),
  /** The plan as data. */
  PLAN_JSON("plan.json", "application/json"),
  /** What to buy. */
  SHOPPING("shopping.csv", "text/csv; charset=utf-8"),
  /** What each plant needs and gets. */
  WATERING("watering.csv", "text/csv; charset=utf-8"),
  /** Work and care. */
  CALENDAR("calendar.ics", "text/calendar; charset=utf-8");

  private final String fileName;
  private final String type;

  ExportFile(String fileName, String type) {
    this.fileName = fileName;
    this.type = type;
  }

  /** The file of this name. */
  public static Optional<ExportFile> named(String name) {
    return Arrays.stream(values()).filter(file -> file.fileName.equals(name)).findFirst();
  }

  /** Its name. */
  public String fileName() {
    return fileName;
  }

  /** Its media type. */
  public String type() {
    return type;
  }

  /**
   * Its content.
   *
   * @param description the description's text
   * @param plan the plan of the description
   * @param units units of the reader
   */
  public byte[] content(String description, Plan plan, ReaderUnits units) {
    return switch (this) {
      case DESCRIPTION -> utf8(description);
      case GEOJSON -> utf8(GeoJson.write(plan.grove()));
      case GPX -> utf8(Gpx.write(plan.grove()));
      case MAP_PDF ->
          Pdf.map(Sheets.of(plan, units, MAP_SVG.fileName), "Map of " + plan.grove().site().name());
      case REPORT_PDF -> Pdf.report(Sheets.of(plan, units, REPORT_HTML.fileName));
      default -> utf8(Sheets.of(plan, units, fileName));
    };
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
