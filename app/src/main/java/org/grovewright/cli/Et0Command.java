package org.grovewright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.weather.Et0Csv;
import org.grovewright.formats.weather.WeatherCsv;
import org.grovewright.formats.weather.WeatherFileException;
import org.grovewright.formats.weather.WeatherTable;
import org.grovewright.water.EtSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints reference evapotranspiration with every step of its calculation. */
@Command(
    name = "et0",
    description = {
      "Prints the reference evapotranspiration of each row of a weather file, with every step of its"
          + " calculation, as CSV.",
      "",
      "The file needs a heading with the columns date (2025-07-31) or month (1 to 12), tmin and"
          + " tmax; it may have dew_point, humidity, humidity_max, humidity_min, wind, solar,"
          + " sunshine and rain. What is missing is estimated as FAO-56 says, and the last columns"
          + " name how. Commas part the cells, or semicolons all of them; then a number may have a"
          + " decimal comma."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
public final class Et0Command implements Callable<Integer> {
  @Parameters(paramLabel = "WEATHER.csv", description = "The weather file.")
  private Path file;

  @Option(
      names = "--latitude",
      required = true,
      paramLabel = "DEGREES",
      description = "Latitude of the place, south negative.")
  private double latitudeDeg;

  @Option(
      names = "--elevation",
      required = true,
      paramLabel = "METRES",
      description = "Height of the place above sea level.")
  private double elevationM;

  @Option(
      names = "--wind-height",
      paramLabel = "METRES",
      defaultValue = "2",
      description = "Height of the wind measurements above ground; ${DEFAULT-VALUE} if not given.")
  private double windHeightM;

  @Option(
      names = "--coast",
      description = "The place lies on a coast; matters where radiation is estimated.")
  private boolean coast;

  @Option(
      names = "--dry-climate",
      description = "The climate is dry; matters where humidity is estimated.")
  private boolean dry;

  @Spec private CommandSpec spec;

  /** Reads, computes and prints. */
  @Override
  public Integer call() {
    Catalogue catalogue = CatalogueFiles.load().catalogue();
    EtSettings settings;
    WeatherTable table;
    try {
      settings = EtSettings.of(latitudeDeg, elevationM, windHeightM, catalogue);
      table = WeatherCsv.read(file);
    } catch (IllegalArgumentException | WeatherFileException e) {
      throw new BadInputException(e.getMessage());
    }
    settings = coast ? settings.coastal(catalogue) : settings;
    settings = dry ? settings.arid(catalogue) : settings;
    if (!table.ignored().isEmpty()) {
      PrintWriter err = spec.commandLine().getErr();
      err.println(
          "note: " + table.file() + ": columns not used: " + String.join(", ", table.ignored()));
    }
    spec.commandLine().getOut().print(Et0Csv.of(table, settings));
    return ExitCode.OK;
  }
}
