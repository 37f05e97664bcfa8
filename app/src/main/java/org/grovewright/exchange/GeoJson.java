package org.grovewright.exchange;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.grovewright.exchange.Places.PlantPlace;
import org.grovewright.formats.geo.BoundaryException;
import org.grovewright.formats.geo.GeoJsonBoundary;
import org.grovewright.model.Fixture;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Row;
import org.grovewright.model.Shape;

/**
 * Land and plants as GeoJSON. Each feature has a property {@code kind}: {@code boundary}, {@code
 * fixture}, {@code row}, {@code plant} or {@code supply}.
 */
public final class GeoJson {
  private static final ObjectMapper JSON =
      new ObjectMapper(
          JsonFactory.builder()
              .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(40).build())
              .build());

  /** A hundredth of a millimetre on the ground: what is read back is what was written. */
  private static final int DECIMALS = 10;

  private static final int MOST_FEATURES = 20_000;

  private GeoJson() {}

  /** The file of a grove. */
  public static String write(Grove grove) {
    OnEarth earth = OnEarth.of(grove.site());
    ObjectNode root = JSON.createObjectNode();
    root.put("type", "FeatureCollection");
    ArrayNode features = root.putArray("features");
    ObjectNode land = feature(features, "boundary", grove.site().name());
    polygon(land.putObject("geometry"), grove.site().boundary(), earth);
    for (Fixture fixture : grove.site().fixtures()) {
      ObjectNode one = feature(features, "fixture", fixture.id());
      ObjectNode properties = (ObjectNode) one.get("properties");
      properties.put("thing", fixture.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '));
      properties.put("height_m", fixture.heightM());
      shape(one, properties, fixture.shape(), earth);
    }
    for (Row row : grove.rows()) {
      ObjectNode one = feature(features, "row", row.id());
      line(one.putObject("geometry"), row.line(), earth);
    }
    for (Planting plant : grove.plantings()) {
      ObjectNode one = feature(features, "plant", plant.id());
      ObjectNode properties = (ObjectNode) one.get("properties");
      properties.put("species", plant.speciesKey());
      plant.cultivar().ifPresent(cultivar -> properties.put("cultivar", cultivar));
      properties.put("planted", plant.plantedOn().toString());
      point(one.putObject("geometry"), plant.at(), earth);
    }
    point(
        feature(features, "supply", "water supply").putObject("geometry"),
        grove.supply().at(),
        earth);
    try {
      return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(root).replace("\r\n", "\n")
          + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("writing to memory cannot fail", e);
    }
  }

  private static ObjectNode feature(ArrayNode features, String kind, String name) {
    ObjectNode feature = features.addObject();
    feature.put("type", "Feature");
    ObjectNode properties = feature.putObject("properties");
    properties.put("kind", kind);
    properties.put("name", name);
    return feature;
  }

  private static void shape(ObjectNode feature, ObjectNode properties, Shape shape, OnEarth earth) {
    ObjectNode geometry = feature.putObject("geometry");
    if (shape instanceof Shape.Area area) {
      polygon(geometry, area.corners(), earth);
    } else if (shape instanceof Shape.Line line) {
      line(geometry, line.points(), earth);
    } else {
      Shape.Round round = (Shape.Round) shape;
      properties.put("radius_m", round.radiusM());
      point(geometry, round.centre(), earth);
    }
  }

  /** RFC 7946 wants the outer ring closed and counterclockwise. */
  private static void polygon(ObjectNode geometry, List<Point> corners, OnEarth earth) {
    List<Point> ring = new ArrayList<>(corners);
    if (twiceArea(ring) < 0) {
      Collections.reverse(ring);
    }
    ring.add(ring.get(0));
    geometry.put("type", "Polygon");
    positions(geometry.putArray("coordinates").addArray(), ring, earth);
  }

  private static double twiceArea(List<Point> corners) {
    double sum = 0;
    for (int i = 0; i < corners.size(); i++) {
      Point a = corners.get(i);
      Point b = corners.get((i + 1) % corners.size());
      sum += a.x() * b.y() - b.x() * a.y();
    }
    return sum;
  }

  private static void line(ObjectNode geometry, List<Point> points, OnEarth earth) {
    geometry.put("type", "LineString");
    positions(geometry.putArray("coordinates"), points, earth);
  }

  private static void point(ObjectNode geometry, Point place, OnEarth earth) {
    geometry.put("type", "Point");
    position(geometry.putArray("coordinates"), place, earth);
  }

  private static void positions(ArrayNode array, List<Point> points, OnEarth earth) {
    points.forEach(point -> position(array.addArray(), point, earth));
  }

  private static void position(ArrayNode array, Point place, OnEarth earth) {
    double[] latLon = earth.toEarth(place);
    array.add(rounded(latLon[1]));
    array.add(rounded(latLon[0]));
  }

  private static BigDecimal rounded(double degrees) {
    return BigDecimal.valueOf(degrees).setScale(DECIMALS, RoundingMode.HALF_EVEN);
  }

  /**
   * Reads outline and plants: the outline is the polygon of kind {@code boundary} or else the only
   * polygon; every point that is not marked as something else is a plant. Members of a collection
   * of geometries count like features of their own.
   *
   * @throws ExchangeException if the text is no such file
   */
  public static Places read(String text) {
    JsonNode file;
    try {
      file = JSON.readTree(text);
    } catch (JsonProcessingException e) {
      if (e.getLocation() == null) {
        throw new ExchangeException("The file is not JSON.");
      }
      throw new ExchangeException(
          "The file is not JSON at its line {0}.", e.getLocation().getLineNr());
    }
    JsonNode root = told(() -> GeoJsonBoundary.onEarth(file));
    List<JsonNode> features = new ArrayList<>();
    if (root.path("type").asText().equals("FeatureCollection")) {
      root.path("features").forEach(features::add);
    } else if (root.path("type").asText().equals("Feature")) {
      features.add(root);
    } else {
      throw new ExchangeException(
          "The file is no GeoJSON with features; give a FeatureCollection or a Feature.");
    }
    if (features.size() > MOST_FEATURES) {
      throw new ExchangeException("The file has more than {0} features.", MOST_FEATURES);
    }
    List<List<double[]>> marked = new ArrayList<>();
    List<List<double[]>> polygons = new ArrayList<>();
    List<PlantPlace> plants = new ArrayList<>();
    for (JsonNode feature : features) {
      JsonNode properties = feature.path("properties");
      String kind = properties.path("kind").asText("");
      for (JsonNode geometry : plain(feature.path("geometry"))) {
        switch (geometry.path("type").asText()) {
          case "Polygon", "MultiPolygon" -> {
            if (kind.isEmpty() || kind.equals("boundary")) {
              (kind.isEmpty() ? polygons : marked).add(ring(geometry));
            }
          }
          case "Point" -> {
            if (kind.isEmpty() || kind.equals("plant")) {
              plants.add(plant(properties, geometry));
            }
          }
          default -> {}
        }
      }
    }
    List<List<double[]>> outlines = marked.isEmpty() ? polygons : marked;
    if (outlines.size() > 1) {
      throw new ExchangeException(
          "The file has {0} polygons; give the land's outline the property kind: boundary.",
          outlines.size());
    }
    return new Places(outlines.isEmpty() ? List.of() : outlines.get(0), plants);
  }

  /** A geometry, or the members of a collection of them. */
  private static Iterable<JsonNode> plain(JsonNode geometry) {
    return geometry.path("type").asText().equals("GeometryCollection")
        ? geometry.path("geometries")
        : List.of(geometry);
  }

  private static PlantPlace plant(JsonNode properties, JsonNode geometry) {
    double[] place = latLon(geometry.path("coordinates"));
    return new PlantPlace(
        properties.path("name").asText(""),
        Optional.of(properties.path("species").asText("")).filter(word -> !word.isBlank()),
        place[0],
        place[1]);
  }

  private static List<double[]> ring(JsonNode polygon) {
    return told(() -> GeoJsonBoundary.outline(polygon)).stream()
        .map(corner -> new double[] {corner[1], corner[0]})
        .toList();
  }

  /** What a reader of outlines answers; what it refuses is a whole sentence here. */
  private static <T> T told(Supplier<T> reading) {
    try {
      return reading.get();
    } catch (BoundaryException e) {
      throw new ExchangeException(e.sentence().whole());
    }
  }

  private static double[] latLon(JsonNode position) {
    double lon = position.path(0).asDouble(Double.NaN);
    double lat = position.path(1).asDouble(Double.NaN);
    if (!(Math.abs(lat) <= 90 && Math.abs(lon) <= 180)) {
      throw new ExchangeException(
          "A place of the file is not on the earth; a place is [longitude, latitude] in degrees.");
    }
    return new double[] {lat, lon};
  }
}
