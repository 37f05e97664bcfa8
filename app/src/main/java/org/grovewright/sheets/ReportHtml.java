package org.grovewright.sheets;

import java.util.List;
import java.util.Map;
import org.grovewright.texts.Language;

/**
 * The report as one page that stands alone: styles, drawings and workings are in it, and it asks
 * for nothing over the network.
 */
final class ReportHtml {
  private ReportHtml() {}

  /** The page, whose report was put into that language before. */
  static String of(Report report, Language language) {
    return Templates.page(
        "report.ftlh",
        Map.of(
            "report",
            report,
            "language",
            language,
            "css",
            Resources.text("report.css") + Resources.text("season.css"),
            "mapCss",
            Resources.text("map.css"),
            "script",
            Resources.text("report.js")));
  }

  /**
   * What the page says.
   *
   * @param title name of the grove
   * @param subtitle where it lies and when the plan starts
   * @param shortfall whether the plan falls short
   * @param verdict how the plan stands, in a sentence
   * @param facts the figures to know first
   * @param sections the sections in order
   * @param workings the workings of all figures shown
   */
  public record Report(
      String title,
      String subtitle,
      boolean shortfall,
      String verdict,
      List<Fact> facts,
      List<Section> sections,
      List<Workings.Entry> workings) {
    /** Copies the lists. */
    public Report {
      facts = List.copyOf(facts);
      sections = List.copyOf(sections);
      workings = List.copyOf(workings);
    }
  }

  /** A figure to know first. */
  public record Fact(String label, Cell value) {}
}
