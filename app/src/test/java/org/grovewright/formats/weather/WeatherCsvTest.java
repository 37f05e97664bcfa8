package org.grovewright.formats.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.model.Climate;
import org.grovewright.water.Air;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WeatherCsvTest {
  private static WeatherTable read(String... lines) {
    try {
      return WeatherCsv.read("w.csv", new StringReader(String.join("\n", lines)));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void readsDaysInWhateverUnitsTheHeadingSays() {
    WeatherTable table =
        read(
            "# station on the roof",
            "Date, TMIN_F, tmax-f, Humidity max, humidity_min, wind_km_per_h, rain_in, solar, notes",
            "2025-07-06,54.14,70.7,84,63,10,0.5,22.07,fine",
            "2025-07-07,50,68,,,,,,");
    assertThat(table.monthly()).isFalse();
    assertThat(table.ignored()).containsExactly("notes");
    WeatherTable.Row row = table.rows().get(0);
    assertThat(row.line()).isEqualTo(3);
    assertThat(row.date()).isEqualTo(LocalDate.of(2025, 7, 6));
    // Conversions by definition: 32 F is 0 C, an inch is 25.4 mm, a day 86 400 s.
    assertThat(row.weather().tminC()).isCloseTo(12.3, within(1e-9));
    assertThat(row.weather().tmaxC()).isCloseTo(21.5, within(1e-9));
    assertThat(row.weather().humidity().relativeMax()).hasValue(0.84);
    assertThat(row.weather().windMPerS().getAsDouble()).isCloseTo(2.7778, within(1e-4));
    assertThat(row.rainM().getAsDouble()).isCloseTo(0.0127, within(1e-12));
    assertThat(row.weather().solarWPerM2().getAsDouble()).isCloseTo(255.4, within(0.1));
    assertThat(table.rows().get(1).weather().windMPerS()).isEmpty();
  }

  @Test
  void namesEveryFaultByLineAndColumn() {
    assertThatThrownBy(
            () ->
                read(
                    "date,tmin,tmax,humidity",
                    "2025-02-29,1,9,50",
                    "2025-03-01,one,9,50",
                    "2025-03-02,1,\"9,5\",50",
                    "2025-03-03,1,9,150",
                    "2025-03-04,12,9,50",
                    "2025-03-05,,9,50",
                    "2025-03-06,1,9",
                    "2025-03-07,1,9,50",
                    "2025-03-07,1,9,50",
                    "2025-03-06,1,9,50",
                    "2025-03-08,55,90,50"))
        .isInstanceOf(WeatherFileException.class)
        .hasMessageContaining("w.csv, line 2, column date: \"2025-02-29\" is not a date")
        .hasMessageContaining("line 3, column tmin: \"one\" is not a number")
        .hasMessageContaining("line 4, column tmax: \"9,5\" is not a number; write decimals with a")
        .hasMessageContaining("line 5, column humidity: 150 is out of range")
        .hasMessageContaining("line 6, column tmin: is above tmax")
        .hasMessageContaining("line 7, column tmin: is empty")
        .hasMessageContaining("line 8: has 3 cells, but the heading has 4")
        .hasMessageContaining("line 10, column date: is the same as on line 9")
        .hasMessageContaining("line 11, column date: goes back before line 9")
        .hasMessageContaining("line 12, column tmax: 90 is out of range")
        .hasMessageContaining("name the column tmax_f");
  }

  @Test
  void saysWhatTheHeadingLacks() {
    assertThatThrownBy(() -> read("tmin,tmax", "1,2")).hasMessageContaining("date (rows are days)");
    assertThatThrownBy(() -> read("date,month,tmin,tmax")).hasMessageContaining("both");
    assertThatThrownBy(() -> read("date;tmin;t,max", "2025-01-01;1;2"))
        .hasMessageContaining("comma separated, or all by semicolons");
    assertThatThrownBy(() -> read("date,tmin", "2025-01-01,1"))
        .hasMessageContaining("no column tmax");
    assertThatThrownBy(() -> read("date,tmin,tmin_f,tmax")).hasMessageContaining("says the same");
    assertThatThrownBy(() -> read("")).hasMessageContaining("is empty");
    assertThatThrownBy(() -> read("date,tmin,tmax")).hasMessageContaining("no rows");
  }

  /** As a spreadsheet saves it in the countries that write a decimal comma; no outside source. */
  @Test
  void readsSemicolonsAndDecimalCommas() {
    String[] rows = {"2025-01-01;-1,5;9;12,7", "2025-01-02;2;10,25;0"};
    WeatherTable table = read("# typed in, by hand", "", "date;tmin;tmax;rain", rows[0], rows[1]);
    assertThat(table.rows()).hasSize(2);
    assertThat(table.rows().get(0).weather().tminC()).isEqualTo(-1.5);
    assertThat(table.rows().get(0).rainM().getAsDouble()).isCloseTo(0.0127, within(1e-12));
    assertThat(table.rows().get(1).weather().tmaxC()).isEqualTo(10.25);
    // Points are as good, but with both marks one may part thousands.
    assertThat(read("date;tmin;tmax", "2025-01-01;1.5;9").rows()).hasSize(1);
    assertThatThrownBy(() -> read("date;tmin;tmax;rain", rows[0], "2025-01-02;2;10;1.234"))
        .hasMessageContaining("line 3, column rain: \"1.234\" has another decimal mark");
  }

  @Test
  void saysWhenTheFileIsNotThere(@TempDir Path folder) throws IOException {
    assertThatThrownBy(() -> WeatherCsv.read(folder.resolve("none.csv")))
        .isInstanceOf(WeatherFileException.class)
        .hasMessageContaining("there is no such file");
    Path latin = folder.resolve("latin.csv");
    Files.write(latin, new byte[] {'d', 'a', 't', 'e', (byte) 0xE9, '\n'});
    assertThatThrownBy(() -> WeatherCsv.read(latin)).hasMessageContaining("UTF-8");
  }

  @Test
  void averagesDaysIntoMonths() {
    StringBuilder text = new StringBuilder("date,tmin,tmax,humidity_max,humidity_min,rain\n");
    for (LocalDate day = LocalDate.of(2023, 1, 1);
        day.isBefore(LocalDate.of(2025, 1, 1));
        day = day.plusDays(1)) {
      int month = day.getMonthValue();
      text.append(day)
          .append(',')
          .append(month)
          .append(',')
          .append(month + (day.getDayOfMonth() % 2 == 0 ? 12 : 10))
          .append(",80,40,2\n");
    }
    Climate climate = climate(text.toString());
    assertThat(climate.daily()).hasSize(731);
    assertThat(climate.normals().get(3).tminC()).isCloseTo(4, within(1e-12));
    assertThat(climate.normals().get(3).tmaxC()).isCloseTo(15, within(1e-12));
    // 2 mm a day through April.
    assertThat(climate.normals().get(3).rainM().getAsDouble()).isCloseTo(0.060, within(1e-12));
    // FAO-56 equation 17, kept as a dew point.
    Climate.DayWeather first = climate.daily().get(0);
    double vapour = (Air.saturationKPa(1) * 0.8 + Air.saturationKPa(11) * 0.4) / 2;
    assertThat(Air.saturationKPa(first.dewPointC().getAsDouble())).isCloseTo(vapour, within(1e-12));
    assertThat(first.relativeHumidity()).isEmpty();
  }

  private static Climate climate(String text) {
    FilledSeries series = new FilledSeries(ClimateOfDays.days(read(text)), 0, 0, 0, 0, 0, 0);
    return ClimateOfDays.of("w.csv", series, 2, "invented");
  }

  @Test
  void wantsAllTwelveMonths() {
    assertThatThrownBy(() -> climate("date,tmin,tmax\n2025-01-01,2,9\n2025-02-01,3,9"))
        .hasMessageContaining("month 3")
        .hasMessageContaining("month 12");
  }

  @Test
  void seesFahrenheitInACelsiusColumn() {
    assertThatThrownBy(() -> read("date,tmin,tmax", "2025-07-01,48,59", "2025-07-02,47,58"))
        .hasMessageContaining("column tmin and tmax")
        .hasMessageContaining("tmin_f and tmax_f");
  }

  @Test
  void tellsADescriptionWhatIsWrongWithItsWeather(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("days.csv");
    Files.writeString(file, "date,tmin,tmax\n2025-01-01,1,x\n");
    assertThatThrownBy(() -> new WeatherOfDescription().read(file, 2, "invented"))
        .isInstanceOf(DescriptionException.class)
        .hasMessageContaining("days.csv:2:1: tmax: \"x\" is not a number");
  }
}
