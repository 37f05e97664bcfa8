package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadingsCommandTest {
  @TempDir private Path folder;
  private String grove;

  @BeforeEach
  void writeGrove() throws IOException {
    Path file = folder.resolve("grove.yaml");
    try (InputStream in =
        ReadingsCommandTest.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      Files.write(file, in.readAllBytes());
    }
    grove = file.toString();
  }

  private CommandLineRun run(String table, String... more) throws IOException {
    Path file = folder.resolve("readings.csv");
    Files.writeString(file, table);
    String[] words = new String[6 + more.length];
    words[0] = "readings";
    words[1] = grove;
    words[2] = "--readings";
    words[3] = file.toString();
    words[4] = "--year";
    words[5] = "3";
    System.arraycopy(more, 0, words, 6, more.length);
    return CommandLineRun.of(words);
  }

  @Test
  void aFewReadingsAreJudged() throws IOException {
    CommandLineRun run =
        run(
            "zone,place,pressure (kPa),caught (mL),time (s)\n"
                + "zone-1,A1,,66,60\n"
                + "zone-1,A1,125,,\n"
                + "# a remark\n"
                + "zone-1,A6,118,,\n");
    assertThat(run.err()).doesNotContain("line");
    assertThat(run.code()).isIn(0, 1);
    assertThat(run.out()).contains("3 readings set beside the plan.", "Emitters: ");
  }

  /** The same readings as a spreadsheet saves them where a decimal comma is written. */
  @Test
  void semicolonsAndDecimalCommasAreTheSameReadings() throws IOException {
    CommandLineRun points =
        run(
            "zone,place,pressure (kPa),caught (mL),time (s)\nzone-1,A1,,66.5,60\nzone-1,A6,118.5,,\n");
    CommandLineRun commas =
        run(
            "zone;place;pressure (kPa);caught (mL);time (s)\nzone-1;A1;;66,5;60\nzone-1;A6;118,5;;\n");
    assertThat(commas.out()).contains("2 readings").isEqualTo(points.out());
    assertThat(run("zone;place;pressure (kPa)\nzone-1;A1;118,5\nzone-1;A6;1.118\n").err())
        .contains("line 3: pressure: \"1.118\" has another decimal mark");
  }

  /** The supply gives 430 kPa at most: more is no reading of it in that unit. */
  @Test
  void pressureBeyondTheSupplyIsNamedWithItsLikelyUnit() throws IOException {
    CommandLineRun psi = run("zone,place,pressure (bar)\nzone-1,A1,19\n");
    assertThat(psi.code()).isEqualTo(2);
    assertThat(psi.err())
        .contains("line 2: pressure of 19 bar is more than the supply can give there (")
        .contains("looks like psi");
    CommandLineRun all = run("zone,place,pressure (kPa)\nzone-1,A1,19\nzone-1,A6,18\n");
    assertThat(all.code()).isEqualTo(2);
    assertThat(all.err()).contains("look like psi, not kPa");
    CommandLineRun meter = run("zone,meter (m3/h)\nzone-1,9.5\n");
    assertThat(meter.code()).isEqualTo(2);
    assertThat(meter.err()).contains("meter of 9.5 m3/h is more than the supply can give");
    CommandLineRun cans = run("zone,place,caught (L),time (s)\nzone-1,A1,66,60\nzone-1,A6,67,60\n");
    assertThat(cans.code()).isEqualTo(2);
    assertThat(cans.err()).contains("looks like mL");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "place,pressure;A1,120 | pressure has no unit",
        "place,pressure (acres);A1,120 | line 1: pressure",
        "place,force (N);A1,120 | the column \"force (N)\" is not known",
        "zone,place,pressure (kPa);zone-1,Q9,120 | line 2: place \"Q9\" is not there",
        "zone,place,pressure (kPa);zone-1,A 900 m,120 | line 2: the tubing of row A is only",
        "zone,pressure (kPa);7,120 | line 2: there is no zone 7",
        "place,caught (mL);A1,33 | a can needs both columns",
        "place,caught (mL),time (s);A1,33, | line 2: time is empty",
        "place,caught (mL),time (s);A1,33,0 | line 2: time must be above 0",
        "place,pressure (kPa);A1,many | line 2: pressure",
        "place,pressure (kPa);A1,-5 | line 2: pressure must be 0 or more",
        "place,pressure (kPa);A1, | line 2: there is no reading on it",
        "place,pressure (kPa) | there is no reading in it",
        "place,place,pressure (kPa);A,A,1 | the column place is there twice"
      })
  void badTablesAreNamed(String table, String message) throws IOException {
    CommandLineRun run = run(table.replace(";", "\n"));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains(message);
  }

  @Test
  void badOptionsAreNamed() throws IOException {
    assertThat(run("place,pressure (kPa)\nA1,120\n", "--noise", "0").err())
        .contains("--noise must be from 0.1 to 50 per cent.");
    assertThat(CommandLineRun.of("readings", grove, "--readings", "nowhere.csv").err())
        .contains("nowhere.csv: there is no such file.");
  }
}
