package org.grovewright.formats.description;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.formats.description.YamlText.Group;
import org.grovewright.formats.description.YamlText.Unit;
import org.grovewright.model.Climate;
import org.grovewright.model.Crew;
import org.grovewright.model.Fixture;
import org.grovewright.model.GroundChoices;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Row;
import org.grovewright.model.Shape;
import org.grovewright.model.Site;
import org.grovewright.model.Soil;
import org.grovewright.model.Stock;
import org.grovewright.model.Supply;
import org.grovewright.model.Watering;
import org.grovewright.model.WateringDays;
import org.grovewright.quantity.Kind;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * Writes a grove as a description that reads back to the same grove: every plant by its name and
 * place, every number with all its digits.
 */
public final class DescriptionWriter {
  private final Map<String, Kind> itemKinds;

  /**
   * A writer.
   *
   * @param catalogue knows what each item of the stock is measured in
   */
  public DescriptionWriter(Catalogue catalogue) {
    this.itemKinds = StockReader.itemKinds(catalogue);
  }

  /**
   * The text of a grove whose climate has no daily weather.
   *
   * @throws IllegalArgumentException if the climate has daily weather, which needs a file of its
   *     own
   */
  public String write(Grove grove) {
    if (!grove.climate().daily().isEmpty()) {
      throw new IllegalArgumentException("daily weather needs the name of its file");
    }
    return write(grove, months(grove.climate()));
  }

  /**
   * The text of a grove whose daily weather stands in a file.
   *
   * @param grove the grove
   * @param dailyFile name of the file beside the description; the caller writes it
   */
  public String write(Grove grove, String dailyFile) {
    return write(grove, climate(grove.climate()).put("daily", dailyFile));
  }

  private String write(Grove grove, Group climate) {
    Group root = Group.lines();
    root.put("site", site(grove.site()));
    root.put("soil", soil(grove.soil()));
    root.put("climate", climate);
    root.put("supply", supply(grove.supply()));
    if (!grove.rows().isEmpty()) {
      root.put("rows", each(grove.rows(), DescriptionWriter::row));
    }
    if (!grove.plantings().isEmpty()) {
      root.put("plants", each(grove.plantings(), DescriptionWriter::plant));
    }
    if (!grove.preferences().ground().equals(GroundChoices.NONE)) {
      root.put("ground", ground(grove.preferences().ground()));
    }
    root.put("watering", watering(grove.watering()));
    stock(root, grove.stock());
    root.put("crew", crew(grove.crew()));
    root.put("start", grove.start().toString());
    root.put("units", Value.word(grove.preferences().units()));
    root.put("friction", Value.word(grove.preferences().friction()));
    return YamlText.text(root);
  }

  private static <T> Node each(List<T> things, Function<T, Group> group) {
    return YamlText.lines(things.stream().map(thing -> group.apply(thing).node()).toList());
  }

  private static Node point(Point point) {
    return YamlText.inline(
        List.of(
            YamlText.word(YamlText.quantity(point.x(), Unit.METRE)),
            YamlText.word(YamlText.quantity(point.y(), Unit.METRE))));
  }

  private static Node points(List<Point> points) {
    return YamlText.inline(points.stream().map(DescriptionWriter::point).toList());
  }

  private static Node words(List<String> words) {
    return YamlText.inline(words.stream().map(YamlText::word).toList());
  }

  private static Group site(Site site) {
    Group group =
        Group.lines()
            .put("name", site.name())
            .put("latitude", site.latitudeDeg(), Unit.NONE)
            .put("longitude", site.longitudeDeg(), Unit.NONE)
            .put("elevation", site.elevationM(), Unit.METRE)
            .put(
                "boundary",
                YamlText.lines(site.boundary().stream().map(DescriptionWriter::point).toList()))
            .put("north", site.northBearingDeg(), Unit.DEGREE);
    if (!site.fixtures().isEmpty()) {
      group.put("fixed", each(site.fixtures(), DescriptionWriter::fixture));
    }
    if (!site.spotHeights().isEmpty()) {
      group.put(
          "heights",
          each(
              site.spotHeights(),
              spot ->
                  Group.inline()
                      .put("at", point(spot.at()))
                      .put("height", spot.heightM(), Unit.METRE)));
    }
    return group.put("frost_depth", site.frostDepthM(), Unit.METRE);
  }

  private static Group fixture(Fixture fixture) {
    Group group = Group.lines().put("id", fixture.id()).put("kind", Value.word(fixture.kind()));
    if (fixture.shape() instanceof Shape.Area area) {
      group.put("area", points(area.corners()));
    } else if (fixture.shape() instanceof Shape.Line line) {
      group.put("line", points(line.points()));
    } else if (fixture.shape() instanceof Shape.Round round) {
      group.put("at", point(round.centre())).put("radius", round.radiusM(), Unit.METRE);
    }
    group
        .put("height", fixture.heightM(), Unit.METRE)
        .put("clearance", fixture.clearanceM(), Unit.METRE);
    fixture.traffic().ifPresent(traffic -> group.put("traffic", Value.word(traffic)));
    fixture
        .service()
        .ifPresent(
            service ->
                group
                    .put("service", Value.word(service.kind()))
                    .put("depth", service.depthM(), Unit.METRE));
    return group;
  }

  private static Group soil(Soil soil) {
    Group group =
        Group.lines()
            .put("texture", soil.textureKey())
            .put("field_capacity", soil.fieldCapacity(), Unit.PERCENT)
            .put("wilting_point", soil.wiltingPoint(), Unit.PERCENT)
            .put("depth", soil.depthM(), Unit.METRE);
    soil.drainageTest()
        .ifPresent(
            test ->
                group.put(
                    "drainage_test",
                    Group.inline()
                        .put("drop", test.dropM(), Unit.METRE)
                        .put("time", test.seconds(), Unit.SECOND)));
    group.put("ph", soil.ph(), Unit.NONE);
    Group test =
        Group.lines()
            .put("organic_matter", soil.test().organicMatter(), Unit.PERCENT)
            .put("phosphorus", soil.test().phosphorusMgPerKg(), Unit.MG_PER_KG)
            .put("potassium", soil.test().potassiumMgPerKg(), Unit.MG_PER_KG)
            .put("salinity", soil.test().salinitySPerM(), Unit.DECISIEMENS_PER_METRE);
    return test.isEmpty() ? group : group.put("test", test);
  }

  private static Group climate(Climate climate) {
    return Group.lines()
        .put("source", climate.source())
        .put("wind_height", climate.windHeightM(), Unit.METRE);
  }

  private static Group months(Climate climate) {
    Group months = Group.lines();
    List<Climate.MonthNormal> normals = climate.normals();
    column(months, "tmin", normals, m -> OptionalDouble.of(m.tminC()), Unit.CELSIUS);
    column(months, "tmax", normals, m -> OptionalDouble.of(m.tmaxC()), Unit.CELSIUS);
    column(months, "humidity", normals, Climate.MonthNormal::relativeHumidity, Unit.PERCENT);
    column(months, "dew_point", normals, Climate.MonthNormal::dewPointC, Unit.CELSIUS);
    column(months, "wind", normals, Climate.MonthNormal::windMPerS, Unit.METRE_PER_SECOND);
    column(months, "solar", normals, Climate.MonthNormal::solarWPerM2, Unit.WATT_PER_SQUARE_METRE);
    column(months, "sunshine", normals, Climate.MonthNormal::sunshineHours, Unit.HOUR);
    column(months, "rain", normals, Climate.MonthNormal::rainM, Unit.MILLIMETRE);
    return climate(climate).put("months", months);
  }

  private static void column(
      Group months,
      String key,
      List<Climate.MonthNormal> normals,
      Function<Climate.MonthNormal, OptionalDouble> part,
      Unit unit) {
    List<Double> values = new ArrayList<>();
    normals.forEach(month -> part.apply(month).ifPresent(values::add));
    if (values.size() == normals.size()) {
      months.put(key, YamlText.months(values, unit));
    } else if (!values.isEmpty()) {
      throw new IllegalArgumentException("a column of months has gaps: " + key);
    }
  }

  private static Group supply(Supply supply) {
    Group group =
        Group.lines()
            .put("kind", Value.word(supply.kind()))
            .put("at", point(supply.at()))
            .put("outlet_height", supply.outletHeightM(), Unit.METRE)
            .put("static_pressure", supply.staticPressurePa(), Unit.PASCAL)
            .put("tank_level", supply.tankLevelM(), Unit.METRE)
            .put("tank_volume", supply.tankVolumeM3(), Unit.CUBIC_METRE);
    if (!supply.flowTests().isEmpty()) {
      group.put(
          "flow_tests",
          each(
              supply.flowTests(),
              test ->
                  Group.inline()
                      .put("volume", test.volumeM3(), Unit.LITRE)
                      .put("time", test.seconds(), Unit.SECOND)
                      .put("pressure", test.residualPressurePa(), Unit.PASCAL)));
    }
    supply
        .pipe()
        .ifPresent(
            pipe ->
                group.put(
                    "pipe",
                    Group.inline()
                        .put("pipe", pipe.pipeKey())
                        .put("length", pipe.lengthM(), Unit.METRE)));
    group.put("daily_limit", supply.dailyLimitM3(), Unit.CUBIC_METRE_PER_DAY);
    group.put("weekly_limit", supply.weeklyLimitM3(), Unit.CUBIC_METRE);
    if (!supply.allowedHours().isEmpty()) {
      group.put(
          "hours", words(supply.allowedHours().stream().map(DescriptionWriter::hours).toList()));
    }
    WateringDays days = supply.allowedDays();
    if (days.byWeek()) {
      group.put("days", words(days.weekdays().stream().map(CrewReader::shortName).toList()));
    } else if (!days.any()) {
      group.put("days", Value.word(days.dates()));
    }
    group.put("salinity", supply.salinitySPerM(), Unit.DECISIEMENS_PER_METRE);
    supply
        .roof()
        .ifPresent(
            roof ->
                group.put(
                    "roof",
                    Group.inline()
                        .put("area", roof.areaM2(), Unit.SQUARE_METRE)
                        .put("runoff", roof.runoff(), Unit.PERCENT)
                        .put("first_flush", roof.firstFlushM3(), Unit.CUBIC_METRE)));
    return group;
  }

  private static String hours(Supply.Hours hours) {
    boolean toMidnight = hours.until().equals(LocalTime.MIDNIGHT);
    return hours.from() + "-" + (toMidnight ? "24:00" : hours.until());
  }

  private static Group row(Row row) {
    Group group = Group.lines().put("id", row.id());
    return row.line().size() == 2
        ? group.put("from", point(row.line().get(0))).put("to", point(row.line().get(1)))
        : group.put("line", points(row.line()));
  }

  private static Group plant(Planting plant) {
    return Group.inline()
        .put("id", plant.id())
        .put("species", plant.speciesKey())
        .put("cultivar", plant.cultivar())
        .put("at", point(plant.at()))
        .put("row", plant.rowId())
        .put("planted", plant.plantedOn().toString())
        .put(
            "container",
            plant.containerM3() == 0
                ? "bare root"
                : YamlText.quantity(plant.containerM3(), Unit.LITRE))
        .put("measured_spread", plant.measured().spreadM(), Unit.METRE)
        .put("measured_height", plant.measured().heightM(), Unit.METRE)
        .put("measured_on", plant.measured().on().map(LocalDate::toString))
        .put("kept_spread", plant.keptSpreadM(), Unit.METRE)
        .put("kept_height", plant.keptHeightM(), Unit.METRE);
  }

  private static Group ground(GroundChoices ground) {
    Group group =
        Group.lines()
            .put("mix", ground.mixKey())
            .put("mix_share", ground.mixShare(), Unit.PERCENT)
            .put("hole_width", ground.holeWidthRatio(), Unit.NONE);
    if (!ground.amendmentKeys().isEmpty()) {
      group.put("amendments", words(ground.amendmentKeys()));
    }
    return group.put("mulch", ground.mulchKey()).put("fertiliser", ground.fertiliserKey());
  }

  private static Group watering(Watering watering) {
    Group group = Group.lines().put("propose", watering.propose());
    Group main = Group.lines().put("pipe", watering.mainPipeKey());
    if (!watering.mainRoute().isEmpty()) {
      main.put("route", points(watering.mainRoute()));
    }
    if (watering.mainLaid()) {
      main.put("laid", true);
    }
    if (!main.isEmpty()) {
      group.put("main", main);
    }
    group
        .put("filter", watering.filterKey())
        .put("regulator", watering.regulatorKey())
        .put("choose", watering.choose());
    Watering.Wishes wishes = watering.wishes();
    wishes.emitterSorts().ifPresent(number -> group.put("emitter_sorts", number));
    wishes.emitterSortsInAll().ifPresent(number -> group.put("emitter_sorts_in_all", number));
    group.put("hour_of_work", wishes.hourOfWork(), Unit.NONE);
    if (!watering.laterals().isEmpty()) {
      group.put("laterals", each(watering.laterals(), DescriptionWriter::lateral));
    }
    return watering.zones().isEmpty()
        ? group
        : group.put(
            "zones",
            each(
                watering.zones(),
                zone ->
                    Group.lines()
                        .put("id", zone.id())
                        .put("laterals", each(zone.laterals(), DescriptionWriter::lateral))));
  }

  private static Group lateral(Watering.Lateral lateral) {
    Group group =
        Group.inline()
            .put("row", lateral.rowId())
            .put("run", Value.word(lateral.run()))
            .put("tubing", lateral.tubingKey())
            .put("emitter", lateral.emitterKey());
    lateral.emittersPerPlant().ifPresent(number -> group.put("emitters_per_plant", number));
    group
        .put("companion_emitter", lateral.companionEmitterKey())
        .put("offset", lateral.offsetM(), Unit.METRE);
    if (!lateral.route().isEmpty()) {
      group.put("route", points(lateral.route()));
    }
    return lateral.laid() ? group.put("laid", true) : group;
  }

  private void stock(Group root, Stock stock) {
    Map<String, String> have = new LinkedHashMap<>();
    stock.onHand().forEach((key, amount) -> have.put(key, amount(key, amount)));
    if (!have.isEmpty()) {
      root.put("on_hand", YamlText.of(have));
    }
    Map<String, String> prices = new LinkedHashMap<>();
    prices.put("currency", stock.currency());
    stock
        .typicalTimes()
        .ifPresent(
            times ->
                prices.put(
                    "typical_times", new BigDecimal(Double.toString(times)).toPlainString()));
    stock
        .prices()
        .forEach(
            (key, price) ->
                prices.put(
                    key,
                    amount(key, price.packSize())
                        + " for "
                        + new BigDecimal(Double.toString(price.amount())).toPlainString()));
    root.put("prices", YamlText.of(prices));
  }

  private String amount(String key, double amount) {
    Unit unit =
        switch (itemKinds.getOrDefault(key, Kind.COUNT)) {
          case LENGTH -> Unit.METRE;
          case MASS -> Unit.KILOGRAM;
          case BULK_VOLUME, WATER_VOLUME -> Unit.CUBIC_METRE;
          default -> Unit.NONE;
        };
    return YamlText.quantity(amount, unit);
  }

  private static Group crew(Crew crew) {
    Group hours = Group.inline();
    crew.hours().forEach((day, span) -> hours.put(CrewReader.shortName(day), hours(span)));
    Group group = Group.lines().put("people", crew.people()).put("hours", hours);
    return crew.daysOff().isEmpty()
        ? group
        : group.put("days_off", words(crew.daysOff().stream().map(day -> day.toString()).toList()));
  }
}
