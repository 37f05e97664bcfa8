package org.grovewright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.grovewright.formats.readings.ReadingsCsv;
import org.grovewright.formats.readings.ReadingsCsv.Written;
import org.grovewright.formats.readings.ReadingsException;
import org.grovewright.formats.readings.UnitDoubt;
import org.grovewright.plan.Plan;
import org.grovewright.sheets.DiagnosisSheet;
import org.grovewright.sheets.Sheets;
import org.grovewright.trouble.Diagnosis;
import org.grovewright.trouble.PlacedReading;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Judges the watering system by what was read in the garden. */
@Command(
    name = "readings",
    description = {
      "Compares readings from the garden with the plan: how rough the pipes are, how the supply"
          + " falls off, how much the emitters still give, and where a leak, a blockage or dirt is"
          + " likeliest.",
      "",
      "The table of readings has a heading with these columns, of which any may be left out:",
      "  zone             the zone that ran; not needed where there is only one",
      "  place            a plant or emitter; for pressure also tap, or a row with start, end or"
          + " the metres along its tubing, such as \"A end\" or \"A 12 m\"",
      "  folded           places behind which the tubing was folded shut meanwhile",
      "  meter (L/min)    flow past the water meter",
      "  pressure (kPa)   pressure by a gauge",
      "  caught (mL), time (s)   water from one emitter in a can, and how long it took",
    },
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "To find a leak to a few plants: read the meter, then again with each row folded shut at its"
          + " start, then with the suspected row folded behind every second plant. To find dirt or"
          + " a blockage: a can under one emitter of every plant, and a gauge at the end of each"
          + " row.",
      "",
      "Example:",
      "  grovewright readings grove.yaml --readings march.csv",
    })
final class ReadingsCommand implements Callable<Integer> {
  @Mixin private GroveArguments grove;

  @Option(
      names = "--readings",
      required = true,
      paramLabel = "FILE.csv",
      description = "The table of readings.")
  private Path file;

  @Option(
      names = "--noise",
      paramLabel = "PERCENT",
      defaultValue = "5",
      description =
          "How exact the readings are: what two of three readings of the same thing lie within;"
              + " ${DEFAULT-VALUE} if not given.")
  private double noise;

  @Mixin private YearOption year;

  @Option(names = "--json", description = "Print the result as JSON.")
  private boolean json;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    if (!(noise >= 0.1 && noise <= 50)) {
      throw new BadInputException("--noise must be from 0.1 to 50 per cent.");
    }
    Plan plan = new PlanSource(grove.catalogue(), spec.commandLine().getErr()).plan(grove.file());
    int inYear = year.of(plan.grove());
    Diagnosis diagnosis;
    try {
      List<Written> written = ReadingsCsv.read(file);
      List<PlacedReading> placed =
          PlacedReading.of(
              written.stream().map(Written::reading).toList(),
              plan.grove(),
              plan.watering(),
              inYear);
      UnitDoubt.check(written, placed);
      diagnosis = Diagnosis.of(placed, plan.grove(), plan.watering(), inYear, noise / 100);
    } catch (ReadingsException | IllegalArgumentException e) {
      throw new BadInputException(file + ": " + e.getMessage());
    }
    DiagnosisSheet sheet = new DiagnosisSheet(diagnosis, inYear, Sheets.unitsOf(plan));
    spec.commandLine().getOut().print(json ? sheet.json() : sheet.text());
    return diagnosis.pointsToFault() ? ExitCode.FALLS_SHORT : ExitCode.OK;
  }
}
