package org.grovewright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.grovewright.formats.inp.InpNote;
import org.grovewright.formats.inp.InpReader;
import org.grovewright.formats.inp.InpReading;
import org.grovewright.formats.inp.InpWriter;
import org.grovewright.formats.inp.InpWriting;
import org.grovewright.hydraulics.HydraulicException;
import org.grovewright.hydraulics.HydraulicProblem;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Node;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.Solver;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.plan.Plan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Prints the solved pipe network of every zone. */
@Command(
    name = "network",
    description =
        "Prints, as CSV, head, pressure and outflow of every node and flow and speed of every link"
            + " of the watering zones of a grove, or of a pipe network in EPANET input text (a file"
            + " whose name ends in .inp).",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "Heads and pressures are in metres of water, flows in litres per hour, speeds in metres per"
          + " second.",
      "",
      "Example:",
      "  grovewright network grove.yaml > network.csv",
      "  grovewright network grove.yaml --out networks",
      "  grovewright network district.inp > district.csv",
    })
final class NetworkCommand implements Callable<Integer> {
  private static final double LITRES_PER_HOUR = 3.6e6;

  @Mixin private GroveArguments grove;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "Write the pipe network of each watering zone to this folder instead, as EPANET input text"
              + " to check with other tools.")
  private Path folder;

  @Option(
      names = "--force",
      description = "Put the files into the folder even if it holds other files.")
  private boolean force;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    boolean network = grove.file().toString().toLowerCase(Locale.ROOT).endsWith(".inp");
    if (folder != null) {
      if (network) {
        throw new BadInputException(
            "--out writes the zones of a grove; " + grove.file() + " is such a network already.");
      }
      write(plan());
      return ExitCode.OK;
    }
    String text =
        network
            ? table(csv -> print("", solvedFile(), csv))
            : table(
                csv -> {
                  for (ZoneResult zone : plan().watering().zones()) {
                    print(zone.design().id(), zone.solution(), csv);
                  }
                });
    spec.commandLine().getOut().print(text);
    return ExitCode.OK;
  }

  /** Writes a file for each zone; what the format cannot say is named on the error output. */
  private void write(Plan plan) {
    PrintWriter err = spec.commandLine().getErr();
    Map<String, String> files = new LinkedHashMap<>();
    for (ZoneResult zone : plan.watering().zones()) {
      String name = zone.design().id() + ".inp";
      InpWriting writing = InpWriter.write(zone.solution());
      writing.notes().forEach(note -> err.println("note: " + name + ": " + note.message() + "."));
      files.put(name, writing.text());
    }
    new PlanWriter(spec.commandLine().getOut(), err).folder(files, folder, force);
  }

  private Plan plan() {
    return new PlanSource(grove.catalogue(), spec.commandLine().getErr()).plan(grove.file());
  }

  /** Reads and solves a network text; what was left out of it is named on the error output. */
  private Solution solvedFile() {
    Path file = grove.file();
    String text;
    try {
      if (!Files.isRegularFile(file)) {
        throw new BadInputException(file + ": there is no such file.");
      }
      text = Files.readString(file, StandardCharsets.UTF_8);
    } catch (CharacterCodingException e) {
      throw new BadInputException(file + ": this is no text in UTF-8.");
    } catch (IOException e) {
      throw new BadInputException(file + ": the file cannot be read: " + e.getMessage());
    }
    InpReading reading = InpReader.read(text);
    StringBuilder faults = new StringBuilder();
    for (InpNote note : reading.notes()) {
      String line = note.line() > 0 ? "line " + note.line() + ": " : "";
      if (note.severity() == InpNote.Severity.ERROR) {
        faults.append(file).append(": ").append(line).append(note.message()).append('\n');
      } else {
        spec.commandLine().getErr().println("note: " + file + ": " + line + note.message());
      }
    }
    for (HydraulicProblem problem : reading.network().problems()) {
      faults.append(file).append(": ").append(problem.message()).append(".\n");
    }
    if (faults.length() > 0) {
      throw new BadInputException(faults.toString().stripTrailing());
    }
    try {
      Solution solution = Solver.solve(reading.network());
      for (HydraulicProblem notice : solution.notices()) {
        spec.commandLine().getErr().println("note: " + file + ": " + notice.message() + ".");
      }
      return solution;
    } catch (HydraulicException e) {
      throw new BadInputException(
          e.problems().stream()
              .map(problem -> file + ": " + problem.message() + ".")
              .collect(Collectors.joining("\n")));
    }
  }

  /** Something that prints rows. */
  private interface Rows {
    void print(CSVPrinter csv) throws IOException;
  }

  private static String table(Rows rows) {
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
      rows.print(csv);
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.toString();
  }

  private static void print(String id, Solution solution, CSVPrinter csv) throws IOException {
    Network network = solution.network();
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
    String text = String.format(Locale.ROOT, "%.6f", value);
    return text.equals("-0.000000") ? "0.000000" : text;
  }
}
