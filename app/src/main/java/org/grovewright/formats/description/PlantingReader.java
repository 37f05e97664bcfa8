package org.grovewright.formats.description;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Row;
import org.grovewright.model.Site;
import org.grovewright.texts.Sentence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/** Reads the rows and all plants, and checks that they are on the land and not on one another. */
final class PlantingReader {
  /** How far from its row's line a plant given by coordinates may stand, metres. */
  private static final double FARTHEST_FROM_ROW_M = 5;

  private static final int MOST_PLANTS = 20_000;

  private final PlantReader plants;
  private final List<Row> rows = new ArrayList<>();
  private final List<RowReader.Placed> placed = new ArrayList<>();
  private final Ids rowIds = new Ids("row");
  private final Ids plantIds = new Ids("plant");
  private final Optional<PreparedGeometry> land;
  private final Map<String, Point> moved;

  /**
   * A reader of plants.
   *
   * @param catalogue knows the species
   * @param boundary corners of the land, or empty where they could not be read
   * @param moved places at which plants are to stand instead of their own, by name
   */
  PlantingReader(Catalogue catalogue, List<Point> boundary, Map<String, Point> moved) {
    this.plants = new PlantReader(catalogue);
    this.moved = moved;
    this.land =
        boundary.isEmpty()
            ? Optional.empty()
            : Optional.of(
                PreparedGeometryFactory.prepare(
                    Shapes.polygon(boundary).buffer(Shapes.TOLERANCE_M)));
  }

  /**
   * Reads and checks the rows and plants of a description.
   *
   * @param fields the description's fields
   * @param root the description
   * @param site the land; null where it could not be read
   * @param moved places at which plants are to stand instead of their own, by name
   */
  static PlantingReader read(
      Fields fields, Value root, Catalogue catalogue, Site site, Map<String, Point> moved) {
    PlantingReader plants =
        new PlantingReader(catalogue, site == null ? List.of() : site.boundary(), moved);
    fields.get("rows").ifPresent(plants::readRows);
    fields.get("plants").ifPresent(plants::readPlants);
    plants.checkPlaces(root);
    return plants;
  }

  List<Row> rows() {
    return rows;
  }

  /** Names of all rows, those too that have problems. */
  Set<String> rowIds() {
    return new LinkedHashSet<>(rowIds.all());
  }

  List<Planting> plantings() {
    return placed.stream().map(RowReader.Placed::plant).toList();
  }

  /** Path of the entry of each plant by its name. */
  Map<String, String> entries() {
    Map<String, String> entries = new LinkedHashMap<>();
    placed.forEach(one -> entries.put(one.plant().id(), one.value().path()));
    return entries;
  }

  void readRows(Value value) {
    RowReader reader = new RowReader(plants, plantIds, placed, moved);
    for (Value item : value.items()) {
      item.fields(Section.ROW)
          .ifPresent(
              fields -> {
                Optional<String> id =
                    fields.need("id", "a short name, such as A").flatMap(rowIds::read);
                Optional<List<Point>> line = line(fields);
                if (id.isPresent() && line.isPresent()) {
                  Row row = new Row(id.get(), line.get());
                  rows.add(row);
                  reader.read(fields, row);
                }
              });
    }
  }

  private Optional<List<Point>> line(Fields fields) {
    if (fields.has("line") && (fields.has("from") || fields.has("to"))) {
      fields.problem("line", "contradicts from and to: give the row in one of these ways");
      return Optional.empty();
    }
    Optional<List<Point>> line;
    String key;
    if (fields.has("line")) {
      key = "line";
      line = fields.get("line").flatMap(v -> v.points(2));
    } else {
      key = "to";
      Optional<Point> from =
          fields.need("from", "the row's start, such as [3 m, 4 m]").flatMap(Value::point);
      Optional<Point> to =
          fields.need("to", "the row's end, such as [33 m, 4 m]").flatMap(Value::point);
      line =
          from.isPresent() && to.isPresent()
              ? Optional.of(List.of(from.get(), to.get()))
              : Optional.empty();
    }
    Optional<Sentence> fault = line.flatMap(Shapes::faultOfLine);
    if (fault.isPresent()) {
      fields.problem(key, fault.get());
      return Optional.empty();
    }
    if (line.isPresent() && land.isPresent() && !land.get().covers(Shapes.line(line.get()))) {
      fields.problem(key, "the row leaves the land; both its ends and all between must lie inside");
    }
    return line;
  }

  void readPlants(Value value) {
    Map<String, Row> rowsById = new HashMap<>();
    rows.forEach(row -> rowsById.put(row.id(), row));
    Map<String, Integer> numbers = new HashMap<>();
    for (Value item : value.items()) {
      item.fields(Section.PLANT).ifPresent(fields -> readPlant(item, fields, rowsById, numbers));
    }
  }

  private void readPlant(
      Value item, Fields fields, Map<String, Row> rowsById, Map<String, Integer> numbers) {
    PlantReader.Kind kind = plants.kind(fields, Optional.empty(), OptionalDouble.empty());
    Optional<Value> atValue = fields.need("at", "the place, such as [5 m, 7 m]");
    if (atValue.isPresent() && !atValue.get().isList()) {
      atValue
          .get()
          .problem(
              "must be a place as [right, up], such as [5 m, 7 m]; a plant at a distance along a"
                  + " row stands under plants: of that row");
      return;
    }
    Optional<Point> at = atValue.flatMap(Value::point);
    Optional<String> row = fields.get("row").flatMap(Value::id);
    if (row.isPresent() && !rowIds.all().contains(row.get())) {
      fields.problem(
          "row", "there is no row '{0}'{1}", row.get(), Nearest.hint(row.get(), rowIds.all()));
    }
    Row line = row.map(rowsById::get).orElse(null);
    if (line != null && at.isPresent()) {
      double away = line.distanceTo(at.get());
      if (away > FARTHEST_FROM_ROW_M) {
        fields.problem(
            "row", "contradicts at: the place is {0} from row {1}", fields.length(away), line.id());
      }
    }
    String id =
        fields.has("id")
            ? fields.get("id").flatMap(plantIds::read).orElse("")
            : unnamed(kind, numbers, item);
    at.map(place -> moved.getOrDefault(id, place))
        .ifPresent(place -> placed.add(new RowReader.Placed(kind.at(id, place, row), item)));
  }

  private String unnamed(PlantReader.Kind kind, Map<String, Integer> numbers, Value item) {
    String species = kind.speciesKey();
    String id = species + "-" + numbers.merge(species, 1, Integer::sum);
    if (!species.isEmpty()) {
      plantIds.add(id, item);
    }
    return id;
  }

  /** Notes plants that stand outside the land or in one another's place. */
  void checkPlaces(Value root) {
    if (placed.size() > MOST_PLANTS) {
      root.problem("has {0} plants; at most {1} can be planned", placed.size(), MOST_PLANTS);
      return;
    }
    Map<Long, List<RowReader.Placed>> cells = new HashMap<>();
    for (RowReader.Placed one : placed) {
      Point at = one.plant().at();
      Geometry point = Shapes.point(at);
      if (land.isPresent() && !land.get().covers(point)) {
        one.value()
            .problem(
                "the plant {0} at [{1}, {2}] stands outside the land",
                one.plant().id(), one.value().length(at.x()), one.value().length(at.y()));
      }
      twin(at, cells)
          .ifPresent(
              twin ->
                  one.value()
                      .problem(
                          "the plant {0} stands in the same place as {1}",
                          one.plant().id(), twin.plant().id()));
      cells.computeIfAbsent(cell(at, 0, 0), c -> new ArrayList<>()).add(one);
    }
  }

  private static Optional<RowReader.Placed> twin(
      Point at, Map<Long, List<RowReader.Placed>> cells) {
    for (int dx = -1; dx <= 1; dx++) {
      for (int dy = -1; dy <= 1; dy++) {
        for (RowReader.Placed other : cells.getOrDefault(cell(at, dx, dy), List.of())) {
          if (other.plant().at().distanceTo(at) < Shapes.TOLERANCE_M) {
            return Optional.of(other);
          }
        }
      }
    }
    return Optional.empty();
  }

  private static long cell(Point at, int dx, int dy) {
    long x = (long) Math.floor(at.x() / Shapes.TOLERANCE_M) + dx;
    long y = (long) Math.floor(at.y() / Shapes.TOLERANCE_M) + dy;
    return x * 4_000_003L + y;
  }
}
