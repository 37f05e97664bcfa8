package org.grovewright.ground;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
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

/** An invented grove whose parts a test may change before it is made. */
public final class SampleGrove {
  /** The bundled catalogue. */
  public static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();

  /** First day of work. */
  public static final LocalDate START = LocalDate.of(2026, 3, 1);

  private static final OptionalDouble NONE = OptionalDouble.empty();

  /** Latitude, degrees. */
  public double latitude = 34;

  /** Corners of the land. */
  public List<Point> boundary =
      List.of(new Point(-50, -50), new Point(50, -50), new Point(50, 50), new Point(-50, 50));

  /** Fixed things. */
  public final List<Fixture> fixtures = new ArrayList<>();

  /** Measured heights. */
  public final List<SpotHeight> spots = new ArrayList<>();

  /** Rows. */
  public final List<Row> rows = new ArrayList<>();

  /** Plants. */
  public final List<Planting> plants = new ArrayList<>();

  /** Texture of the soil. */
  public Optional<String> texture = Optional.of("loam");

  /** Depth of the soil, metres. */
  public double soilDepth = 1.5;

  /** Fall of the water in the drainage hole, m/s. */
  public OptionalDouble drainage = OptionalDouble.of(0.05 / 3600);

  /** Soil reaction. */
  public OptionalDouble ph = OptionalDouble.of(6.5);

  /** Days on which water may run. */
  public WateringDays allowedDays = WateringDays.ANY;

  /** Mean daily minimum of the coldest month, degrees Celsius. */
  public double coldestNight = 6;

  /** Days of weather. */
  public final List<Climate.DayWeather> days = new ArrayList<>();

  /** What the owner wants of the ground. */
  public GroundChoices ground = GroundChoices.NONE;

  /** Adds a plant to be planted on the first day. */
  public SampleGrove plant(String id, String species, double x, double y, double litres) {
    return plant(id, species, x, y, litres, START, NONE, NONE);
  }

  /** Adds a plant. */
  public SampleGrove plant(
      String id,
      String species,
      double x,
      double y,
      double litres,
      LocalDate planted,
      OptionalDouble measured,
      OptionalDouble kept) {
    plants.add(
        new Planting(
            id,
            species,
            Optional.empty(),
            new Point(x, y),
            rows.isEmpty() ? Optional.empty() : Optional.of(rows.get(rows.size() - 1).id()),
            planted,
            litres / 1000,
            new Planting.Measured(measured, NONE, Optional.empty()),
            kept,
            NONE));
    return this;
  }

  /** Adds a row; plants added after it belong to it. */
  public SampleGrove row(String id, Point... line) {
    rows.add(new Row(id, List.of(line)));
    return this;
  }

  /** Adds a fixed thing. */
  public SampleGrove fixture(String id, FixtureKind kind, Shape shape) {
    fixtures.add(new Fixture(id, kind, shape, 0, NONE));
    return this;
  }

  /** A grove of twelve main plants in two rows with thirty companions, on a slope. */
  public static SampleGrove full() {
    SampleGrove sample = new SampleGrove();
    String[] mains = {"avocado", "lemon", "fig", "pomegranate", "mandarin", "persimmon"};
    for (int row = 0; row < 2; row++) {
      double y = 8.0 * row;
      sample.row("Row " + (char) ('A' + row), new Point(0, y), new Point(40, y));
      for (int i = 0; i < 6; i++) {
        sample.plant("m" + row + i, mains[i], 3 + 6.5 * i, y, 20);
      }
      for (int i = 0; i < 15; i++) {
        sample.plant("c" + row + i, i % 2 == 0 ? "lavender" : "comfrey", 1.5 + 2.5 * i, y + 1, 3);
      }
    }
    sample.fixture(
        "house",
        FixtureKind.BUILDING,
        new Shape.Area(
            List.of(new Point(-20, 0), new Point(-5, 0), new Point(-5, 10), new Point(-20, 10))));
    sample.fixture(
        "gas",
        FixtureKind.BURIED_SERVICE,
        new Shape.Line(List.of(new Point(-50, -5), new Point(50, -5))));
    sample.spots.add(new SpotHeight(new Point(0, 0), 0));
    sample.spots.add(new SpotHeight(new Point(40, 0), 1));
    sample.spots.add(new SpotHeight(new Point(40, 10), 1.5));
    sample.spots.add(new SpotHeight(new Point(0, 10), 0.4));
    return sample;
  }

  /** The grove. */
  public Grove grove() {
    List<Climate.MonthNormal> months = new ArrayList<>();
    for (int month = 1; month <= 12; month++) {
      double night = coldestNight + 12 * Math.sin(Math.PI * (month - 1) / 12);
      months.add(
          new Climate.MonthNormal(month, night, night + 12, NONE, NONE, NONE, NONE, NONE, NONE));
    }
    return new Grove(
        new Site("invented", latitude, 0, 50, boundary, 0, fixtures, spots),
        new Soil(
            texture,
            NONE,
            NONE,
            soilDepth,
            drainage.isPresent()
                ? Optional.of(new Soil.DrainageTest(drainage.getAsDouble() * 3600, 3600))
                : Optional.empty(),
            ph,
            Soil.SoilTest.NONE),
        new Climate(months, days, 2, "invented"),
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
            allowedDays,
            NONE,
            Optional.empty()),
        rows,
        plants,
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
        new Preferences(Preferences.Units.METRIC, Preferences.Friction.HAZEN_WILLIAMS, ground));
  }
}
