package org.grovewright.formats.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.StringReader;
import java.time.LocalDate;
import java.util.List;
import org.grovewright.advice.WaterLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaterLogCsvTest {
  private static final List<String> ZONES = List.of("zone-1", "zone-2");

  private static WaterLog read(String text) throws IOException {
    return WaterLogCsv.read("log.csv", new StringReader(text), ZONES);
  }

  @Test
  void readsEveryKindOfNote() throws IOException {
    WaterLog log =
        read(
            """
            # what we did
            Date,Zone,Minutes,Gallons,Rain_in,Note
            2027-07-03,zone-1,45,,,"hot, windy"
            2027-07-04,ZONE-2,,100,,
            2027-07-05/2027-07-07,all,skipped,,,away
            2027-07-12,,,,0.5,
            """);
    assertThat(log.runs())
        .containsExactly(
            WaterLog.Run.timed(LocalDate.of(2027, 7, 3), "zone-1", 2700),
            // A US gallon is 231 cubic inches of 0.0254 m.
            WaterLog.Run.metered(
                LocalDate.of(2027, 7, 4), "zone-2", log.runs().get(1).volumeM3().getAsDouble()),
            WaterLog.Run.skipped(LocalDate.of(2027, 7, 5), ""),
            WaterLog.Run.skipped(LocalDate.of(2027, 7, 6), ""),
            WaterLog.Run.skipped(LocalDate.of(2027, 7, 7), ""));
    assertThat(log.runs().get(1).volumeM3().getAsDouble())
        .isCloseTo(100 * 231 * Math.pow(0.0254, 3), within(1e-12));
    assertThat(log.gaugeM().get(LocalDate.of(2027, 7, 12))).isCloseTo(0.0127, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "date,zone,mintues|x|mintues: is no column",
        "zone,minutes|zone-1,4|no column date",
        "date,zone,minutes|2027-02-30,zone-1,4|is no date",
        "date,zone,minutes|2027-07-05/2027-07-01,zone-1,4|ends before it begins",
        "date,zone,minutes|2027-07-05,zone-9,4|none of the zones, which are zone-1, zone-2",
        "date,zone,minutes|2027-07-05,zone-1,-4|must be a number from 0 to 1440, or the word skipped",
        "date,zone,minutes|2027-07-05,zone-1,|says neither",
        "date,zone,minutes|2027-07-05,zone-1|has 2 cells",
        "date,minutes,litres|2027-07-05,skipped,40|says skipped, but",
        "date,litres,gallons|2027-07-05,5,5|give one of them",
        "date,rain_mm|2027-07-01/2027-07-03,30|each day in a row of its own",
        "date,litres|2027-07-01/2027-07-03,30|each day in a row of its own",
        "date,minutes|2020-07-01/2027-07-03,30|more than a year",
        "date,rain|2027-07-01,5000|from 0 to 2000",
      })
  void faultsAreNamed(String heading, String row, String message) {
    assertThatThrownBy(() -> read(heading + "\n" + row + "\n"))
        .isInstanceOf(WeatherFileException.class)
        .hasMessageStartingWith("log.csv")
        .hasMessageContaining(message);
  }

  /** As a spreadsheet saves it in the countries that write a decimal comma; no outside source. */
  @Test
  void readsSemicolonsAndDecimalCommas() throws IOException {
    WaterLog log = read("date;zone;litres;rain_mm\n2027-07-01;;12,5;\n2027-07-02;;;6,4\n");
    assertThat(log.runs().get(0).volumeM3().getAsDouble()).isCloseTo(0.0125, within(1e-12));
    assertThat(log.gaugeM().get(java.time.LocalDate.of(2027, 7, 2)))
        .isCloseTo(0.0064, within(1e-12));
  }

  @Test
  void twoReadingsOfOneDayAreAskedAbout() {
    assertThatThrownBy(() -> read("date,rain\n2027-07-01,5\n2027-07-01,6\n"))
        .hasMessageContaining("line 3")
        .hasMessageContaining("already on line 2");
    assertThatThrownBy(() -> read("")).hasMessageContaining("is empty");
  }
}
