package org.grovewright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.BalanceCsv;
import org.grovewright.formats.weather.WeatherFileException;
import org.grovewright.formats.weather.WeatherOfDescription;
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
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

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
    NONE;

    /** As it is typed. */
    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** From what is typed; without it a refusal names the constants beside the words. */
    static final class Typed implements ITypeConverter<Watering> {
      @Override
      public Watering convert(String text) {
        for (Watering watering : values()) {
          if (watering.toString().equalsIgnoreCase(text.strip().replace('_', '-'))) {
            return watering;
          }
        }
        String words =
            Arrays.stream(values()).map(Watering::toString).collect(Collectors.joining(", "));
        throw new TypeConversionException("\"" + text + "\" is none of " + words + ".");
      }
    }
  }

  @Parameters(paramLabel = "GROVE.yaml", description = "The description of the grove.")
  private Path file;

  @Mixin private WeatherArguments weatherFile;

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
      converter = Watering.Typed.class,
      description =
          "needs: by the plan's monthly needs; when-dry: filled up when the plant would begin to"
              + " suffer; none. ${DEFAULT-VALUE} if not given.")
  private Watering watering;

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
    Grove with = weatherFile.into(grove, spec.commandLine().getErr());
    if (with.climate().daily().isEmpty()) {
      throw new BadInputException(
          "The grove has no daily weather; name a file of it with --weather.");
    }
    return with;
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
