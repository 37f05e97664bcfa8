package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeasonsCommandTest {
  @TempDir private static Path shared;
  private static String grove;

  @BeforeAll
  static void demo() throws IOException {
    Path file = shared.resolve("grove.yaml");
    try (InputStream in =
        SeasonsCommandTest.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      Files.write(file, in.readAllBytes());
    }
    grove = file.toString();
  }

  @Test
  void printsACardThatKeepsItsPlants() {
    CommandLineRun run = CommandLineRun.of("seasons", grove, "--years", "4", "--changes", "4");
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains(
            "Programme A", "it keeps every plant above its limit", "Half an hour every other");
    assertThat(run.err()).contains("4 years drawn from the monthly normals");
    CommandLineRun again = CommandLineRun.of("seasons", grove, "--years", "4", "--changes", "4");
    assertThat(again.out()).isEqualTo(run.out());
  }

  @ParameterizedTest
  @CsvSource({
    "--plan-year, 4, --year must be from 1 to 3",
    "--years, -1, --years must be from 1 to 200",
    "--changes, 5, --changes must be",
    "--kept, 11, --kept must be from 0 to 10",
    "--weather, nowhere.csv, nowhere.csv",
  })
  void saysWhatCannotBeUsed(String option, String value, String message) {
    CommandLineRun run = CommandLineRun.of("seasons", grove, option, value);
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(run.err()).contains(message);
    assertThat(run.out()).isEmpty();
  }

  @Test
  void weatherWithoutAWholeYearIsRefused() throws IOException {
    StringBuilder days = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
    for (int day = 1; day <= 28; day++) {
      days.append(String.format(java.util.Locale.ROOT, "2024-06-%02d,8,19,0%n", day));
    }
    Path file = shared.resolve("june.csv");
    Files.writeString(file, days.toString());
    CommandLineRun run = CommandLineRun.of("seasons", grove, "--weather", file.toString());
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(run.err()).contains("at least one whole year");
  }
}
