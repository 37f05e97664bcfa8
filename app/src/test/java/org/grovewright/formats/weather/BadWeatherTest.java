package org.grovewright.formats.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.model.Climate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Weather files as people really have them, wrong in one way each. */
class BadWeatherTest {
  @TempDir private Path folder;

  private FilledSeries read(String text) throws IOException {
    return WeatherFiles.days(Files.writeString(folder.resolve("w.csv"), text));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2027-03-01,5,15#2027-03-01,5,15|line 3, column date: is the same as on line 2",
        "2027-03-02,5,15#2027-03-01,5,15|line 3, column date: goes back before line 2",
        "2027-03-01,15,5|line 2, column tmin: is above tmax",
        "2027-02-29,5,15|\"2027-02-29\" is not a date of the calendar",
        "2027-02-29,5,15|for 2027 is no leap year; leave out the row",
        "2027-03-01,-999,15|line 2, column tmin: \"-999\" looks like the mark of a value that was not"
            + " measured; leave out the row",
        "2027-03-01,5,NaN|line 2, column tmax: \"NaN\" looks like the mark of a value",
        "2027-03-01,5,warm|line 2, column tmax: \"warm\" is not a number",
        "2027-03-01,41,77|line 2, column tmax: 77 is out of range",
        "2027-03-01,5,#2027-03-02,5,9|line 2, column tmax: is empty; leave out the row",
      })
  void isNamedByLineAndColumn(String rows, String message) {
    assertThatThrownBy(() -> read("date,tmin,tmax\n" + rows.replace('#', '\n') + "\n"))
        .isInstanceOf(WeatherFileException.class)
        .hasMessageContaining(message);
  }

  /** The owner reads the limits of a column in the unit that its heading names. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "tmin_f,tmax_f,rain|41,300,1|tmax_f: 300 is out of range; it must lie between -76 and 140"
            + " degrees Fahrenheit",
        "tmin,tmax,rain_mm|5,15,-5|rain_mm: -5 is out of range; it must lie between 0 and 3000 mm",
        "tmin,tmax,rain_in|5,15,500|it must lie between 0 and 118 in",
        "tmin,tmax,wind_km_per_h|5,15,900|it must lie between 0 and 216 km/h",
        "tmin,tmax,humidity|5,15,130|it must lie between 0 and 100 %",
        "tmin,tmax,solar|5,15,300|it must lie between 0 and 45 MJ/m2 a day",
      })
  void limitsAreToldInTheUnitOfTheColumn(String heading, String row, String message) {
    assertThatThrownBy(() -> read("date," + heading + "\n2027-03-01," + row + "\n"))
        .isInstanceOf(WeatherFileException.class)
        .hasMessageContaining(message);
  }

  /** What is wrong with a whole file is said once, not once a row. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "swapped|tmin is above tmax on 40 of 40 rows: the two columns are swapped",
        "reversed|39 of 40 rows go back in time, so the newest comes first; sort them by date",
        "disordered|6 of 40 rows stand behind rows of later days; sort the table by date",
        "unmeasured|8 of 40 rows have a mark such as -999 or NA where nothing was measured",
        "american|28 of 40 dates are not written as 2025-07-31",
        "fahrenheit|40 of 40 rows are hotter than any place on earth in degrees Celsius",
      })
  void isSaidOnceForAllRows(String guise, String message) {
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      LocalDate day = LocalDate.of(2027, 6, 1).plusDays(i);
      rows.add(
          switch (guise) {
            case "swapped" -> day + ",25,12";
            case "american" ->
                (i < 12 ? day : day.getMonthValue() + "/" + day.getDayOfMonth() + "/2027")
                    + ",12,25";
            case "fahrenheit" -> day + ",54,77";
            case "unmeasured" -> day + (i % 5 == 0 ? ",-9999.0,25" : ",12,25");
            default -> day + ",12,25";
          });
    }
    if (guise.equals("disordered")) {
      java.util.Collections.rotate(rows, -6);
    }
    if (guise.equals("reversed")) {
      java.util.Collections.reverse(rows);
    }
    assertThatThrownBy(() -> read("date,tmin,tmax\n" + String.join("\n", rows) + "\n"))
        .isInstanceOf(WeatherFileException.class)
        .hasMessage("%s: %s".formatted(folder.resolve("w.csv"), message) + rest(guise));
  }

  private static String rest(String guise) {
    return switch (guise) {
      case "swapped" -> "; exchange their names";
      case "unmeasured" ->
          "; leave out the rows that lack tmin or tmax, and leave other such cells empty";
      case "reversed", "disordered" -> ", oldest first";
      case "american" ->
          ", year, month and day; change their format in the spreadsheet and save it again";
      default -> "; if they are degrees Fahrenheit, name the columns tmin_f and tmax_f";
    };
  }

  @Test
  void missingDaysAreFilledAndCounted() throws IOException {
    FilledSeries series = read("date,tmin,tmax\n2028-02-27,4,14\n2028-03-01,10,20\n");
    assertThat(series.days()).extracting(d -> d.date()).contains(LocalDate.of(2028, 2, 29));
    assertThat(series.days()).hasSize(4);
    assertThat(series.days().get(1).tminC()).isEqualTo(6);
    assertThat(series.remarks()).isEqualTo("4 temperatures interpolated");
  }

  @Test
  void aLeapDayIsADay() throws IOException {
    assertThat(read("date,tmin,tmax\n2028-02-28,4,14\n2028-02-29,5,15\n2028-03-01,6,16\n").days())
        .hasSize(3);
  }

  /** A year of the northern example's normals, or of those of the south, in some other guise. */
  private static String year(Climate climate, Function<Double, Double> guise) {
    StringBuilder text = new StringBuilder("date,tmin,tmax\n");
    // The cold half of the year, in which degrees Fahrenheit pass for Celsius number by number.
    for (LocalDate day = LocalDate.of(2027, 1, 1); day.getMonthValue() < 3; day = day.plusDays(1)) {
      Climate.MonthNormal usual = climate.normals().get(day.getMonthValue() - 1);
      text.append(
          String.format(
              Locale.ROOT,
              "%s,%.1f,%.1f%n",
              day,
              guise.apply(usual.tminC()),
              guise.apply(usual.tmaxC())));
    }
    return text.toString();
  }

  private static Climate climate(String example) {
    return new DescriptionReader(CatalogueFiles.load().catalogue(), null)
        .read(Path.of("../examples", example))
        .climate();
  }

  @Test
  void fahrenheitInACelsiusColumnIsAskedAbout() throws IOException {
    Climate place = colder(climate("us-gravity.yaml"));
    FilledSeries series = read(year(place, c -> c * 1.8 + 32));
    assertThatThrownBy(() -> UsualTemperatures.check("w.csv", series.days(), place))
        .isInstanceOf(WeatherFileException.class)
        .hasMessageContaining("above what is usual")
        .hasMessageContaining("name the columns tmin_f and tmax_f");
    // Celsius in a Fahrenheit column.
    FilledSeries colder = read(year(place, c -> c).replace("tmin,tmax", "tmin_f,tmax_f"));
    assertThatThrownBy(() -> UsualTemperatures.check("w.csv", colder.days(), place))
        .hasMessageContaining("below what is usual")
        .hasMessageContaining("tmin_c and tmax_c");
  }

  /** The same place 12 degrees colder. */
  private static Climate colder(Climate climate) {
    return new Climate(
        climate.normals().stream()
            .map(
                m ->
                    new Climate.MonthNormal(
                        m.month(),
                        m.tminC() - 12,
                        m.tmaxC() - 12,
                        m.relativeHumidity(),
                        m.dewPointC(),
                        m.windMPerS(),
                        m.solarWPerM2(),
                        m.sunshineHours(),
                        m.rainM()))
            .toList(),
        climate.daily(),
        climate.windHeightM(),
        climate.source());
  }

  @Test
  void aSouthernYearIsUsualInTheSouth() throws IOException {
    Climate south = climate("demo.yaml");
    FilledSeries january = read(year(south, c -> c + 3));
    assertThatCode(() -> UsualTemperatures.check("w.csv", january.days(), south))
        .doesNotThrowAnyException();
  }

  @Test
  void seasonsOfTheOtherHalfOfTheEarthAreAskedAbout() throws IOException {
    Climate place = climate("us-gravity.yaml");
    StringBuilder turned = new StringBuilder("date,tmin,tmax\n");
    StringBuilder right = new StringBuilder("date,tmin,tmax\n");
    for (LocalDate day = LocalDate.of(2027, 1, 1); day.getYear() == 2027; day = day.plusDays(1)) {
      for (int shift : new int[] {0, 6}) {
        Climate.MonthNormal usual = place.normals().get((day.getMonthValue() - 1 + shift) % 12);
        (shift == 0 ? right : turned)
            .append(
                String.format(Locale.ROOT, "%s,%.1f,%.1f%n", day, usual.tminC(), usual.tmaxC()));
      }
    }
    FilledSeries other = read(turned.toString());
    assertThatThrownBy(() -> UsualTemperatures.check("w.csv", other.days(), place))
        .isInstanceOf(WeatherFileException.class)
        .hasMessageContaining("its warm months are the cold ones of the grove");
    FilledSeries own = read(right.toString());
    assertThatCode(() -> UsualTemperatures.check("w.csv", own.days(), place))
        .doesNotThrowAnyException();
  }
}
