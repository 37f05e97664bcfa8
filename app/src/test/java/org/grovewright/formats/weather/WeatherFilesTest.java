package org.grovewright.formats.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.zip.GZIPOutputStream;
import org.grovewright.model.Climate.DayWeather;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Layouts after the readme files of GHCN-Daily: by-station CSV as read, fixed width from memory.
 * The station and its values are invented.
 */
class WeatherFilesTest {
  private static final String ID = "XXE00000001";

  @TempDir private Path folder;

  private FilledSeries read(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.writeString(file, text);
    return WeatherFiles.days(file);
  }

  private static String element(LocalDate day, String element, int value, String quality) {
    return String.format(
        Locale.ROOT,
        "%s,%04d%02d%02d,%s,%d,,%s,E,0700%n",
        ID,
        day.getYear(),
        day.getMonthValue(),
        day.getDayOfMonth(),
        element,
        value,
        quality);
  }

  private static String fixed(String month, String element, int[] values, String quality) {
    StringBuilder line = new StringBuilder(ID).append(month).append(element);
    for (int day = 0; day < 31; day++) {
      int value = day < values.length ? values[day] : -9999;
      line.append(String.format(Locale.ROOT, "%5d %sE", value, day == 1 ? quality : " "));
    }
    return line.append('\n').toString();
  }

  @Test
  void readsTheFixedWidthLayout() throws IOException {
    FilledSeries series =
        read(
            ID + ".dly",
            fixed("202401", "TMAX", new int[] {100, 999, 140, 121}, "X")
                + fixed("202401", "TMIN", new int[] {-25, 10, 20, 31}, " ")
                + fixed("202401", "PRCP", new int[] {0, 254, 3, 12}, " ")
                + fixed("202401", "SNOW", new int[] {0, 5, 0, 0}, " "));
    assertThat(series.days()).hasSize(4);
    DayWeather first = series.days().get(0);
    assertThat(first.date()).isEqualTo(LocalDate.of(2024, 1, 1));
    assertThat(first.tmaxC()).isCloseTo(10, within(1e-9));
    assertThat(first.tminC()).isCloseTo(-2.5, within(1e-9));
    assertThat(series.days().get(1).rainM().getAsDouble()).isCloseTo(0.0254, within(1e-12));
    // The second day's 99.9 degrees failed the network's check: left out and bridged.
    assertThat(series.days().get(1).tmaxC()).isCloseTo(12, within(1e-9));
    assertThat(series.leftOut()).isEqualTo(1);
    assertThat(series.interpolated()).isEqualTo(1);
    assertThat(series.remarks())
        .isEqualTo("1 value marked as wrong by the station left out, 1 temperature interpolated");
  }

  /**
   * A download that broke off; the layout is NOAA's readme of the .dly files, a day in 8 places.
   */
  @Test
  void tellsOfLinesThatAreCutOff() throws IOException {
    String low = fixed("202401", "TMIN", new int[] {-25, 10, 20, 31, 40}, " ");
    String snow = fixed("202401", "SNOW", new int[] {0}, " ").substring(0, 60) + "\n";
    String high = fixed("202401", "TMAX", new int[] {100, 110, 140, 121, 130}, " ");
    // Of the fourth day only the first places are left.
    FilledSeries series = read(ID + ".dly", low + snow + high.substring(0, 21 + 3 * 8 + 4));
    assertThat(series.days()).hasSize(3);
    assertThat(series.cutOff()).isEqualTo(28);
    assertThat(series.remarks()).contains("28 values missing where lines of the file are cut off");
    assertThat(read("w.dly", low + high).cutOff()).isZero();
  }

  @Test
  void readsTheByStationLayoutPackedOrNot() throws IOException {
    StringBuilder text = new StringBuilder();
    for (LocalDate day = LocalDate.of(2020, 2, 27);
        day.getMonthValue() < 4;
        day = day.plusDays(1)) {
      text.append(element(day, "TMAX", 150 + day.getDayOfMonth(), ""));
      text.append(element(day, "TMIN", 50 + day.getDayOfMonth(), ""));
      text.append(element(day, "PRCP", 12, day.getDayOfMonth() == 9 ? "G" : ""));
      text.append(element(day, "AWND", 31, ""));
      text.append(element(day, "TSUN", 450, ""));
    }
    FilledSeries series = read(ID + ".csv", text.toString());
    assertThat(series.days()).hasSize(34);
    assertThat(series.days().get(2).date()).isEqualTo(LocalDate.of(2020, 2, 29));
    assertThat(series.days().get(2).tmaxC()).isCloseTo(17.9, within(1e-9));
    assertThat(series.days().get(2).windMPerS().getAsDouble()).isCloseTo(3.1, within(1e-9));
    assertThat(series.days().get(2).sunshineHours().getAsDouble()).isCloseTo(7.5, within(1e-9));
    // The flagged rain of the one year that there is cannot be borrowed from another.
    assertThat(series.days().get(11).rainM()).isEmpty();
    assertThat(series.leftOut()).isEqualTo(1);

    Path packed = folder.resolve(ID + ".csv.gz");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
      out.write(text.toString().getBytes(StandardCharsets.UTF_8));
    }
    assertThat(WeatherFiles.days(packed)).isEqualTo(series);
  }

  @Test
  void longHolesTakeTheSameDaysOfTheNearestYear() throws IOException {
    StringBuilder text = new StringBuilder("date,tmin,tmax,rain\n");
    for (LocalDate day = LocalDate.of(2018, 1, 1); day.getYear() < 2022; day = day.plusDays(1)) {
      boolean hole = day.getYear() == 2020 && day.getMonthValue() >= 2 && day.getMonthValue() <= 4;
      if (!hole) {
        int year = day.getYear() - 2018;
        text.append(day).append(',').append(5 + year).append(',').append(15 + year).append(',');
        text.append(day.getDayOfMonth() == 28 ? 30 + year : 0).append('\n');
      }
    }
    FilledSeries series = read("days.csv", text.toString());
    assertThat(series.days()).hasSize(365 * 4 + 1);
    DayWeather leap = series.days().get(365 * 2 + 31 + 28);
    assertThat(leap.date()).isEqualTo(LocalDate.of(2020, 2, 29));
    // 2019 is as near as 2021 and comes first; its 28 February stands for the leap day.
    assertThat(leap.tminC()).isEqualTo(6);
    assertThat(leap.rainM().getAsDouble()).isCloseTo(0.031, within(1e-12));
    assertThat(series.borrowed()).isEqualTo(2 * 90);
    assertThat(series.rainBorrowed()).isEqualTo(90);
    assertThat(series.remarks())
        .isEqualTo(
            "180 temperatures taken from the nearest year, 90 days of rain taken from the nearest"
                + " year");
  }

  @Test
  void swappedTemperaturesOfAStationAreTurnedRound() throws IOException {
    LocalDate day = LocalDate.of(2020, 6, 1);
    FilledSeries series =
        read(ID + ".csv", element(day, "TMAX", 90, "") + element(day, "TMIN", 210, ""));
    assertThat(series.swapped()).isEqualTo(1);
    assertThat(series.days().get(0).tminC()).isCloseTo(9, within(1e-9));
    assertThat(series.days().get(0).tmaxC()).isCloseTo(21, within(1e-9));
  }

  @Test
  void saysWhatCannotBeUsed() {
    LocalDate day = LocalDate.of(2020, 6, 1);
    String good = element(day, "TMAX", 210, "") + element(day, "TMIN", 90, "");
    assertThatThrownBy(() -> read("a.csv", good + good.replace(ID, "XXE00000002")))
        .hasMessageContaining("line 3: is of station XXE00000002");
    assertThatThrownBy(() -> read("b.csv", good + "what is this\n"))
        .hasMessageContaining("line 3: is not a line of a GHCN-Daily record");
    assertThatThrownBy(() -> read("c.csv", element(day, "TMAX", 210, "")))
        .hasMessageContaining("no day with both");
    assertThatThrownBy(
            () ->
                read(
                    "d.csv",
                    good
                        + element(day.plusDays(30), "TMAX", 1, "")
                        + element(day.plusDays(30), "TMIN", 0, "")))
        .hasMessageContaining("2020-06-02 to 2020-06-30")
        .hasMessageContaining("no other year");
    assertThatThrownBy(() -> read("e.csv", good + good.replace("20200601", "20200631")))
        .hasMessageContaining("20200631 is not a date");
  }
}
