package org.grovewright.formats.description;

import static org.grovewright.model.FixtureKind.BURIED_SERVICE;
import static org.grovewright.model.FixtureKind.GRAVEL;
import static org.grovewright.model.FixtureKind.LAWN;
import static org.grovewright.model.FixtureKind.PAVING;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.formats.geo.BoundaryException;
import org.grovewright.formats.geo.GeoJsonBoundary;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.units.UnitWords;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.grovewright.model.Site;
import org.grovewright.model.SpotHeight;
import org.grovewright.texts.Sentence;

/** Reads the land. */
final class SiteReader {
  private static final double FARTHEST_LATITUDE = 66;

  private SiteReader() {}

  static Site read(Value value, Optional<Path> folder) {
    Optional<Fields> found = value.fields(Section.SITE);
    if (found.isEmpty()) {
      return null;
    }
    Fields fields = found.get();
    fields.get("coordinates_in").ifPresent(SiteReader::coordinateUnit);
    String name =
        fields
            .need("name", "what you call the land")
            .flatMap(v -> v.text("what you call the land"))
            .orElse("");
    fields.onlyOneOf(List.of("boundary", "boundary_geojson"), "keep one of them");
    Optional<GeoJsonBoundary> onEarth =
        fields.get("boundary_geojson").flatMap(v -> geoJson(v, folder));
    double latitude =
        degrees(fields, "latitude", FARTHEST_LATITUDE, onEarth.map(b -> b.plane().latitudeDeg()));
    double longitude =
        degrees(fields, "longitude", 180, onEarth.map(b -> b.plane().longitudeDeg()));
    double elevation = fields.needQuantity("elevation", Measure.LENGTH, -430, 5000);
    List<Point> boundary =
        onEarth.map(GeoJsonBoundary::corners).orElseGet(() -> boundary(fields).orElse(List.of()));
    OptionalDouble north = fields.quantity("north", Measure.ANGLE, -360, 360);
    if (fields.has("boundary_geojson") && north.orElse(0) != 0) {
      fields.problem("north", "contradicts boundary_geojson: there up is north; leave this out");
    }
    return new Site(
        name,
        latitude,
        longitude,
        elevation,
        boundary,
        north.orElse(0),
        fixtures(fields),
        spotHeights(fields),
        fields.quantity("frost_depth", Measure.LENGTH, 0, 3));
  }

  private static void coordinateUnit(Value value) {
    value
        .text("a unit of length such as m or ft")
        .ifPresent(
            word -> {
              if (UnitWords.find(word).filter(Measure.LENGTH::accepts).isPresent()) {
                value.reading().coordinateUnit(word);
              } else {
                value.problem("'{0}' is no unit of length; give m, cm, ft or in", word);
              }
            });
  }

  private static double degrees(
      Fields fields, String key, double limit, Optional<Double> fromBoundary) {
    boolean latitude = key.equals("latitude");
    if (fields.has("boundary_geojson") && !fields.has(key)) {
      return fromBoundary.orElse(Double.NaN);
    }
    return fields
        .need(
            key,
            latitude
                ? "the latitude in degrees, such as 36.6, south negative"
                : "the longitude in degrees, such as -119.8, west negative")
        .map(
            v ->
                v.degrees(
                    limit,
                    Sentence.of(
                        latitude
                            ? "degrees from -{0} to {0}, such as 36.6, south negative"
                            : "degrees from -{0} to {0}, such as -119.8, west negative",
                        Math.round(limit))))
        .orElse(OptionalDouble.empty())
        .orElse(Double.NaN);
  }

  private static Optional<List<Point>> boundary(Fields fields) {
    if (fields.has("boundary_geojson")) {
      return Optional.empty();
    }
    Optional<Value> value =
        fields.need("boundary", "the corners of the land: [[0 m, 0 m], [40 m, 0 m], [40 m, 25 m]]");
    Optional<List<Point>> corners = value.flatMap(v -> v.points(3)).map(SiteReader::open);
    Optional<Sentence> fault = corners.flatMap(c -> Shapes.faultOfOutline(c, fields::length));
    fault.ifPresent(sentence -> value.orElseThrow().problem(sentence));
    return fault.isPresent() ? Optional.empty() : corners;
  }

  /** An outline whose last corner repeats the first, without that repetition. */
  private static List<Point> open(List<Point> corners) {
    int last = corners.size() - 1;
    return last > 0 && corners.get(0).equals(corners.get(last))
        ? corners.subList(0, last)
        : corners;
  }

  private static Optional<GeoJsonBoundary> geoJson(Value value, Optional<Path> folder) {
    Optional<String> name = value.text("the name of a GeoJSON file");
    if (name.isEmpty()) {
      return Optional.empty();
    }
    if (folder.isEmpty()) {
      value.problem("names a file, which cannot be read here; give the corners under boundary");
      return Optional.empty();
    }
    try {
      GeoJsonBoundary boundary =
          GeoJsonBoundary.read(SourceText.of(folder.get().resolve(name.get())));
      Optional<Sentence> fault = Shapes.faultOfOutline(boundary.corners(), value::length);
      if (fault.isPresent()) {
        value.problem("the boundary in {0} {1}", name.get(), fault.get());
        return Optional.empty();
      }
      return Optional.of(boundary);
    } catch (DescriptionException e) {
      value.problem(e.problems().get(0).told(name.get()));
    } catch (InvalidPathException e) {
      value.problem("is no name of a file");
    } catch (BoundaryException e) {
      value.problem("{0}: {1}", name.get(), e.sentence());
    }
    return Optional.empty();
  }

  private static List<Fixture> fixtures(Fields site) {
    List<Fixture> fixtures = new ArrayList<>();
    Ids ids = new Ids("fixed thing");
    for (Value item : site.get("fixed").map(Value::items).orElse(List.of())) {
      item.fields(Section.FIXTURE).flatMap(f -> fixture(f, ids)).ifPresent(fixtures::add);
    }
    return fixtures;
  }

  private static Optional<Fixture> fixture(Fields fields, Ids ids) {
    Optional<String> id = fields.need("id", "a short name, such as shed").flatMap(ids::read);
    Optional<FixtureKind> kind =
        fields
            .need("kind", "what it is, such as building or fence")
            .flatMap(v -> v.choice(FixtureKind.class));
    Optional<Shape> shape = shape(fields);
    double height = fields.quantity("height", Measure.LENGTH, 0, 120).orElse(0);
    OptionalDouble clearance = fields.quantity("clearance", Measure.LENGTH, 0, 100);
    Optional<Fixture.Traffic> traffic =
        fields.get("traffic").flatMap(v -> v.choice(Fixture.Traffic.class));
    Optional<Fixture.Service> service = service(fields);
    if (id.isEmpty() || kind.isEmpty() || shape.isEmpty()) {
      return Optional.empty();
    }
    if (fields.has("traffic") && !List.of(PAVING, GRAVEL, LAWN).contains(kind.get())) {
      fields.problem("traffic", "belongs to paving, gravel or a lawn only; leave it out");
    }
    for (String key : List.of("service", "depth")) {
      if (fields.has(key) && kind.get() != BURIED_SERVICE) {
        fields.problem(key, "belongs to a buried service only; leave it out");
      }
    }
    return Optional.of(
        new Fixture(id.get(), kind.get(), shape.get(), height, clearance, traffic, service));
  }

  /** What a buried service carries; unknown where only its depth is given. */
  private static Optional<Fixture.Service> service(Fields fields) {
    Optional<Fixture.Carries> carries =
        fields.get("service").flatMap(v -> v.choice(Fixture.Carries.class));
    OptionalDouble depth = fields.quantity("depth", Measure.LENGTH, 0, 20);
    return carries.isEmpty() && depth.isEmpty()
        ? Optional.empty()
        : Optional.of(new Fixture.Service(carries.orElse(Fixture.Carries.UNKNOWN), depth));
  }

  private static Optional<Shape> shape(Fields fields) {
    fields.onlyOneOf(List.of("area", "line", "at"), "a thing has one footprint");
    if (fields.has("area")) {
      Value value = fields.get("area").orElseThrow();
      Optional<List<Point>> corners = value.points(3).map(SiteReader::open);
      corners.flatMap(c -> Shapes.faultOfOutline(c, value::length)).ifPresent(value::problem);
      refuseRadius(fields, "area");
      return corners.map(Shape.Area::new);
    }
    if (fields.has("line")) {
      Value value = fields.get("line").orElseThrow();
      Optional<List<Point>> points = value.points(2);
      points.flatMap(Shapes::faultOfLine).ifPresent(value::problem);
      refuseRadius(fields, "line");
      return points.map(Shape.Line::new);
    }
    Optional<Value> at =
        fields.need("at", "the place and a radius of a round thing, or its area or line");
    if (at.isEmpty()) {
      return Optional.empty();
    }
    double radius = fields.needQuantity("radius", Measure.LENGTH, 0.005, 100);
    return at.get().point().map(centre -> new Shape.Round(centre, radius));
  }

  private static void refuseRadius(Fields fields, String footprint) {
    if (fields.has("radius")) {
      fields.problem("radius", "contradicts {0}: only a round thing has a radius", footprint);
    }
  }

  private static List<SpotHeight> spotHeights(Fields site) {
    List<SpotHeight> heights = new ArrayList<>();
    for (Value item : site.get("heights").map(Value::items).orElse(List.of())) {
      Optional<Fields> fields = item.fields(Section.SPOT_HEIGHT);
      if (fields.isEmpty()) {
        continue;
      }
      double height = fields.get().needQuantity("height", Measure.LENGTH, -500, 5000);
      Optional<Point> at =
          fields.get().need("at", "the place, such as [0 m, 0 m]").flatMap(Value::point);
      if (at.isPresent()) {
        if (heights.stream().anyMatch(h -> h.at().distanceTo(at.get()) < Shapes.TOLERANCE_M)) {
          item.problem("contradicts an earlier height: the place is the same");
        }
        heights.add(new SpotHeight(at.get(), height));
      }
    }
    return heights;
  }
}
