package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Climate.MonthNormal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The drawn weather against the normals and relations it is drawn from. */
class WeatherGeneratorTest {
  private static final int YEARS = 400;
  private static final Climate NORMALS = TestGroves.drySummer();
  private static final List<DayWeather> DAYS =
      WeatherGenerator.days(NORMALS, TestCatalogue.of(), 2001, YEARS, 42);

  private static List<DayWeather> month(int month) {
    return DAYS.stream().filter(day -> day.date().getMonthValue() == month).toList();
  }

  @Test
  void keepsTheMonthlyMeans() {
    for (MonthNormal normal : NORMALS.normals()) {
      List<DayWeather> days = month(normal.month());
      double tmin = days.stream().mapToDouble(DayWeather::tminC).average().orElseThrow();
      double tmax = days.stream().mapToDouble(DayWeather::tmaxC).average().orElseThrow();
      // 3 degrees with memory 0.65 over 400 months: a standard error of about 0.06 degrees.
      assertThat(tmin).isCloseTo(normal.tminC(), within(0.25));
      assertThat(tmax).isCloseTo(normal.tmaxC(), within(0.25));
      double[] totals = new double[YEARS];
      for (DayWeather day : days) {
        totals[day.date().getYear() - 2001] += day.rainM().getAsDouble() * 1000;
      }
      double mean = Arrays.stream(totals).average().orElseThrow();
      double variance =
          Arrays.stream(totals).map(mm -> (mm - mean) * (mm - mean)).average().orElseThrow();
      // Three standard errors of the mean of the years drawn.
      assertThat(mean)
          .as("month %s", normal.month())
          .isCloseTo(
              normal.rainM().getAsDouble() * 1000, within(1e-9 + 3 * Math.sqrt(variance / YEARS)));
    }
  }

  @Test
  void temperaturesSpreadAndRememberAsAsked() {
    double[] off =
        DAYS.stream()
            .mapToDouble(
                d -> d.tmaxC() - NORMALS.normals().get(d.date().getMonthValue() - 1).tmaxC())
            .toArray();
    double squares = 0;
    double lagged = 0;
    for (int i = 1; i < off.length; i++) {
      squares += off[i] * off[i];
      lagged += off[i] * off[i - 1];
    }
    assertThat(Math.sqrt(squares / off.length)).isCloseTo(3, within(0.05));
    assertThat(lagged / squares).isCloseTo(0.65, within(0.01));
  }

  @Test
  void rainComesOnAsManyDaysAndInSpellsAsTheChainSays() {
    // January has 80 mm at 8 mm a wet day: 10 days of 31. Geng and others (1986): 0.75 f after a
    // dry
    // day, 0.25 more after a wet one.
    List<DayWeather> days = month(1);
    int wet = 0;
    int wetAfterWet = 0;
    int wetBefore = 0;
    for (int i = 1; i < days.size(); i++) {
      boolean today = days.get(i).rainM().getAsDouble() > 0;
      boolean yesterday = days.get(i - 1).rainM().getAsDouble() > 0;
      boolean sameMonth = days.get(i).date().getDayOfMonth() > 1;
      wet += today ? 1 : 0;
      wetBefore += yesterday && sameMonth ? 1 : 0;
      wetAfterWet += yesterday && today && sameMonth ? 1 : 0;
    }
    double share = 10.0 / 31;
    assertThat((double) wet / days.size()).isCloseTo(share, within(0.015));
    assertThat((double) wetAfterWet / wetBefore).isCloseTo(0.25 + 0.75 * share, within(0.025));
  }

  /**
   * FAO-56 (1998) Example 23, page 116, read in the paper: a month's rain over that of a usual rain
   * is the number of rainy days. Paris has 50 mm by 3, which are 17 days, about every second; Gafsa
   * 20 by 5, 4 days, weekly; Calcutta 300 by 20, 15 days, about every second.
   */
  @ParameterizedTest
  @CsvSource({"50, 3, 17, 2", "20, 5, 4, 7", "300, 20, 15, 2"})
  void rainyDaysOfExample23(double monthMm, double rainMm, double rainyDays, double interval) {
    double[] rain = new double[12];
    Arrays.fill(rain, monthMm);
    Climate place = TestGroves.climate(new double[12], new double[12], rain);
    List<DayWeather> april =
        WeatherGenerator.days(place, TestCatalogue.raining(rainMm / 1000), 2001, YEARS, 23).stream()
            .filter(day -> day.date().getMonthValue() == 4)
            .toList();
    long wet = april.stream().filter(day -> day.rainM().getAsDouble() > 0).count();
    // The paper prints whole days; 400 drawn Aprils add an error of a fifth of a day at most.
    assertThat((double) wet / YEARS).isCloseTo(rainyDays, within(0.6));
    assertThat((double) april.size() / wet).isCloseTo(interval, within(0.6));
  }

  @Test
  void rainOfWetDaysHasTheSpreadOfItsDistribution() {
    double[] falls =
        month(1).stream()
            .mapToDouble(d -> d.rainM().getAsDouble() * 1000)
            .filter(mm -> mm > 0)
            .toArray();
    double mean = Arrays.stream(falls).average().orElseThrow();
    double variance =
        Arrays.stream(falls).map(mm -> (mm - mean) * (mm - mean)).average().orElseThrow();
    // A gamma variable of mean m and scale b has the variance m b; b = -2.16 + 1.83 m.
    assertThat(mean).isCloseTo(8, within(0.4));
    assertThat(variance).isCloseTo(8 * (-2.16 + 1.83 * 8), within(12.0));
  }

  @Test
  void theSeedDrawsTheDays() {
    assertThat(WeatherGenerator.days(NORMALS, TestCatalogue.of(), 2001, 2, 42))
        .isEqualTo(DAYS.subList(0, 730));
    assertThat(WeatherGenerator.days(NORMALS, TestCatalogue.of(), 2001, 2, 43))
        .isNotEqualTo(DAYS.subList(0, 730));
  }

  @Test
  void aWetSpellEndsWhereTheDryMonthsBegin() {
    double[] rainMm = {200, 0, 200, 0, 200, 0, 200, 0, 200, 0, 200, 0};
    Climate monsoon = TestGroves.climate(new double[12], new double[12], rainMm);
    for (DayWeather day : WeatherGenerator.days(monsoon, TestCatalogue.of(), 2001, 50, 7)) {
      if (day.date().getMonthValue() % 2 == 0) {
        assertThat(day.rainM()).hasValue(0);
      }
    }
  }

  @Test
  void unknownRainStaysUnknown() {
    Climate dry =
        TestGroves.climate(new double[12], new double[] {9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9}, null);
    assertThat(WeatherGenerator.days(dry, TestCatalogue.of(), 2001, 1, 1))
        .allMatch(day -> day.rainM().equals(OptionalDouble.empty()));
  }
}
