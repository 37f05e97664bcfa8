package org.grovewright.work;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Caution;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Market;
import org.grovewright.catalogue.Mulch;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.SoilMix;
import org.grovewright.catalogue.Species;
import org.grovewright.catalogue.TaskRate;
import org.grovewright.catalogue.TypicalPrice;
import org.grovewright.model.Climate;
import org.grovewright.model.Crew;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences;
import org.grovewright.model.Row;
import org.grovewright.model.Site;
import org.grovewright.model.Soil;
import org.grovewright.model.Stock;
import org.grovewright.model.Supply;
import org.grovewright.model.Watering;
import org.grovewright.model.WateringDays;
import org.grovewright.quantity.Kind;

/** A small invented grove and catalogue for the tests of work and buying. */
public final class Samples {
  /** A Monday. */
  public static final LocalDate START = LocalDate.of(2026, 3, 2);

  public List<TaskRate> tasks = new ArrayList<>();
  public List<Part> parts = new ArrayList<>();
  public List<TypicalPrice> prices = new ArrayList<>();
  public List<Species> species = new ArrayList<>();
  public List<Planting> plantings = new ArrayList<>();
  public Map<String, Double> onHand = new LinkedHashMap<>();
  public Map<String, Stock.Price> ownPrices = new LinkedHashMap<>();
  public Crew crew = evenings(2, 18, 20);
  public double latitude = 40;
  public double coldestMonthMinimum = 2;
  public Optional<String> mulch = Optional.empty();

  /** A crew that works the same hours every day of the week. */
  public static Crew evenings(int people, int fromHour, int untilHour) {
    EnumMap<DayOfWeek, Supply.Hours> hours = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      hours.put(day, new Supply.Hours(LocalTime.of(fromHour, 0), LocalTime.of(untilHour % 24, 0)));
    }
    return new Crew(people, hours, Set.of());
  }

  public static TaskRate task(
      String key, double minutesPerUnit, double setUpMinutes, double waitHours, String... after) {
    return new TaskRate(
        key,
        "Do " + key,
        TaskRate.Measure.PIECE,
        60 * minutesPerUnit,
        60 * setUpMinutes,
        3600 * waitHours,
        List.of(after),
        2,
        List.of(),
        "invented for a test");
  }

  public static Species species(String key, Species.Role role, double coldLimitC) {
    return new Species(
        key,
        "test " + key,
        "Planta " + key,
        Species.Group.TEMPERATE,
        role,
        false,
        4,
        4,
        8,
        4,
        1,
        0.5,
        new Species.Kc(0.5, 0.9, 0.7, 30, 50, 100, 60, 3),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        coldLimitC,
        5.5,
        7.5,
        new Species.Feeding(0.05, 0.4, List.of(3, 6)),
        Optional.empty(),
        "invented for a test");
  }

  public static Planting plant(String id, String speciesKey, String row, LocalDate on) {
    return new Planting(
        id,
        speciesKey,
        Optional.empty(),
        new Point(0, 0),
        Optional.of(row),
        on,
        0.01,
        Planting.Measured.NOTHING,
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  public static TypicalPrice price(
      String key, double pack, Kind kind, double amount, String currency) {
    return new TypicalPrice(key, pack, kind, amount, currency, "invented for a test");
  }

  public Grove grove() {
    List<Climate.MonthNormal> normals = new ArrayList<>();
    for (int month = 1; month <= 12; month++) {
      boolean winter = latitude >= 0 ? month <= 2 || month == 12 : month >= 6 && month <= 8;
      normals.add(
          new Climate.MonthNormal(
              month,
              winter ? coldestMonthMinimum : 15,
              25,
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              OptionalDouble.empty()));
    }
    return new Grove(
        new Site(
            "Test land",
            latitude,
            10,
            100,
            List.of(new Point(0, 0), new Point(50, 0), new Point(50, 40)),
            0,
            List.of(),
            List.of()),
        new Soil(
            Optional.of("loam"),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            1,
            Optional.empty(),
            OptionalDouble.empty(),
            Soil.SoilTest.NONE),
        new Climate(normals, List.of(), 2, "invented"),
        new Supply(
            Supply.SupplyKind.HOUSE_TAP,
            new Point(0, 0),
            0.5,
            OptionalDouble.of(300_000),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            List.of(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            List.of(),
            WateringDays.ANY,
            OptionalDouble.empty(),
            Optional.empty()),
        List.of(
            new Row("A", List.of(new Point(0, 0), new Point(20, 0))),
            new Row("B", List.of(new Point(0, 5), new Point(20, 5)))),
        plantings,
        new Watering(
            true,
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of()),
        new Stock(onHand, ownPrices, "EUR"),
        crew,
        START,
        new Preferences(Preferences.Units.METRIC, Preferences.Friction.HAZEN_WILLIAMS));
  }

  public Catalogue catalogue() {
    Map<String, TaskRate> taskMap = new LinkedHashMap<>();
    tasks.forEach(t -> taskMap.put(t.key(), t));
    Map<String, Part> partMap = new LinkedHashMap<>();
    parts.forEach(p -> partMap.put(p.key(), p));
    Map<String, TypicalPrice> priceMap = new LinkedHashMap<>();
    prices.forEach(p -> priceMap.put(p.key(), p));
    Map<String, Species> speciesMap = new LinkedHashMap<>();
    species.forEach(s -> speciesMap.put(s.key(), s));
    String source = "invented for a test";
    return new Catalogue(
        speciesMap,
        Map.of(),
        Map.of(
            "pipe.main",
            new Pipe(
                "pipe.main",
                "test main",
                Pipe.Use.MAIN,
                "none",
                0.02,
                0.025,
                150,
                1.5e-6,
                1e6,
                Pipe.Joint.SOLVENT_CEMENT,
                Market.ANY,
                source)),
        Map.of(
            "emitter.one",
            new EmitterType(
                "emitter.one",
                "test emitter",
                5e-7,
                1e5,
                0.5,
                false,
                5e4,
                3e5,
                0.03,
                OptionalDouble.empty(),
                0.6,
                1e-4,
                0.2,
                EmitterType.Pattern.DRIPPER,
                Market.ANY,
                source)),
        Map.of(),
        Map.of(),
        Map.of("mix.test", new SoilMix("mix.test", "test mix", 800, 0.2, true, 0.3, 0.1, source)),
        Map.of(),
        Map.of("mulch.test", new Mulch("mulch.test", "test mulch", 300, 0.2, 0.08, 2, 0.4, source)),
        partMap,
        taskMap,
        Map.of("sun", new Caution("sun", "Sun", "Drink; rest, and wear a hat.", source)),
        List.of(),
        List.of(),
        constants(),
        priceMap);
  }

  private static Map<String, Constant> constants() {
    Map<String, Constant> constants = new LinkedHashMap<>();
    add(constants, "work.time-step", 300, Kind.RUN_TIME);
    add(constants, "work.least-session", 1800, Kind.RUN_TIME);
    add(constants, "work.waits-for-planting", 21 * 86_400, Kind.DAYS);
    add(constants, "work.planting-slack", 10 * 86_400, Kind.DAYS);
    add(constants, "buy.waste-pipe", 0.05, Kind.SHARE);
    add(constants, "buy.waste-bulk", 0.10, Kind.SHARE);
    add(constants, "buy.spare-emitters", 0.05, Kind.SHARE);
    add(constants, "buy.least-joined-part", 0.5, Kind.LENGTH);
    add(constants, "care.cold-night-below-mean", 6, Kind.TEMPERATURE);
    add(constants, "care.young-plant-tenderness", 3, Kind.TEMPERATURE);
    return constants;
  }

  private static void add(Map<String, Constant> constants, String key, double value, Kind kind) {
    constants.put(key, new Constant(key, key, value, kind, "invented for a test"));
  }
}
