package org.grovewright.formats.geo;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.grovewright.model.Point;

/**
 * The outline of a polygon in GeoJSON (RFC 7946): a Polygon, a MultiPolygon of one part, a Feature
 * with one, or a FeatureCollection with one such feature.
 *
 * @param plane the plane about the outline's first corner
 * @param corners the corners in that plane, the last joining the first
 */
public record GeoJsonBoundary(LocalPlane plane, List<Point> corners) {
  private static final double FARTHEST_DEG = 0.1;

  /**
   * Names of longitude and latitude on WGS 84 in the member {@code crs} of the format's first issue
   * of 2008, which RFC 7946 has taken out.
   */
  private static final Set<String> EARTH =
      Set.of(
          "urn:ogc:def:crs:OGC:1.3:CRS84",
          "urn:ogc:def:crs:OGC::CRS84",
          "OGC:CRS84",
          "urn:ogc:def:crs:EPSG::4326",
          "EPSG:4326");

  private static final ObjectMapper JSON =
      new ObjectMapper(
          JsonFactory.builder()
              .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(40).build())
              .build());

  /** Copies the corners. */
  public GeoJsonBoundary {
    corners = List.copyOf(corners);
  }

  /**
   * Reads the outline.
   *
   * @throws BoundaryException if the text is not GeoJSON with one polygon
   */
  public static GeoJsonBoundary read(String text) {
    try {
      return of(ring(polygon(onEarth(JSON.readTree(text)))));
    } catch (JsonProcessingException e) {
      throw e.getLocation() == null
          ? new BoundaryException("the file is not JSON")
          : new BoundaryException(
              "the file is not JSON at its line {0}", e.getLocation().getLineNr());
    }
  }

  /**
   * The outline of corners given as longitude and latitude in degrees.
   *
   * @throws BoundaryException if a corner is not on the earth or the corners lie far apart
   */
  public static GeoJsonBoundary of(List<double[]> lonLat) {
    List<double[]> open = checked(lonLat);
    LocalPlane plane = new LocalPlane(open.get(0)[1], open.get(0)[0]);
    List<Point> corners = new ArrayList<>();
    for (double[] corner : open) {
      corners.add(plane.project(corner[1], corner[0]));
    }
    return new GeoJsonBoundary(plane, corners);
  }

  /**
   * The same file, once it is known that its places are longitude and latitude.
   *
   * @throws BoundaryException if it names another system of coordinates
   */
  public static JsonNode onEarth(JsonNode root) {
    String named = root.path("crs").path("properties").path("name").asText("");
    if (!named.isEmpty() && !EARTH.contains(named)) {
      throw new BoundaryException(
          "the places of the file are in the coordinates {0}; write it in longitude and latitude"
              + " (WGS 84)",
          named);
    }
    return root;
  }

  /**
   * The corners of a GeoJSON polygon, or of a MultiPolygon of one part, as longitude and latitude
   * in degrees, the first one not repeated at the end.
   *
   * @throws BoundaryException if it is not one plain outline on the earth, in a size that a grove
   *     can have
   */
  public static List<double[]> outline(JsonNode polygon) {
    return checked(ring(polygon));
  }

  private static List<double[]> checked(List<double[]> lonLat) {
    List<double[]> open = new ArrayList<>(lonLat);
    if (open.size() > 1 && same(open.get(0), open.get(open.size() - 1))) {
      open.remove(open.size() - 1);
    }
    if (open.size() < 3) {
      throw new BoundaryException("the outline needs at least three corners");
    }
    for (double[] corner : open) {
      if (!(Math.abs(corner[1]) <= 90 && Math.abs(corner[0]) <= 180)) {
        throw new BoundaryException(
            "a corner is not on the earth; a place is [longitude, latitude] in degrees");
      }
      if (Math.abs(corner[1] - open.get(0)[1]) > FARTHEST_DEG
          || Math.abs(corner[0] - open.get(0)[0]) > FARTHEST_DEG) {
        throw new BoundaryException(
            "the corners lie kilometres apart; a place is [longitude, latitude] in degrees");
      }
    }
    return open;
  }

  private static boolean same(double[] a, double[] b) {
    return a[0] == b[0] && a[1] == b[1];
  }

  private static JsonNode polygon(JsonNode node) {
    return switch (node.path("type").asText()) {
      case "Polygon", "MultiPolygon" -> node;
      case "Feature" -> polygon(node.path("geometry"));
      case "FeatureCollection" -> {
        JsonNode features = node.path("features");
        if (features.size() != 1) {
          throw new BoundaryException(
              "the file has {0} features; keep the one boundary", features.size());
        }
        yield polygon(features.get(0));
      }
      default ->
          throw new BoundaryException(
              "the file is no GeoJSON Polygon; draw the land as one polygon");
    };
  }

  private static List<double[]> ring(JsonNode polygon) {
    JsonNode rings = polygon.path("coordinates");
    if (polygon.path("type").asText().equals("MultiPolygon")) {
      if (rings.size() > 1) {
        throw new BoundaryException(
            "the outline is in {0} parts; draw the land as one polygon", rings.size());
      }
      rings = rings.path(0);
    }
    if (rings.size() != 1) {
      throw new BoundaryException(
          rings.size() == 0
              ? "the polygon has no coordinates"
              : "the polygon has holes; give the outline only, and what lies inside as fixed");
    }
    List<double[]> ring = new ArrayList<>();
    for (JsonNode position : rings.get(0)) {
      if (!position.path(0).isNumber() || !position.path(1).isNumber()) {
        throw new BoundaryException("a corner of the polygon is not two numbers");
      }
      ring.add(new double[] {position.get(0).asDouble(), position.get(1).asDouble()});
    }
    return ring;
  }
}
