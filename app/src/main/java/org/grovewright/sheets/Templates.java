package org.grovewright.sheets;

import freemarker.cache.ClassTemplateLoader;
import freemarker.core.HTMLOutputFormat;
import freemarker.template.Configuration;
import freemarker.template.DefaultObjectWrapper;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;

/** Fills the page templates of this package, the same in every locale and time zone. */
final class Templates {
  private Templates() {}

  /**
   * A filled page.
   *
   * @param template file name of the template
   * @param values what it is filled with, by name
   * @throws IllegalStateException if the template has a fault
   */
  static String page(String template, Map<String, ?> values) {
    Configuration configuration = new Configuration(Configuration.VERSION_2_3_34);
    configuration.setTemplateLoader(new ClassTemplateLoader(Templates.class, ""));
    configuration.setDefaultEncoding("UTF-8");
    configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
    configuration.setLocale(Locale.ROOT);
    configuration.setNumberFormat("computer");
    configuration.setTimeZone(TimeZone.getTimeZone("UTC"));
    configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
    configuration.setLogTemplateExceptions(false);
    configuration.setObjectWrapper(new DefaultObjectWrapper(Configuration.VERSION_2_3_34));
    try {
      StringWriter page = new StringWriter();
      configuration.getTemplate(template).process(values, page);
      return page.toString();
    } catch (IOException e) {
      throw new UncheckedIOException("the template " + template + " cannot be read", e);
    } catch (TemplateException e) {
      throw new IllegalStateException("the template " + template + " fails", e);
    }
  }
}
