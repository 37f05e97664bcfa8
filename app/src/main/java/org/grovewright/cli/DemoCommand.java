package org.grovewright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.grovewright.plan.Plan;
import org.grovewright.texts.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Plans the example that comes with the program. */
@Command(
    name = "demo",
    description = "Plans an invented example grove, to show what a plan looks like.",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {"", "Example:", "  grovewright demo --out demo-plan"})
final class DemoCommand implements Callable<Integer> {
  static final String EXAMPLE = "demo.yaml";

  @Option(
      names = "--out",
      paramLabel = "DIR",
      defaultValue = "demo-plan",
      description = "Folder to write the sheets to (default: ${DEFAULT-VALUE}).")
  private Path folder;

  @Option(
      names = "--force",
      description = "Put the sheets into a folder even if it holds other files.")
  private boolean force;

  @Mixin private LanguageArgument words;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    Language language = words.language();
    Plan plan = new PlanSource(null, err).example(EXAMPLE);
    PlanWriter writer = new PlanWriter(out, err, language);
    writer.folder(plan, folder, force);
    return writer.verdict(plan);
  }
}
