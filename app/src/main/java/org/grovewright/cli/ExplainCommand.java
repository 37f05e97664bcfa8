package org.grovewright.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.grovewright.formats.words.Nearest;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.sheets.Sheets;
import org.grovewright.sheets.WorkingTree;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shows how a figure of a plan was found. */
@Command(
    name = "explain",
    description =
        "Shows how a figure was found: formula, inputs, source, and the figures it rests on."
            + " Without a figure, lists all there are.",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "Examples:",
      "  grovewright explain grove.yaml                    list all figures",
      "  grovewright explain grove.yaml buy.total.cost     follow one back to where it began",
    })
final class ExplainCommand implements Callable<Integer> {
  private static final int SUGGESTIONS = 5;

  @Mixin private GroveArguments grove;

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "FIGURE",
      description = "Id of the figure, as in the list.")
  private String id;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    Plan plan = new PlanSource(grove.catalogue(), spec.commandLine().getErr()).plan(grove.file());
    ReaderUnits units = Sheets.unitsOf(plan);
    List<Figure> figures = List.copyOf(plan.figures().values());
    if (id == null) {
      for (Figure figure : figures) {
        out.print(
            figure.id()
                + "\t"
                + ReaderUnits.plainSpaces(units.text(figure))
                + "\t"
                + figure.label()
                + "\n");
      }
      return ExitCode.OK;
    }
    if (plan.figure(id).isEmpty()) {
      throw new BadInputException(unknown(figures.stream().map(Figure::id).toList()));
    }
    out.print(new WorkingTree(figures, units).follow(id));
    return ExitCode.OK;
  }

  private String unknown(List<String> ids) {
    List<String> near = new ArrayList<>();
    List<String> left = new ArrayList<>(ids);
    ids.stream()
        .filter(known -> known.startsWith(id + ".") || known.endsWith("." + id))
        .limit(SUGGESTIONS)
        .forEach(near::add);
    left.removeAll(near);
    while (near.size() < SUGGESTIONS) {
      Optional<String> next = Nearest.of(id, left);
      if (next.isEmpty()) {
        break;
      }
      near.add(next.get());
      left.remove(next.get());
    }
    String start = "This plan has no figure '" + Nearest.shorten(id) + "'.";
    return near.isEmpty()
        ? start + " Leave the figure out to list all there are."
        : start + " Did you mean:\n  " + String.join("\n  ", near);
  }
}
