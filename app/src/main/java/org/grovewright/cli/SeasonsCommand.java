package org.grovewright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.irrigation.Programme;
import org.grovewright.model.Grove;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.FigureBook;
import org.grovewright.season.SeasonPlan;
import org.grovewright.season.SeasonSettings;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.sheets.SeasonSheets;
import org.grovewright.sheets.Sheets;
import org.grovewright.sheets.Words;
import org.grovewright.texts.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Finds a timer setting that holds through years of weather. */
@Command(
    name = "seasons",
    description = {
      "Finds the timer setting that keeps every plant above its limit in at least nine years of ten"
          + " with the least water, and compares it with the rules that people use.",
      "",
      "Every setting is judged by moving the soil of every plant on day by day through all years of"
          + " weather: the file's, or years drawn from the monthly normals where there is none."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "Examples:",
      "  grovewright seasons grove.yaml                          print the card of the first year",
      "  grovewright seasons grove.yaml --weather station.csv    test it in real daily weather",
      "  grovewright seasons grove.yaml --changes 4 --out card   change it with the seasons only",
      "  grovewright seasons grove.yaml --year 1,2,3 --out card  a card for each year of the plan",
    })
final class SeasonsCommand implements Callable<Integer> {
  @Mixin private GroveArguments arguments;

  @Mixin private WeatherArguments weather;

  @Mixin private LanguageArgument words;

  @Option(
      names = {"--year", "--plan-year"},
      paramLabel = "N",
      split = ",",
      defaultValue = "1",
      description =
          "Year of the plan, 1 to 3, whose plants are watered, or several such as 1,2,3 with a card"
              + " for each; 1 if not given.")
  private List<Integer> planYears;

  @Option(
      names = "--years",
      paramLabel = "N",
      defaultValue = "0",
      description =
          "Years of weather: the last N of the file, or N drawn years. All of the file, or 30, if"
              + " not given.")
  private int years;

  @Option(
      names = "--changes",
      paramLabel = "N",
      defaultValue = "12",
      description =
          "How often a year you will change the timer: 1, 2, 4, 6 or 12 times; 12 if not given.")
  private int changes;

  @Option(
      names = "--kept",
      paramLabel = "N",
      defaultValue = "9",
      description =
          "In how many years of ten every plant is to stay above its limit, 0 to 10; 9 if not"
              + " given.")
  private double kept;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Also write the report, the pictures and the printable card to this folder.")
  private Path folder;

  @Option(
      names = "--force",
      description = "Put the files into the folder even if it holds other files.")
  private boolean force;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    Language language = words.language();
    List<SeasonSettings> settings = planYears.stream().distinct().map(this::settings).toList();
    Plan plan = new PlanSource(arguments.catalogue(), err).plan(arguments.file());
    Grove grove = weather.into(plan.grove(), err);
    List<SeasonPlan> seasons = new ArrayList<>();
    FigureBook book = new FigureBook();
    plan.figures()
        .values()
        .forEach(f -> book.enter(f.id(), f.label(), f.value(), f.kind(), f.working()));
    try (Patience patience = new Patience(err, "trying timer settings through all years")) {
      for (SeasonSettings year : settings) {
        seasons.add(
            SeasonPlan.of(
                grove,
                plan.catalogue(),
                plan.water(),
                plan.watering(),
                plan.programme(),
                year,
                book));
      }
    } catch (IllegalArgumentException e) {
      throw new BadInputException(
          "No card can be made: " + e.getMessage() + (e.getMessage().endsWith(".") ? "" : "."));
    }
    ReaderUnits units = Sheets.unitsOf(plan, language);
    for (SeasonPlan season : seasons) {
      out.print(season == seasons.get(0) ? "" : "\n");
      new SeasonsText(grove, season, units).print(out);
    }
    if (folder != null) {
      new PlanWriter(err, err)
          .folder(SeasonSheets.of(grove, seasons, book.all(), units), folder, force);
    }
    boolean falls = false;
    for (SeasonPlan season : seasons) {
      String year = seasons.size() == 1 ? "" : "Year " + season.settings().planYear() + ": ";
      for (Finding finding : season.findings()) {
        String about = finding.subject().isEmpty() ? "" : finding.subject() + ": ";
        err.println(year + about + ReaderUnits.plainSpaces(Words.message(finding, units)));
        falls |= finding.severity() == Severity.SHORTFALL;
      }
    }
    return falls ? ExitCode.FALLS_SHORT : ExitCode.OK;
  }

  private SeasonSettings settings(int planYear) {
    if (planYear < 1 || planYear > Programme.YEARS) {
      throw new BadInputException("--year must be from 1 to " + Programme.YEARS + ".");
    }
    if (years < 0 || years > 200) {
      throw new BadInputException("--years must be from 1 to 200, or 0 for all there are.");
    }
    if (!(kept >= 0 && kept <= 10)) {
      throw new BadInputException("--kept must be from 0 to 10 years of ten.");
    }
    try {
      return new SeasonSettings(planYear, years, changes, kept / 10);
    } catch (IllegalArgumentException e) {
      throw new BadInputException("--changes must be 1, 2, 4, 6 or 12.");
    }
  }
}
