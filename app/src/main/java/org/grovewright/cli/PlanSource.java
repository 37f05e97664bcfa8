package org.grovewright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueException;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherFileException;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.model.Grove;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;

/** Reads groves and plans them, and turns what is wrong with the input into words for the user. */
final class PlanSource {
  private static final String EXAMPLES = "/org/grovewright/examples/";

  private final Catalogue catalogue;
  private final PrintWriter err;

  /**
   * A source of plans.
   *
   * @param owners the owner's own catalogue rows, a file or folder, or null
   * @param err takes news of progress
   * @throws BadInputException if the owner's catalogue cannot be used
   */
  PlanSource(Path owners, PrintWriter err) {
    this.err = err;
    try {
      CatalogueFiles files = CatalogueFiles.load();
      this.catalogue = (owners == null ? files : files.with(owners)).catalogue();
    } catch (CatalogueException e) {
      if (owners == null) {
        throw new IllegalStateException("the bundled catalogue has faults", e);
      }
      throw new BadInputException(e.getMessage());
    }
  }

  /**
   * Reads and plans a grove.
   *
   * @throws BadInputException if the file cannot be used
   */
  Plan plan(Path file) {
    if (!Files.isRegularFile(file)) {
      throw new BadInputException(
          file + ": there is no such file. Give the path of a grove file (YAML).");
    }
    return plan(() -> reader().read(file));
  }

  /** Plans an example that comes with the program. */
  Plan example(String name) {
    return plan(() -> reader().read(bundled(name), name, Path.of("")));
  }

  private DescriptionReader reader() {
    return new DescriptionReader(catalogue, new WeatherOfDescription());
  }

  private Plan plan(java.util.function.Supplier<Grove> groves) {
    Grove grove;
    try {
      grove = groves.get();
    } catch (DescriptionException | WeatherFileException e) {
      throw new BadInputException(e.getMessage());
    }
    try (Patience patience = new Patience(err, "planning " + grove.site().name())) {
      return Planner.plan(grove, catalogue);
    }
  }

  private static String bundled(String name) {
    try (InputStream in = PlanSource.class.getResourceAsStream(EXAMPLES + name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its example " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
