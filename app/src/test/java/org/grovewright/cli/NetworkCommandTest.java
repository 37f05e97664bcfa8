package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Networks as EPANET input text, right and wrong. */
class NetworkCommandTest {
  private static final String START = "[OPTIONS]\nUNITS LPS\nHEADLOSS H-W\n";

  @TempDir private Path folder;

  private CommandLineRun run(String text) throws IOException {
    Path file = folder.resolve("net.inp");
    Files.writeString(file, text);
    return CommandLineRun.of("network", file.toString());
  }

  /**
   * One pipe: the Hazen-Williams loss {@code 10.667 L Q^1.852 / (C^1.852 d^4.871)} in SI, textbook
   * form, from memory, for 100 m of 100 mm pipe with C 130 at 10 L/s.
   */
  @Test
  void aPipeLosesWhatTheFormulaSays() throws IOException {
    CommandLineRun run =
        run(
            START
                + "[RESERVOIRS]\nR 50\n[JUNCTIONS]\nJ 10 10\n[PIPES]\nP R J 100 100 130 0 Open\n");
    assertThat(run.code()).as(run.err()).isZero();
    String junction =
        run.out().lines().filter(l -> l.contains(",node,J,")).findFirst().orElseThrow();
    double head = Double.parseDouble(junction.split(",", -1)[6]);
    double loss =
        10.667 * 100 * Math.pow(0.01, 1.852) / (Math.pow(130, 1.852) * Math.pow(0.1, 4.871));
    assertThat(head).isCloseTo(50 - loss, within(0.005));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[RESERVOIRS];R 50;[JUNCTIONS];J 10 1;[PIPES];P R J 0 100 130 0 Open | pipe P: length",
        "[RESERVOIRS];R 50;[JUNCTIONS];J 10 1;[PIPES];P R J 9 -20 130 0 Open | pipe P: inside"
            + " diameter",
        "[JUNCTIONS];J 10 1;K 9;[PIPES];P K J 9 20 130 0 Open | the network has no source",
        "[RESERVOIRS];R 50;[JUNCTIONS];J 10 1;K 9;L 9;[PIPES];P R J 9 20 130;Q K L 9 20 130"
            + " | no pipe leads from any source to node K",
        "[RESERVOIRS];R 50;[JUNCTIONS];J 10 1;K 9;[PIPES];P R K 9 20 130;[VALVES];"
            + "V K J 20 PRV 30 0;W K J 20 PRV 20 0 | both set the pressure at J",
        "[RESERVOIRS];R 50;[JUNCTIONS];J 10 1;[PIPES];P R J 9 20 130;[STATUS];P Open;P Closed"
            + " | the link P is given both as OPEN and as CLOSED",
        "[RESERVOIRS];R 50;[JUNCTIONS];J 10 1;[PIPES];P J J 9 20 130 | P starts and ends at J",
        "[RESERVOIRS];R 50;[JUNCTIONS];J 10 1;[PIPES];P R X 9 20 130 | X",
        "[RESERVOIRS];R 50;[JUNCTIONS];J 10 1;[PIPES];P R J 9 20 130;[RULES];RULE 1 | RULES"
      })
  void wrongNetworksAreNamed(String text, String message) throws IOException {
    CommandLineRun run = run(START + text.replace(";", "\n") + "\n");
    assertThat(run.code()).as(run.out()).isEqualTo(2);
    assertThat(run.err()).contains("net.inp: ").contains(message);
  }

  @Test
  void everyPartThatIsCutOffIsNamedOnALineOfItsOwn() throws IOException {
    CommandLineRun run =
        run(
            START
                + "[RESERVOIRS]\nR 50\n[JUNCTIONS]\nJ 10 1\nK 10 1\n"
                + "[PIPES]\nP R J 9 20 130 0 Closed\nQ J K 9 20 130 0 Open\n");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err().lines())
        .hasSize(2)
        .allMatch(line -> line.contains(".inp: node ") && line.endsWith("closed valves."));
  }

  @Test
  void aMissingFileIsNamed() {
    CommandLineRun run = CommandLineRun.of("network", "nowhere.inp");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("nowhere.inp: there is no such file.");
  }

  /** What is written solves to what the plan says, though its emitters follow no single law. */
  @ParameterizedTest
  @ValueSource(strings = {"demo", "us-gravity"})
  void theZonesOfAGroveAreWrittenToBeCheckedElsewhere(String example) {
    String grove = Path.of("..", "examples", example + ".yaml").toString();
    List<String> planned = nodes(CommandLineRun.of("network", grove).out());
    CommandLineRun writing = CommandLineRun.of("network", grove, "--out", folder.toString());
    assertThat(writing.code()).as(writing.err()).isZero();
    List<Path> files = writing.out().lines().map(Path::of).toList();
    assertThat(files).isNotEmpty();
    int checked = 0;
    for (Path file : files) {
      CommandLineRun reading = CommandLineRun.of("network", file.toString());
      assertThat(reading.code()).as(reading.err()).isZero();
      String zone = file.getFileName().toString().replace(".inp", "");
      for (String found : nodes(reading.out())) {
        String[] here = found.split(",", -1);
        for (String line : planned) {
          String[] there = line.split(",", -1);
          if (there[0].equals(zone) && there[2].equals(here[2]) && !there[8].equals("0.000000")) {
            assertThat(Double.parseDouble(here[8]))
                .as(line)
                .isCloseTo(Double.parseDouble(there[8]), withinPercentage(0.1));
            assertThat(Double.parseDouble(here[6]))
                .as(line)
                .isCloseTo(Double.parseDouble(there[6]), within(0.001));
            checked++;
          }
        }
      }
    }
    assertThat(checked).isGreaterThan(10);
  }

  private static List<String> nodes(String table) {
    return table.lines().filter(line -> line.contains(",node,")).toList();
  }

  @Test
  void aNetworkIsNotWrittenAsANetwork() throws IOException {
    Path file = folder.resolve("net.inp");
    Files.writeString(file, START + "[RESERVOIRS]\nR 50\n");
    CommandLineRun run = CommandLineRun.of("network", file.toString(), "--out", "elsewhere");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--out writes the zones of a grove");
  }
}
