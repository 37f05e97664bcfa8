package org.grovewright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.grovewright.plan.Plan;
import org.grovewright.sheets.PlanJson;
import org.grovewright.texts.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Plans a grove and writes the sheets. */
@Command(
    name = "plan",
    description = "Plans the grove of a file and writes the report, map, lists and data.",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "Examples:",
      "  grovewright plan grove.yaml --out plan      write all sheets to the folder plan",
      "  grovewright plan grove.yaml --json          print the plan as data, write nothing",
      "  grovewright plan grove.yaml --explain       print the working of every figure",
      "  grovewright plan grove.yaml --language es   write all sheets in Spanish",
    })
final class PlanCommand implements Callable<Integer> {
  @Mixin private GroveArguments grove;

  @Mixin private LanguageArgument words;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "Folder to write the sheets to. Without it, and without --json or --explain, a folder"
              + " named after the file with -plan added.")
  private Path folder;

  @Option(names = "--json", description = "Print the plan as JSON, in SI units.")
  private boolean json;

  @Option(names = "--explain", description = "Print the working of every figure.")
  private boolean explain;

  @Option(
      names = "--force",
      description = "Put the sheets into a folder even if it holds other files.")
  private boolean force;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    if (json && explain) {
      throw new BadInputException("Give either --json or --explain: both print to the same place.");
    }
    Language language = words.language();
    Plan plan = new PlanSource(grove.catalogue(), err).plan(grove.file());
    PlanWriter writer = new PlanWriter(out, err, language);
    if (folder != null || !json && !explain) {
      // With data on standard output, the paths of the sheets would only get in its way.
      PrintWriter paths = json || explain ? err : out;
      new PlanWriter(paths, err, language).folder(plan, folder == null ? named() : folder, force);
    }
    if (json) {
      out.print(PlanJson.of(plan));
    }
    if (explain) {
      writer.workings(plan);
    }
    return writer.verdict(plan);
  }

  private Path named() {
    String name = grove.file().getFileName().toString();
    int dot = name.lastIndexOf('.');
    return Path.of((dot > 0 ? name.substring(0, dot) : name) + "-plan");
  }
}
