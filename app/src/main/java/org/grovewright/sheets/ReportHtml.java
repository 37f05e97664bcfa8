package org.grovewright.sheets;

import freemarker.cache.ClassTemplateLoader;
import freemarker.core.HTMLOutputFormat;
import freemarker.template.Configuration;
import freemarker.template.DefaultObjectWrapper;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;

/**
 * The report as one page that stands alone: styles, drawings and workings are in it, and it asks
 * for nothing over the network.
 */
final class ReportHtml {
  private ReportHtml() {}

  /** The page. */
  static String of(Report report) {
    Configuration configuration = new Configuration(Configuration.VERSION_2_3_34);
    configuration.setTemplateLoader(new ClassTemplateLoader(ReportHtml.class, ""));
    configuration.setDefaultEncoding("UTF-8");
    configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
    configuration.setLocale(Locale.ROOT);
    configuration.setNumberFormat("computer");
    configuration.setTimeZone(TimeZone.getTimeZone("UTC"));
    configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
    configuration.setLogTemplateExceptions(false);
    configuration.setObjectWrapper(new DefaultObjectWrapper(Configuration.VERSION_2_3_34));
    try {
      Template template = configuration.getTemplate("report.ftlh");
      StringWriter page = new StringWriter();
      template.process(
          Map.of(
              "report",
              report,
              "css",
              Resources.text("report.css"),
              "mapCss",
              Resources.text("map.css"),
              "script",
              Resources.text("report.js")),
          page);
      return page.toString();
    } catch (IOException e) {
      throw new UncheckedIOException("the report's template cannot be read", e);
    } catch (TemplateException e) {
      throw new IllegalStateException("the report's template fails", e);
    }
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
