package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class BalanceCommandTest {
  private static final String STARTER = "/org/grovewright/formats/description/starter.yaml";

  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();
  private final AtomicReference<Exception> failure = new AtomicReference<>();
  private Path grove;
  private Path weather;

  @BeforeEach
  void writeFiles() throws IOException {
    grove = folder.resolve("grove.yaml");
    try (InputStream in = BalanceCommandTest.class.getResourceAsStream(STARTER)) {
      Files.write(grove, in.readAllBytes());
    }
    StringBuilder days = new StringBuilder("date,tmin,tmax,humidity,wind,solar,rain\n");
    for (LocalDate day = LocalDate.of(2026, 1, 1); day.getYear() < 2028; day = day.plusDays(1)) {
      double warm = Math.sin((day.getDayOfYear() - 105) * 2 * Math.PI / 365);
      days.append(day)
          .append(String.format(java.util.Locale.ROOT, ",%.1f,%.1f", 9 + 5 * warm, 22 + 9 * warm))
          .append(
              String.format(java.util.Locale.ROOT, ",%.0f,2.5,%.1f", 62 - 12 * warm, 17 + 9 * warm))
          .append(day.getDayOfMonth() % 9 == 0 && warm < 0.3 ? ",14\n" : ",0\n");
    }
    weather = folder.resolve("days.csv");
    Files.writeString(weather, days);
  }

  private int run(String... options) {
    List<String> words = new ArrayList<>(List.of(grove.toString()));
    words.addAll(List.of(options));
    return new CommandLine(new BalanceCommand())
        .setOut(new PrintWriter(out))
        .setErr(new PrintWriter(new StringWriter()))
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setExecutionExceptionHandler(
            (thrown, at, parsed) -> {
              failure.set(thrown);
              return ExitCode.BAD_INPUT;
            })
        .execute(words.toArray(String[]::new));
  }

  @Test
  void everyDayOfTheTableBalances() {
    assertThat(run("--weather=" + weather, "--plant=A1", "--watering=when-dry")).isZero();
    String[] lines = out.toString().split("\n", -1);
    List<String> heading = List.of(lines[0].split(",", -1));
    assertThat(lines).hasSize(1 + 730 + 1);
    double missing = 0;
    for (int i = 1; i <= 730; i++) {
      String[] row = lines[i].split(",", -1);
      assertThat(row).hasSize(heading.size());
      // FAO-56 equation 85 on the printed, rounded terms.
      double end =
          missing
              - (at(heading, row, "rain_mm") - at(heading, row, "runoff_mm"))
              - at(heading, row, "irrigation_mm")
              + at(heading, row, "evaporation_mm")
              + at(heading, row, "transpiration_mm")
              + at(heading, row, "percolation_mm");
      missing = at(heading, row, "dr_end_mm");
      assertThat(missing).as(row[0]).isCloseTo(end, within(0.005));
      assertThat(at(heading, row, "raw_mm")).isLessThan(at(heading, row, "taw_mm"));
    }
  }

  private static double at(List<String> heading, String[] row, String name) {
    return Double.parseDouble(row[heading.indexOf(name)]);
  }

  @Test
  void everyWayOfWateringIsToldOnce() {
    StringWriter err = new StringWriter();
    int code =
        GrovewrightCommand.run(
            new PrintWriter(out),
            new PrintWriter(err),
            "balance",
            grove.toString(),
            "--plant=A1",
            "--watering=daily");
    assertThat(code).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(err.toString())
        .contains("\"daily\" is none of needs, when-dry, none.")
        .doesNotContain("WHEN_DRY");
    assertThat(run("--weather=" + weather, "--plant=A1", "--watering=When-Dry")).isZero();
  }

  @Test
  void saysWhichPlantsThereAre() {
    assertThat(run("--weather=" + weather, "--plant=Z9")).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(failure.get())
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("no plant Z9")
        .hasMessageContaining("A1, ");
  }

  @Test
  void asksForDailyWeather() throws IOException {
    run("--plant=A1");
    assertThat(failure.get()).hasMessageContaining("--weather");
    Path months = folder.resolve("months.csv");
    Files.writeString(months, "month,tmin,tmax\n1,2,9\n");
    run("--plant=A1", "--weather=" + months);
    assertThat(failure.get()).hasMessageContaining("holds months");
  }

  @Test
  void aHoleInTheWeatherIsFilled() throws IOException {
    Files.writeString(weather, Files.readString(weather).replaceFirst("2026-05-05[^\n]*\n", ""));
    assertThat(run("--weather=" + weather, "--plant=A1")).isZero();
    assertThat(out.toString()).contains("\n2026-05-05,");
  }
}
