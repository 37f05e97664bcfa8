package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.grovewright.formats.description.Starter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class CheckCommandTest {
  @TempDir Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(Object command, String... args) {
    return new CommandLine(command)
        .setOut(new PrintWriter(out))
        .setErr(new PrintWriter(err))
        .setExecutionExceptionHandler(
            (failure, line, parsed) -> {
              assertThat(failure).isInstanceOf(BadInputException.class);
              line.getErr().println(failure.getMessage());
              return ExitCode.BAD_INPUT;
            })
        .execute(args);
  }

  @Test
  void aNewGroveIsFoundGood() {
    Path file = folder.resolve("my grove.yaml");
    assertThat(run(new NewCommand(), file.toString())).isEqualTo(ExitCode.OK);
    assertThat(out.toString().strip()).isEqualTo(file.toString());
    out.getBuffer().setLength(0);
    assertThat(run(new CheckCommand(), file.toString())).isEqualTo(ExitCode.OK);
    // 90 ft x 60 ft; 5 gal in 36 s is 8.33 gal/min; 7 h a week are 4 and 3.
    assertThat(out.toString())
        .contains("Larkfield (invented): 5400 ft² of land at 38.50° N, 121.50° W")
        .contains("23 plants in 2 rows")
        .contains("house tap at 50.0 psi, 8.33 gal/min in the first bucket test")
        .contains("2 people can work 7 h a week from 2026-02-28")
        .hasLineCount(1);
  }

  @Test
  void problemsAreListedWithTheirPlaces() throws Exception {
    Path file = folder.resolve("grove.yaml");
    Files.writeString(
        file, Starter.text().replace("50 psi", "50 gal").replace("units: us", "units: old"));
    assertThat(run(new CheckCommand(), file.toString())).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(out.toString().lines())
        .hasSize(2)
        .allSatisfy(line -> assertThat(line).matches(".*grove\\.yaml:\\d+:\\d+: [a-z_.]+: .+"));
  }

  @Test
  void aFloodOfProblemsIsCut() throws Exception {
    StringBuilder text = new StringBuilder(Starter.text());
    for (int i = 0; i < 5000; i++) {
      text.append("key").append(i).append(": x\n");
    }
    Path file = Files.writeString(folder.resolve("grove.yaml"), text);
    assertThat(run(new CheckCommand(), file.toString())).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(out.toString().lines()).hasSize(51).last().isEqualTo("and 4950 more");
  }

  @Test
  void aNewGroveNeverOverwrites() throws Exception {
    Path file = Files.writeString(folder.resolve("grove.yaml"), "mine");
    assertThat(run(new NewCommand(), file.toString())).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(err.toString()).contains("this is there already");
    assertThat(file).hasContent("mine");
    Path nowhere = folder.resolve("no").resolve("such.yaml");
    assertThat(run(new NewCommand(), nowhere.toString())).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(err.toString()).contains("there is no such folder");
  }

  @Test
  void theSchemaCanBeWritten() {
    Path file = folder.resolve("s.json");
    assertThat(run(new NewCommand(), "--schema", file.toString())).isEqualTo(ExitCode.OK);
    assertThat(file).hasContent(Starter.schema());
  }
}
