package org.grovewright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.BalanceCsv;
import org.grovewright.formats.weather.FilledSeries;
import org.grovewright.formats.weather.WeatherFileException;
import org.grovewright.formats.weather.WeatherFiles;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.model.Climate;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.BalanceRun;
import org.grovewright.water.BalanceTotals;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.NeedWatering;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.WaterNeeds;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints the daily water balance of one plant. */
@Command(
    name = "balance",
    description = {
      "Prints the daily water balance of one plant of a grove along a file of daily weather, with"
          + " every term, as CSV.",
      "",
      "Depths are millimetres over the soil that the plant's roots draw from (soil_m2)."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
public final class BalanceCommand implements Callable<Integer> {
  /** How the plant is watered. */
  enum Watering {
    NEEDS,
    WHEN_DRY,
    NONE
  }

  @Parameters(paramLabel = "GROVE.yaml", description = "The description of the grove.")
  private Path file;

  @Option(
      names = "--weather",
      paramLabel = "WEATHER.csv",
      description =
          "Daily weather: a table as for et0, or a GHCN-Daily station record. Needed unless the grove"
              + " itself names daily weather.")
  private Path weatherFile;

  @Option(
      names = "--plant",
      required = true,
      paramLabel = "ID",
      description = "Which plant, by its id in the description.")
  private String plantId;

  @Option(
      names = "--year",
      paramLabel = "N",
      defaultValue = "0",
      description =
          "Keep the plant as large as in this year of the plan (1 to 3) through all the weather;"
              + " without it the plant grows along.")
  private int year;

  @Option(
      names = "--watering",
      paramLabel = "HOW",
      defaultValue = "needs",
      description =
          "needs: by the plan's monthly needs; when-dry: filled up when the plant would begin to"
              + " suffer; none. ${DEFAULT-VALUE} if not given.")
  private Watering watering;

  @Option(
      names = "--wind-height",
      paramLabel = "METRES",
      description = "Height of the wind measurements of the weather file; 2 if not given.")
  private Double windHeightM;

  @Spec private CommandSpec spec;

  /** Reads, runs and prints. */
  @Override
  public Integer call() {
    if (year < 0 || year > WaterNeeds.YEARS) {
      throw new BadInputException("--year must be from 1 to " + WaterNeeds.YEARS + ".");
    }
    Catalogue catalogue = CatalogueFiles.load().catalogue();
    Grove grove;
    try {
      grove = withWeather(new DescriptionReader(catalogue, new WeatherOfDescription()).read(file));
    } catch (DescriptionException | WeatherFileException e) {
      throw new BadInputException(e.getMessage());
    }
    Planting planting = planting(grove);
    WaterNeeds needs;
    DailyClimate weather;
    try {
      needs = WaterNeeds.of(grove, catalogue, new FigureBook());
      weather = DailyClimate.of(grove.site(), grove.climate(), needs.climate().arid(), catalogue);
    } catch (IllegalArgumentException e) {
      throw new BadInputException(e.getMessage());
    }
    PlantSeries plant =
        year > 0
            ? PlantSeries.inYear(grove, planting, year, needs, weather, catalogue)
            : PlantSeries.growing(grove, planting, needs, weather, catalogue);
    BalanceCsv table = new BalanceCsv(weather, plant);
    BalanceTotals totals =
        switch (watering) {
          case NONE -> BalanceRun.run(weather, plant, BalanceRun.Watering.NONE, null, table);
          case WHEN_DRY ->
              BalanceRun.run(weather, plant, BalanceRun.Watering.WHEN_DRY, null, table);
          case NEEDS ->
              BalanceRun.run(
                  weather,
                  plant,
                  BalanceRun.Watering.GIVEN,
                  NeedWatering.days(grove, needs.plant(plantId), year, weather),
                  table);
        };
    spec.commandLine().getOut().print(table);
    PrintWriter err = spec.commandLine().getErr();
    err.println(
        "note: on "
            + totals.stressedDays()
            + " of "
            + totals.days()
            + " days the plant wanted more water than it could take up.");
    return ExitCode.OK;
  }

  private Grove withWeather(Grove grove) {
    if (weatherFile == null) {
      if (grove.climate().daily().isEmpty()) {
        throw new BadInputException(
            "The grove has no daily weather; name a file of it with --weather.");
      }
      return grove;
    }
    FilledSeries series = WeatherFiles.days(weatherFile);
    if (!series.remarks().isEmpty()) {
      spec.commandLine().getErr().println("note: " + weatherFile + ": " + series.remarks());
    }
    Climate own = grove.climate();
    OptionalDouble height =
        windHeightM == null ? OptionalDouble.empty() : OptionalDouble.of(windHeightM);
    Climate climate =
        new Climate(
            own.normals(), series.days(), height.orElse(2), weatherFile.getFileName().toString());
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

  private Planting planting(Grove grove) {
    for (Planting planting : grove.plantings()) {
      if (planting.id().equals(plantId)) {
        return planting;
      }
    }
    String known =
        grove.plantings().stream().limit(12).map(Planting::id).collect(Collectors.joining(", "));
    throw new BadInputException(
        "The grove has no plant " + plantId + "; among its plants are " + known + ".");
  }
}
