package org.grovewright.water;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.grovewright.model.Climate;
import org.grovewright.model.Crew;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences;
import org.grovewright.model.Site;
import org.grovewright.model.Soil;
import org.grovewright.model.Stock;
import org.grovewright.model.Supply;
import org.grovewright.model.Watering;
import org.grovewright.model.WateringDays;

/** Invented groves and weather for tests. */
public final class TestGroves {
  /** Day on which the groves start. */
  public static final LocalDate START = LocalDate.of(2026, 3, 1);

  private static final OptionalDouble NONE = OptionalDouble.empty();

  private TestGroves() {}

  /** Normals of an invented dry-summer inland valley. */
  public static Climate drySummer() {
    double[] tmin = {4, 6, 7, 9, 12, 15, 18, 18, 16, 12, 7, 4};
    double[] tmax = {14, 17, 20, 23, 28, 33, 36, 36, 32, 26, 19, 14};
    double[] rainMm = {80, 70, 60, 25, 10, 2, 0, 0, 5, 20, 40, 70};
    return climate(tmin, tmax, rainMm);
  }

  /** A climate of twelve months in degrees Celsius and millimetres. */
  public static Climate climate(double[] tmin, double[] tmax, double[] rainMm) {
    List<Climate.MonthNormal> months = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      months.add(
          new Climate.MonthNormal(
              i + 1,
              tmin[i],
              tmax[i],
              NONE,
              NONE,
              NONE,
              NONE,
              NONE,
              rainMm == null ? NONE : OptionalDouble.of(rainMm[i] / 1000)));
    }
    return new Climate(months, List.of(), 2, "invented");
  }

  /** A plant from a container of so many litres. */
  public static Planting plant(String id, String species, double litres, LocalDate planted) {
    return new Planting(
        id,
        species,
        Optional.empty(),
        new Point(0, 0),
        Optional.empty(),
        planted,
        litres / 1000,
        Planting.Measured.NOTHING,
        NONE,
        NONE);
  }

  /** A grove of these plants on loam. */
  public static Grove grove(double latitude, Climate climate, Planting... plantings) {
    return new Grove(
        new Site("invented", latitude, 0, 50, List.of(), 0, List.of(), List.of()),
        new Soil(Optional.of("loam"), NONE, NONE, 1.2, Optional.empty(), NONE, Soil.SoilTest.NONE),
        climate,
        new Supply(
            Supply.SupplyKind.HOUSE_TAP,
            new Point(0, 0),
            0,
            OptionalDouble.of(300_000),
            NONE,
            NONE,
            List.of(),
            Optional.empty(),
            NONE,
            NONE,
            List.of(),
            WateringDays.ANY,
            NONE,
            Optional.empty()),
        List.of(),
        List.of(plantings),
        new Watering(
            true,
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of()),
        new Stock(Map.of(), Map.of(), "USD"),
        new Crew(1, Map.of(), Set.of()),
        START,
        new Preferences(Preferences.Units.METRIC, Preferences.Friction.HAZEN_WILLIAMS));
  }

  /** Days drawn round the normals of the dry-summer valley, the same for the same seed. */
  public static Climate dailyDrySummer(int firstYear, int years, long seed) {
    Random random = new Random(seed);
    Climate normals = drySummer();
    List<Climate.DayWeather> days = new ArrayList<>();
    LocalDate end = LocalDate.of(firstYear + years, 1, 1);
    for (LocalDate day = LocalDate.of(firstYear, 1, 1); day.isBefore(end); day = day.plusDays(1)) {
      Climate.MonthNormal month = normals.normals().get(day.getMonthValue() - 1);
      double off = random.nextGaussian() * 2;
      double rain = month.rainM().orElse(0) / day.lengthOfMonth();
      boolean wet = random.nextInt(5) == 0;
      days.add(
          new Climate.DayWeather(
              day,
              month.tminC() + off,
              month.tmaxC() + off,
              NONE,
              NONE,
              NONE,
              NONE,
              NONE,
              OptionalDouble.of(wet ? rain * 5 * (0.5 + random.nextDouble()) : 0)));
    }
    return new Climate(normals.normals(), days, 2, "invented");
  }
}
