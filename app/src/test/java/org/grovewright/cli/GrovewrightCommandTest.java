package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GrovewrightCommandTest {
  private static final Locale LOCALE = Locale.getDefault();
  private static final TimeZone ZONE = TimeZone.getDefault();

  @TempDir private static Path shared;
  private static Path grove;
  private static Map<String, String> reference;

  @TempDir private Path folder;

  @BeforeAll
  static void planOnce() throws IOException {
    try (InputStream in =
        GrovewrightCommandTest.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      grove = shared.resolve("my grove.yaml");
      Files.write(grove, in.readAllBytes());
    }
    CommandLineRun.of("plan", grove.toString(), "--out", shared.resolve("plan").toString());
    reference = sheets(shared.resolve("plan"));
  }

  @AfterEach
  void restore() {
    Locale.setDefault(LOCALE);
    TimeZone.setDefault(ZONE);
  }

  private static Map<String, String> sheets(Path folder) throws IOException {
    Map<String, String> sheets = new TreeMap<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        sheets.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    return sheets;
  }

  @Test
  void helpShowsWhatThereIs() {
    CommandLineRun run = CommandLineRun.of("--help");
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("serve", "demo", "plan", "explain", "Exit codes");
    assertThat(run.err()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "demo",
        "new",
        "check",
        "plan",
        "explain",
        "network",
        "catalogue",
        "et0",
        "balance"
      })
  void everyCommandHasHelp(String command) {
    CommandLineRun run = CommandLineRun.of(command, "--help");
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("Usage: grovewright " + command);
    assertThat(run.err()).isEmpty();
  }

  @Test
  void aMistypedCommandIsBadInputWithAHint() {
    CommandLineRun run = CommandLineRun.of("plam");
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("plan");
  }

  @Test
  void aMissingFileIsBadInput() {
    CommandLineRun run = CommandLineRun.of("plan", folder.resolve("none.yaml").toString());
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("none.yaml").contains("no such file");
  }

  @Test
  void aFaultyFileIsBadInputAndNothingIsWritten() throws IOException {
    Path bad = Files.writeString(folder.resolve("bad.yaml"), "site: {name: x, latitude: 700}\n");
    Path out = folder.resolve("out");
    CommandLineRun run = CommandLineRun.of("plan", bad.toString(), "--out", out.toString());
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("bad.yaml:1:").contains("latitude").doesNotContain("\tat ");
    assertThat(out).doesNotExist();
  }

  @Test
  void theDemoWritesAllSheetsAndPrintsOnlyTheirPaths() throws IOException {
    Path out = folder.resolve("demo");
    CommandLineRun run = CommandLineRun.of("demo", "--out", out.toString());
    List<String> names =
        List.of(
            "report.html", "map.svg", "plan.json", "shopping.csv", "watering.csv", "calendar.ics");
    assertThat(run.out().lines())
        .containsExactlyElementsOf(names.stream().map(n -> out.resolve(n).toString()).toList());
    assertThat(sheets(out)).containsOnlyKeys(names).isEqualTo(reference);
  }

  /** The exit code and the words must agree with the findings in the data. */
  @Test
  void theExitCodeTellsWhetherThePlanFallsShort() throws IOException {
    CommandLineRun run = CommandLineRun.of("plan", grove.toString(), "--json");
    JsonNode plan = new ObjectMapper().readTree(run.out());
    long shortfalls =
        plan.get("findings").findValuesAsText("severity").stream()
            .filter("shortfall"::equals)
            .count();
    assertThat(run.code()).isEqualTo(shortfalls == 0 ? ExitCode.OK : ExitCode.FALLS_SHORT);
    assertThat(plan.get("fallsShort").asBoolean()).isEqualTo(shortfalls > 0);
    assertThat(run.err().lines().filter(line -> line.startsWith("  - "))).hasSize((int) shortfalls);
  }

  /** A supply that gives almost nothing cannot be planned well, and the plan must say so. */
  @Test
  void aPlanThatFallsShortSaysSo() throws IOException {
    String text = Files.readString(grove, StandardCharsets.UTF_8);
    assertThat(text).contains("people: 2");
    Path slow = folder.resolve("slow.yaml");
    Files.writeString(slow, text.replaceAll("hours: \\{[^}]*\\}", "hours: {Sat: 09:00-09:30}"));
    CommandLineRun run =
        CommandLineRun.of("plan", slow.toString(), "--out", folder.resolve("o").toString());
    assertThat(run.code()).isEqualTo(ExitCode.FALLS_SHORT);
    assertThat(run.err()).contains("falls short").contains("  - ");
  }

  @Test
  void jsonIsTheSameAsTheSheet() {
    assertThat(CommandLineRun.of("plan", grove.toString(), "--json").out())
        .isEqualTo(reference.get("plan.json"));
  }

  @Test
  void aFolderWithOtherFilesIsRefused() throws IOException {
    Path mine = Files.writeString(folder.resolve("letter.txt"), "mine");
    CommandLineRun run = CommandLineRun.of("plan", grove.toString(), "--out", folder.toString());
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(run.err()).contains("letter.txt").contains("--force");
    assertThat(mine).hasContent("mine");
    assertThat(sheets(folder)).containsOnlyKeys("letter.txt");
  }

  @ParameterizedTest
  @CsvSource({"tr-TR, Pacific/Kiritimati", "ar-EG, America/St_Johns", "th-TH-u-ca-buddhist, UTC"})
  void sheetsAreTheSameWhereverTheReaderLives(String locale, String zone) throws IOException {
    Locale.setDefault(Locale.forLanguageTag(locale));
    TimeZone.setDefault(TimeZone.getTimeZone(zone));
    Path out = folder.resolve("elsewhere");
    CommandLineRun.of("plan", grove.toString(), "--out", out.toString());
    Map<String, String> here = sheets(out);
    assertThat(here.keySet()).isEqualTo(reference.keySet());
    here.forEach((name, text) -> assertThat(text.equals(reference.get(name))).as(name).isTrue());
  }

  @Test
  void explainFollowsAFigureToWhereItBegan() {
    CommandLineRun run = CommandLineRun.of("explain", grove.toString(), "buy.total.cost");
    assertThat(run.code()).isZero();
    assertThat(run.out()).startsWith("buy.total.cost\n").contains("\n        buy.", "formula:");
    assertThat(run.err()).doesNotContain("formula");
  }

  @Test
  void explainListsAllFigures() {
    CommandLineRun run = CommandLineRun.of("explain", grove.toString());
    assertThat(run.out().lines().anyMatch(line -> line.startsWith("work.total.person-time\t")))
        .isTrue();
    assertThat(run.out().lines()).allMatch(line -> line.split("\t").length == 3);
  }

  @Test
  void anUnknownFigureBringsUpNearOnes() {
    CommandLineRun run = CommandLineRun.of("explain", grove.toString(), "buy.totl.cost");
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("buy.total.cost");
  }

  /** What flows out of the emitters of a zone is what flows through its first link. */
  @Test
  void theNetworkKeepsItsWater() {
    CommandLineRun run = CommandLineRun.of("network", grove.toString());
    assertThat(run.code()).isZero();
    double out = 0;
    double through = 0;
    String zone = null;
    for (String line : run.out().lines().skip(1).toList()) {
      String[] cells = line.split(",", -1);
      assertThat(cells).hasSize(11);
      zone = zone == null ? cells[0] : zone;
      if (!cells[0].equals(zone)) {
        continue;
      }
      if (cells[1].equals("node")) {
        out += Math.max(0, Double.parseDouble(cells[8]));
      } else if (cells[3].equals("supply")) {
        through += Double.parseDouble(cells[9]);
      }
    }
    assertThat(through).isPositive();
    assertThat(out).isCloseTo(through, org.assertj.core.data.Offset.offset(1e-3));
  }
}
