package org.grovewright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueException;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.model.Grove;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what a grove file describes, or all that is wrong with it. */
@Command(
    name = "check",
    description = {
      "Reads a grove file and says what is in it, or everything that is wrong with it, each with its"
          + " line and column.",
      "",
      "It makes no plan; whether the plants have room and water enough is what the plan says."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {"", "Exit codes: 0 the file can be planned; 2 it cannot."})
public final class CheckCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "The grove file.")
  private Path file;

  @Option(
      names = "--catalogue",
      paramLabel = "PATH",
      description = "Lay your own CSV file, or folder of CSV files, over the catalogue.")
  private Path owners;

  @Spec private CommandSpec spec;

  /** Prints the summary or the problems; the result is the exit code. */
  @Override
  public Integer call() {
    Catalogue catalogue = catalogue();
    PrintWriter out = spec.commandLine().getOut();
    try {
      Grove grove = new DescriptionReader(catalogue, new WeatherOfDescription()).read(file);
      out.println(new GroveSummary(grove, catalogue).text());
      return done(out, ExitCode.OK);
    } catch (DescriptionException e) {
      out.println(e.getMessage());
      return done(out, ExitCode.BAD_INPUT);
    }
  }

  private Catalogue catalogue() {
    CatalogueFiles bundled = CatalogueFiles.load();
    try {
      return (owners == null ? bundled : bundled.with(owners)).catalogue();
    } catch (CatalogueException e) {
      throw new BadInputException(e.getMessage());
    }
  }

  private static int done(PrintWriter out, int code) {
    out.flush();
    return code;
  }
}
