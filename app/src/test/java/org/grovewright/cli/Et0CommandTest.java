package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class Et0CommandTest {
  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();
  private final AtomicReference<Exception> failure = new AtomicReference<>();

  private int run(String text, String... options) throws IOException {
    Path file = folder.resolve("weather.csv");
    Files.writeString(file, text);
    List<String> words = new ArrayList<>(List.of(file.toString()));
    words.addAll(List.of(options));
    return new CommandLine(new Et0Command())
        .setOut(new PrintWriter(out))
        .setErr(new PrintWriter(new StringWriter()))
        .setExecutionExceptionHandler(
            (thrown, at, parsed) -> {
              failure.set(thrown);
              return ExitCode.BAD_INPUT;
            })
        .execute(words.toArray(String[]::new));
  }

  @Test
  void printsTheDayOfBrussels() throws IOException {
    // FAO-56 (1998) Example 18, every step seen as restated in public test data: P 100.1, gamma
    // 0.0666, delta 0.122, es 1.997, ea 1.409, Ra 41.09, N 16.1, Rs 22.07, Rso 30.90, Rns 17.00,
    // Rnl 3.71, Rn 13.28, u2 2.078, ET0 3.88.
    int code =
        run(
            "date,tmin,tmax,humidity_max,humidity_min,wind_km_per_h,sunshine\n"
                + "2015-07-06,12.3,21.5,84,63,10,9.25\n",
            "--latitude=50.8",
            "--elevation=100",
            "--wind-height=10");
    assertThat(code).isZero();
    String[] lines = out.toString().split("\n", -1);
    String[] heading = lines[0].split(",", -1);
    String[] row = lines[1].split(",", -1);
    assertThat(heading).hasSameSizeAs(row);
    assertCell(heading, row, "p_kpa", 100.1, 0.05);
    assertCell(heading, row, "gamma_kpa_per_c", 0.0666, 0.00005);
    assertCell(heading, row, "delta_kpa_per_c", 0.122, 0.0005);
    assertCell(heading, row, "es_kpa", 1.997, 0.001);
    assertCell(heading, row, "ea_kpa", 1.409, 0.001);
    assertCell(heading, row, "ra_mj_per_m2", 41.09, 0.01);
    assertCell(heading, row, "n_h", 16.1, 0.05);
    assertCell(heading, row, "rs_mj_per_m2", 22.07, 0.01);
    assertCell(heading, row, "rso_mj_per_m2", 30.90, 0.01);
    assertCell(heading, row, "rns_mj_per_m2", 17.00, 0.01);
    assertCell(heading, row, "rnl_mj_per_m2", 3.71, 0.005);
    assertCell(heading, row, "rn_mj_per_m2", 13.28, 0.01);
    assertCell(heading, row, "u2_m_per_s", 2.078, 0.001);
    assertCell(heading, row, "et0_mm", 3.88, 0.005);
    assertThat(lines[1]).endsWith(",penman-monteith,sunshine,relative-extremes,measured");
  }

  private static void assertCell(
      String[] heading, String[] row, String name, double expected, double tolerance) {
    int at = List.of(heading).indexOf(name);
    assertThat(at).as(name).isNotNegative();
    assertThat(Double.parseDouble(row[at]))
        .as(name)
        .isBetween(expected - tolerance, expected + tolerance);
  }

  @Test
  void printsTheMonthsOfBangkok() throws IOException {
    // FAO-56 (1998) Example 17 with the dew point of 2.85 kPa and March's mean of 29.2: 5.72.
    int code =
        run(
            "month,tmin,tmax,dew_point,wind,sunshine\n"
                + "3,24.2,34.2,23.2,2,8.5\n"
                + "4,25.6,34.8,23.213,2,8.5\n",
            "--latitude=13.73",
            "--elevation=2");
    assertThat(code).isZero();
    String[] lines = out.toString().split("\n", -1);
    assertThat(lines[0]).startsWith("month,tmean_c,");
    assertCell(lines[0].split(",", -1), lines[2].split(",", -1), "g_mj_per_m2", 0.14, 0.005);
    assertCell(lines[0].split(",", -1), lines[2].split(",", -1), "et0_mm", 5.72, 0.015);
  }

  @Test
  void refusesBadInputByLineAndColumn() throws IOException {
    int code = run("date,tmin,tmax\n2015-07-06,12.3,x\n", "--latitude=50.8", "--elevation=100");
    assertThat(code).isEqualTo(2);
    assertThat(failure.get())
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("weather.csv, line 2, column tmax");
    run("date,tmin,tmax\n2015-07-06,12.3,20\n", "--latitude=95", "--elevation=100");
    assertThat(failure.get())
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("latitude must lie between -90 and 90");
  }
}
