package org.grovewright.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.Callable;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Node;
import org.grovewright.hydraulics.Solution;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.plan.Plan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints the solved pipe network of every zone. */
@Command(
    name = "network",
    description =
        "Prints, as CSV, head, pressure and outflow of every node and flow and speed of every link"
            + " of the watering zones.",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "Heads and pressures are in metres of water, flows in litres per hour, speeds in metres per"
          + " second.",
      "",
      "Example:",
      "  grovewright network grove.yaml > network.csv",
    })
final class NetworkCommand implements Callable<Integer> {
  private static final double LITRES_PER_HOUR = 3.6e6;

  @Mixin private GroveArguments grove;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    Plan plan = new PlanSource(grove.catalogue(), spec.commandLine().getErr()).plan(grove.file());
    StringBuilder text = new StringBuilder();
    CSVFormat format = CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();
    try (CSVPrinter csv = new CSVPrinter(text, format)) {
      csv.printRecord(
          "zone",
          "part",
          "id",
          "from",
          "to",
          "elevation m",
          "head m",
          "pressure m",
          "outflow L/h",
          "flow L/h",
          "velocity m/s");
      for (ZoneResult zone : plan.watering().zones()) {
        print(zone, csv);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    spec.commandLine().getOut().print(text);
    return ExitCode.OK;
  }

  private static void print(ZoneResult zone, CSVPrinter csv) throws IOException {
    Network network = zone.network().network();
    Solution solution = zone.solution();
    String id = zone.design().id();
    for (Node node : network.nodes()) {
      csv.printRecord(
          id,
          "node",
          node.id(),
          "",
          "",
          number(node.elevation()),
          number(solution.head(node.id())),
          number(solution.pressure(node.id())),
          number(solution.outflow(node.id()) * LITRES_PER_HOUR),
          "",
          "");
    }
    for (Link link : network.links()) {
      csv.printRecord(
          id,
          "link",
          link.id(),
          link.from(),
          link.to(),
          "",
          "",
          "",
          "",
          number(solution.flow(link.id()) * LITRES_PER_HOUR),
          link instanceof Link.Pipe ? number(solution.velocity(link.id())) : "");
    }
  }

  private static String number(double value) {
    String text = String.format(java.util.Locale.ROOT, "%.6f", value);
    return text.equals("-0.000000") ? "0.000000" : text;
  }
}
