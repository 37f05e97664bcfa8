package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TodayCommandTest {
  private static final String GROVE = "../examples/us-gravity.yaml";

  @TempDir private Path folder;
  private Path weather;
  private Path log;
  private Path picture;

  @BeforeEach
  void writeFiles() throws IOException {
    StringBuilder days = new StringBuilder("date,tmin_f,tmax_f,rain_in\n");
    for (LocalDate day = LocalDate.of(2027, 4, 1);
        day.isBefore(LocalDate.of(2027, 7, 12));
        day = day.plusDays(1)) {
      days.append(day).append(",58,91,0\n");
    }
    weather = Files.writeString(folder.resolve("days.csv"), days);
    log =
        Files.writeString(
            folder.resolve("log.csv"),
            "date,zone,minutes,rain_in\n2027-07-05/2027-07-11,,skipped,\n");
    picture = folder.resolve("p.svg");
  }

  private CommandLineRun today(String... more) {
    String[] words = {
      "today",
      GROVE,
      "--weather",
      weather.toString(),
      "--log",
      log.toString(),
      "--picture",
      picture.toString()
    };
    String[] all = java.util.Arrays.copyOf(words, words.length + more.length);
    System.arraycopy(more, 0, all, words.length, more.length);
    return CommandLineRun.of(all);
  }

  @Test
  void oneLineAndOnePicture() throws Exception {
    CommandLineRun run = today("--date", "2027-07-12");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out())
        .startsWith("Monday 12 July 2027: water zone 1 for ")
        .contains("Water zone 2 for ", " gal)", "Look at ", "too dry for ")
        .endsWith(".\n");
    assertThat(run.out().lines()).hasSize(1);
    assertThat(run.err()).contains("are taken to have run as the timer card says");
    String svg = Files.readString(picture);
    assertThat(svg).startsWith("<svg").contains(">today</text>", "begins to suffer");
    javax.xml.parsers.DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(picture.toFile());
  }

  @Test
  void anUnknownFigureIsRefusedBeforeAnythingIsSaid() {
    CommandLineRun run = today("--date", "2027-07-12", "--explain", "advice.zone.zone-9.wanted");
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("--explain: this advice has no figure").contains("zone-9");
    assertThat(run.err().lines().filter(line -> !line.startsWith("note: "))).hasSize(1);
    assertThat(picture).doesNotExist();
  }

  @Test
  void zonesAreCalledByTheirPlainNames() {
    CommandLineRun run = today("--date", "2027-07-12");
    assertThat(run.out() + run.err()).contains("watering of zone ").doesNotContain("zone zone-");
  }

  @Test
  void whatIsWrongIsSaidInOneSentence() throws IOException {
    CommandLineRun date = today("--date", "2027-02-30");
    assertThat(date.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(date.err()).contains("--date", "2027-02-30");

    Files.writeString(log, "date,zone,minutes\n2027-07-05,zone-7,10\n");
    CommandLineRun zone = today("--date", "2027-07-12");
    assertThat(zone.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(zone.err()).contains("log.csv, line 2, column zone", "zone-7", "zone-1, zone-2");

    CommandLineRun none = CommandLineRun.of("today", GROVE, "--date", "2027-07-12");
    assertThat(none.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(none.err()).contains("--weather");

    Files.delete(log);
    Files.writeString(log, "date,minutes\n2027-07-05,10\n");
    CommandLineRun early = today("--date", "2026-01-01");
    assertThat(early.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(early.err()).contains("begins on 2027-04-01");
  }
}
