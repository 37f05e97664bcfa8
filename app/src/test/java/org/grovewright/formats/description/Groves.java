package org.grovewright.formats.description;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.function.Supplier;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Climate;
import org.grovewright.model.Crew;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.GroundChoices;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences;
import org.grovewright.model.Row;
import org.grovewright.model.Shape;
import org.grovewright.model.Site;
import org.grovewright.model.Soil;
import org.grovewright.model.SpotHeight;
import org.grovewright.model.Stock;
import org.grovewright.model.Supply;
import org.grovewright.model.Watering;
import org.grovewright.model.WateringDays;
import org.grovewright.quantity.Kind;

/** Makes groves of every shape a description can have, from a seed. */
final class Groves {
  private static final double WIDTH_M = 120;
  private static final double HEIGHT_M = 90;

  private final Random random;
  private final Catalogue catalogue;

  private Groves(long seed, Catalogue catalogue) {
    this.random = new Random(seed);
    this.catalogue = catalogue;
  }

  static Grove of(long seed, Catalogue catalogue) {
    return new Groves(seed, catalogue).grove();
  }

  private Grove grove() {
    List<Row> rows = rows();
    return new Grove(
        site(),
        soil(),
        climate(),
        supply(),
        rows,
        plants(rows),
        watering(rows),
        stock(),
        crew(),
        date(),
        new Preferences(
            pick(Preferences.Units.values()), pick(Preferences.Friction.values()), ground()));
  }

  private double in(double min, double max) {
    double value = min + (max - min) * random.nextDouble();
    // Round numbers are what people write; the rest shows that no digit is lost.
    return random.nextBoolean() ? value : Math.round(value * 100) / 100.0;
  }

  private <T> T pick(T[] values) {
    return values[random.nextInt(values.length)];
  }

  private String pick(Set<String> keys) {
    return new ArrayList<>(keys).get(random.nextInt(keys.size()));
  }

  private <T> Optional<T> maybe(Supplier<T> value) {
    return random.nextBoolean() ? Optional.of(value.get()) : Optional.empty();
  }

  private OptionalDouble maybe(double min, double max) {
    return random.nextBoolean() ? OptionalDouble.of(in(min, max)) : OptionalDouble.empty();
  }

  private Point place() {
    return new Point(in(1, WIDTH_M - 1), in(1, HEIGHT_M - 1));
  }

  private LocalDate date() {
    return LocalDate.of(2020, 1, 1).plusDays(random.nextInt(4000));
  }

  private String text() {
    String[] parts = {
      "a", "Lark", "#", ": ", "'", "\"", " - ", "é", "日", "{", "*", "&", "%", "1.5", "null", "\\"
    };
    StringBuilder text = new StringBuilder("x");
    for (int i = random.nextInt(6); i > 0; i--) {
      text.append(pick(parts));
    }
    return text.append('y').toString();
  }

  private Site site() {
    List<Point> boundary =
        List.of(
            new Point(0, 0),
            new Point(WIDTH_M, 0),
            new Point(WIDTH_M, HEIGHT_M),
            new Point(in(20, 60), HEIGHT_M + in(0, 30)),
            new Point(0, HEIGHT_M));
    List<Fixture> fixtures = new ArrayList<>();
    for (int i = random.nextInt(5); i > 0; i--) {
      fixtures.add(fixture("thing " + i, pick(FixtureKind.values())));
    }
    List<SpotHeight> heights = new ArrayList<>();
    for (int i = random.nextInt(5); i > 0; i--) {
      heights.add(new SpotHeight(new Point(i * 5, in(0, 50)), in(-4, 300)));
    }
    return new Site(
        text(),
        in(-60, 60),
        in(-180, 180),
        in(-100, 3000),
        boundary,
        in(-360, 360),
        fixtures,
        heights,
        maybe(0, 2));
  }

  private Fixture fixture(String id, FixtureKind kind) {
    boolean surface =
        List.of(FixtureKind.PAVING, FixtureKind.GRAVEL, FixtureKind.LAWN).contains(kind);
    return new Fixture(
        id,
        kind,
        shape(),
        in(0, 9),
        maybe(0, 6),
        surface && random.nextBoolean()
            ? Optional.of(pick(Fixture.Traffic.values()))
            : Optional.empty(),
        kind == FixtureKind.BURIED_SERVICE && random.nextBoolean()
            ? Optional.of(new Fixture.Service(pick(Fixture.Carries.values()), maybe(0, 3)))
            : Optional.empty());
  }

  private Shape shape() {
    Point at = place();
    Point along = new Point(at.x() + in(0.5, 9), at.y() + in(0.5, 9));
    return switch (random.nextInt(3)) {
      case 0 -> new Shape.Area(List.of(at, along, new Point(at.x(), along.y())));
      case 1 -> new Shape.Line(List.of(at, along));
      default -> new Shape.Round(at, in(0.1, 4));
    };
  }

  private Soil soil() {
    boolean measured = random.nextBoolean();
    return new Soil(
        measured ? Optional.empty() : Optional.of(pick(catalogue.textures().keySet())),
        measured ? OptionalDouble.of(in(0.2, 0.5)) : OptionalDouble.empty(),
        measured ? OptionalDouble.of(in(0.01, 0.19)) : OptionalDouble.empty(),
        in(0.1, 9),
        maybe(() -> new Soil.DrainageTest(in(0.01, 0.5), in(60, 9000))),
        maybe(3.5, 9),
        new Soil.SoilTest(maybe(0, 0.2), maybe(0, 90), maybe(0, 400), maybe(0, 1)));
  }

  private Climate climate() {
    boolean[] known = new boolean[6];
    for (int i = 0; i < known.length; i++) {
      known[i] = random.nextBoolean();
    }
    List<Climate.MonthNormal> months = new ArrayList<>();
    for (int month = 1; month <= 12; month++) {
      months.add(
          new Climate.MonthNormal(
              month,
              in(-20, 10),
              in(11, 40),
              known(known[0], 0.1, 1),
              known(known[1], -20, 10),
              known(known[2], 0, 9),
              known(known[3], 20, 400),
              known(known[4], 0, 15),
              known(known[5], 0, 0.4)));
    }
    return new Climate(months, List.of(), in(1, 12), text());
  }

  private OptionalDouble known(boolean known, double min, double max) {
    return known ? OptionalDouble.of(in(min, max)) : OptionalDouble.empty();
  }

  private Supply supply() {
    Supply.SupplyKind kind = pick(Supply.SupplyKind.values());
    boolean tank = kind == Supply.SupplyKind.GRAVITY_TANK;
    List<Supply.FlowTest> tests = new ArrayList<>();
    if (!tank || random.nextBoolean()) {
      tests.add(new Supply.FlowTest(in(0.005, 0.02), in(20, 90), 0));
    }
    List<Supply.Hours> hours =
        random.nextBoolean()
            ? List.of()
            : List.of(
                new Supply.Hours(LocalTime.of(22, random.nextInt(60)), LocalTime.of(5, 30)),
                new Supply.Hours(LocalTime.of(17, 0), LocalTime.of(19, random.nextInt(60))));
    return new Supply(
        kind,
        place(),
        in(0, 3),
        tank ? OptionalDouble.empty() : OptionalDouble.of(in(1e5, 8e5)),
        tank ? OptionalDouble.of(in(0.3, 9)) : OptionalDouble.empty(),
        tank ? OptionalDouble.of(in(0.2, 20)) : OptionalDouble.empty(),
        tests,
        maybe(() -> new Supply.SupplyPipe(pick(catalogue.pipes().keySet()), in(0.5, 80))),
        maybe(0.05, 20),
        maybe(0.5, 90),
        hours,
        days(),
        maybe(0, 1),
        tank
            ? maybe(() -> new Supply.Roof(in(2, 300), maybe(0.3, 1), in(0, 0.2)))
            : Optional.empty());
  }

  private WateringDays days() {
    return switch (random.nextInt(4)) {
      case 0 -> WateringDays.on(WateringDays.Dates.ODD);
      case 1 -> WateringDays.on(WateringDays.Dates.EVEN);
      case 2 -> {
        Set<DayOfWeek> days = EnumSet.of(pick(DayOfWeek.values()));
        days.add(pick(DayOfWeek.values()));
        yield WateringDays.on(days);
      }
      default -> WateringDays.ANY;
    };
  }

  private List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      double y = i * 20;
      List<Point> line =
          new ArrayList<>(List.of(new Point(in(2, 8), y), new Point(in(30, 60), y + in(0, 3))));
      if (random.nextBoolean()) {
        line.add(new Point(in(70, 110), y));
      }
      rows.add(new Row(random.nextBoolean() ? "R" + i : "row no. " + i, line));
    }
    return rows;
  }

  private List<Planting> plants(List<Row> rows) {
    List<Planting> plants = new ArrayList<>();
    for (Row row : rows) {
      for (int i = random.nextInt(5); i > 0; i--) {
        plants.add(plant("p" + plants.size(), row.at(i * 5 + in(0, 1)), Optional.of(row.id())));
      }
    }
    for (int i = 1 + random.nextInt(3); i > 0; i--) {
      Point at = new Point(i * 10 + in(0, 1), in(1, 12));
      plants.add(plant("free-" + i, at, Optional.empty()));
    }
    return plants;
  }

  private Planting plant(String id, Point at, Optional<String> row) {
    LocalDate planted = date();
    return new Planting(
        id,
        pick(catalogue.species().keySet()),
        maybe(this::text),
        at,
        row,
        planted,
        random.nextInt(4) == 0 ? 0 : in(0.001, 0.2),
        new Planting.Measured(
            maybe(0.1, 8), maybe(0.1, 8), maybe(() -> planted.plusDays(random.nextInt(4000)))),
        maybe(0.5, 8),
        maybe(0.5, 8));
  }

  private GroundChoices ground() {
    if (random.nextBoolean()) {
      return GroundChoices.NONE;
    }
    return new GroundChoices(
        maybe(() -> pick(catalogue.mixes().keySet())),
        maybe(0.05, 1),
        maybe(1, 5),
        random.nextBoolean() ? List.of() : List.of(pick(catalogue.amendments().keySet())),
        maybe(() -> pick(catalogue.mulches().keySet())),
        maybe(this::fertiliser));
  }

  private String fertiliser() {
    return pick(
        catalogue.amendments().values().stream()
            .filter(row -> row.nitrogen() > 0)
            .map(row -> row.key())
            .collect(java.util.stream.Collectors.toCollection(java.util.TreeSet::new)));
  }

  private Watering watering(List<Row> rows) {
    boolean propose = rows.isEmpty() || random.nextBoolean();
    List<Watering.Zone> zones = new ArrayList<>();
    List<Watering.Lateral> own = new ArrayList<>();
    if (propose && random.nextBoolean()) {
      rows.forEach(row -> own.add(lateral(row, true)));
    } else {
      for (Row row : rows) {
        zones.add(new Watering.Zone("zone " + row.id(), List.of(lateral(row, propose))));
      }
    }
    boolean laid = random.nextBoolean();
    return new Watering(
        propose,
        propose && !laid ? maybe(this::pipe) : Optional.of(pipe()),
        !laid && random.nextBoolean() ? List.of() : List.of(place(), place()),
        laid,
        maybe(() -> pick(catalogue.filters().keySet())),
        maybe(() -> pick(catalogue.regulators().keySet())),
        propose ? maybe(() -> "loop-compensating-matched-2-to-6-1-zone") : Optional.empty(),
        wishes(),
        zones,
        own);
  }

  private Watering.Wishes wishes() {
    return random.nextBoolean()
        ? Watering.Wishes.NONE
        : new Watering.Wishes(
            OptionalInt.of(1 + random.nextInt(4)),
            OptionalInt.of(4 + random.nextInt(4)),
            OptionalDouble.of(random.nextInt(40)));
  }

  private Watering.Lateral lateral(Row row, boolean propose) {
    boolean all = !propose || random.nextBoolean();
    return new Watering.Lateral(
        row.id(),
        pick(Watering.Run.values()),
        all ? Optional.of(pipe()) : Optional.empty(),
        all ? Optional.of(emitter()) : Optional.empty(),
        all ? OptionalInt.of(1 + random.nextInt(8)) : OptionalInt.empty(),
        maybe(this::emitter),
        in(0, 2),
        random.nextBoolean() ? List.of() : List.of(place(), place(), place()),
        all && random.nextBoolean());
  }

  private String pipe() {
    return pick(catalogue.pipes().keySet());
  }

  private String emitter() {
    return pick(catalogue.emitters().keySet());
  }

  private Stock stock() {
    Map<String, Kind> kinds = StockReader.itemKinds(catalogue);
    Map<String, Double> have = new LinkedHashMap<>();
    Map<String, Stock.Price> prices = new LinkedHashMap<>();
    for (int i = random.nextInt(6); i > 0; i--) {
      String key = pick(kinds.keySet());
      boolean counted = kinds.get(key) == Kind.COUNT;
      have.put(key, counted ? random.nextInt(50) : in(0, 90));
      prices.put(
          key,
          new Stock.Price(
              counted ? 1 + random.nextInt(50) : in(0.5, 90), random.nextInt(90_000) / 100.0));
    }
    OptionalDouble times =
        random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(in(0.5, 90));
    return new Stock(have, prices, pick(new String[] {"USD", "EUR", "JPY"}), times);
  }

  private Crew crew() {
    Map<DayOfWeek, Supply.Hours> hours = new EnumMap<>(DayOfWeek.class);
    hours.put(DayOfWeek.SATURDAY, new Supply.Hours(LocalTime.of(9, 5), LocalTime.MIDNIGHT));
    for (DayOfWeek day : DayOfWeek.values()) {
      if (random.nextInt(4) == 0) {
        hours.put(day, new Supply.Hours(LocalTime.of(random.nextInt(12), 0), LocalTime.of(12, 30)));
      }
    }
    Set<LocalDate> daysOff = new HashSet<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      daysOff.add(date());
    }
    return new Crew(1 + random.nextInt(9), hours, daysOff);
  }
}
