package org.grovewright.trouble;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;

/** The plans of the examples that come with the program. */
final class ExamplePlans {
  private ExamplePlans() {}

  static Plan of(String name) {
    Catalogue catalogue = CatalogueFiles.load().catalogue();
    try (InputStream in =
        ExamplePlans.class.getResourceAsStream("/org/grovewright/examples/" + name)) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Planner.plan(
          new DescriptionReader(catalogue, new WeatherOfDescription())
              .read(text, name, Path.of("")),
          catalogue);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
