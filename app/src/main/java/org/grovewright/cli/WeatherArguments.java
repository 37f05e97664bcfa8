package org.grovewright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.formats.weather.FilledSeries;
import org.grovewright.formats.weather.UsualTemperatures;
import org.grovewright.formats.weather.WeatherFileException;
import org.grovewright.formats.weather.WeatherFiles;
import org.grovewright.model.Climate;
import org.grovewright.model.Grove;
import picocli.CommandLine.Option;

/** A file of daily weather for a grove that may have none of its own. */
final class WeatherArguments {
  @Option(
      names = "--weather",
      paramLabel = "WEATHER.csv",
      description =
          "Daily weather: a table as for et0, or a GHCN-Daily station record. It goes before the"
              + " daily weather that the grove itself names.")
  private Path file;

  @Option(
      names = "--wind-height",
      paramLabel = "METRES",
      description = "Height of the wind measurements of the weather file; 2 if not given.")
  private Double windHeightM;

  /**
   * The grove with the file's days in place of its own, or as it is where no file was given.
   *
   * @param err takes remarks on the file
   * @throws BadInputException if the file cannot be used
   */
  Grove into(Grove grove, PrintWriter err) {
    if (file == null) {
      return grove;
    }
    FilledSeries series;
    try {
      series = WeatherFiles.days(file);
      UsualTemperatures.check(file.toString(), series.days(), grove.climate());
    } catch (WeatherFileException e) {
      throw new BadInputException(e.getMessage());
    }
    if (!series.remarks().isEmpty()) {
      err.println("note: " + file + ": " + series.remarks());
    }
    OptionalDouble height =
        windHeightM == null ? OptionalDouble.empty() : OptionalDouble.of(windHeightM);
    Climate climate =
        new Climate(
            grove.climate().normals(),
            series.days(),
            height.orElse(2),
            file.getFileName().toString());
    return new Grove(
        grove.site(),
        grove.soil(),
        climate,
        grove.supply(),
        grove.rows(),
        grove.plantings(),
        grove.watering(),
        grove.stock(),
        grove.crew(),
        grove.start(),
        grove.preferences());
  }

  /** The file of weather, if one was named. */
  Optional<Path> file() {
    return Optional.ofNullable(file);
  }
}
