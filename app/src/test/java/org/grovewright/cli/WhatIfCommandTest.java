package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WhatIfCommandTest {
  @TempDir private Path folder;
  private String grove;

  @BeforeEach
  void writeGrove() throws IOException {
    Path file = folder.resolve("grove.yaml");
    try (InputStream in =
        WhatIfCommandTest.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      Files.write(file, in.readAllBytes());
    }
    grove = file.toString();
  }

  @Test
  void withoutACaseEachIsTried() {
    CommandLineRun run = CommandLineRun.of("whatif", grove);
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains("more-trees\n", "half-tank\n", "small-cut\n", "valve-open\n", "cut-through\n")
        .contains("Worst off is ", "past the meter");
  }

  @Test
  void tablesForMachinesHoldEveryPlant() throws IOException {
    CommandLineRun csv = CommandLineRun.of("whatif", grove, "small-cut:A:12m:4mm", "--csv");
    assertThat(csv.out().lines().count()).isGreaterThan(12);
    assertThat(csv.out()).startsWith("case,zone,plant,flow before L/h,");
    JsonNode json =
        new ObjectMapper()
            .readTree(CommandLineRun.of("whatif", grove, "more-trees:A:3", "--json").out());
    assertThat(json.get(0).get("plants").findValuesAsText("plant")).contains("new-1", "new-3");
  }

  @Test
  void badCasesAreNamed() {
    assertThat(CommandLineRun.of("whatif", grove, "smal-cut"))
        .satisfies(
            run -> {
              assertThat(run.code()).isEqualTo(2);
              assertThat(run.err()).contains("There is no case smal-cut; did you mean small-cut?");
            });
    for (String words :
        new String[] {
          "small-cut:Q", "small-cut:A:900m", "small-cut:A:2kg", "more-trees:A:0",
          "half-clogged:140", "half-tank:now", "valve-open:9", "small-cut:A:3m:0mm"
        }) {
      CommandLineRun run = CommandLineRun.of("whatif", grove, words);
      assertThat(run.code()).as(words).isEqualTo(2);
      assertThat(run.err()).as(words).contains(words + ": ");
    }
  }

  /** An owner who thinks in feet and gallons is told nothing in metres and litres. */
  @Test
  void sentencesAreInTheUnitsOfTheOwner() throws IOException {
    Path file = folder.resolve("us.yaml");
    try (InputStream in =
        WhatIfCommandTest.class.getResourceAsStream("/org/grovewright/examples/us-gravity.yaml")) {
      Files.write(file, in.readAllBytes());
    }
    CommandLineRun run = CommandLineRun.of("whatif", file.toString());
    assertThat(run.out())
        .contains(" in along the tubing of row ", " in, ", " in apart.", " gal/day, until")
        .doesNotContainPattern("[0-9] (m|mm|m3|L/h|L/min|kPa)\\b");
    CommandLineRun far = CommandLineRun.of("whatif", file.toString(), "small-cut:upper:900");
    assertThat(far.code()).isEqualTo(2);
    assertThat(far.err()).contains("so no place in it is 900 ft from its start.");
  }

  /** Young plants have fewer emitters, so the whole zone draws less in the first year. */
  @Test
  void theYearIsAskedFor() {
    CommandLineRun first = CommandLineRun.of("whatif", grove, "half-tank", "--year", "1");
    CommandLineRun third = CommandLineRun.of("whatif", grove, "half-tank", "--year", "3");
    assertThat(first.out()).startsWith("The grove is taken as it is in year 1 of the plan.\n");
    assertThat(third.out()).contains("year 3 of the plan").isNotEqualTo(first.out());
    CommandLineRun never = CommandLineRun.of("whatif", grove, "--year", "0");
    assertThat(never.code()).isEqualTo(2);
    assertThat(never.err()).contains("--year must be from 1 to 100, but is 0.");
  }
}
