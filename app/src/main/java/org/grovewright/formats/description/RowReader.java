package org.grovewright.formats.description;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Row;
import org.grovewright.texts.Sentence;

/**
 * Reads one planting row and resolves everything on it to names and places. Plants without a name
 * are called after their row and their number along it: {@code A1}, {@code A2}; companions after
 * the plants they stand between or around: {@code A1-2.comfrey-1}, {@code A1.comfrey-1}.
 */
final class RowReader {
  private static final int MOST_PER_ENTRY = 500;

  private final PlantReader plants;
  private final Ids plantIds;
  private final List<Placed> placed;
  private final Map<String, Point> moved;

  /**
   * A reader of rows.
   *
   * @param plants reads what plants are
   * @param plantIds takes the names of all plants
   * @param placed takes the plants with the values they come from
   * @param moved places near which plants are to stand instead of their own, by name
   */
  RowReader(PlantReader plants, Ids plantIds, List<Placed> placed, Map<String, Point> moved) {
    this.plants = plants;
    this.plantIds = plantIds;
    this.placed = placed;
    this.moved = moved;
  }

  /**
   * A plant and where it is described.
   *
   * @param plant the plant
   * @param value its entry
   */
  record Placed(Planting plant, Value value) {}

  private record Main(double station, PlantReader.Kind kind, Optional<String> id, Value value) {}

  private record Companion(PlantReader.Kind kind, int count, double distanceM, Value value) {}

  /** Reads the plants on a row. */
  void read(Fields fields, Row row) {
    // What the row says wrongly is noted there, not with each of its plants.
    Optional<LocalDate> planted =
        fields.get("planted").map(value -> value.date().orElse(LocalDate.EPOCH));
    OptionalDouble container =
        fields
            .get("container")
            .map(value -> OptionalDouble.of(PlantReader.container(value).orElse(Double.NaN)))
            .orElse(OptionalDouble.empty());
    List<Main> mains = new ArrayList<>();
    for (Value item : fields.get("plants").map(Value::items).orElse(List.of())) {
      item.fields(Section.ROW_PLANT)
          .ifPresent(entry -> mains(entry, item, row, planted, container, mains));
    }
    mains.sort(Comparator.comparingDouble(Main::station));
    List<Main> named = new ArrayList<>();
    for (int i = 0; i < mains.size(); i++) {
      Main main = mains.get(i);
      String id = main.id().orElse(prefix(row.id()) + (i + 1));
      double station = moved.containsKey(id) ? row.stationOf(moved.get(id)) : main.station();
      named.add(new Main(station, main.kind(), Optional.of(id), main.value()));
    }
    // A moved plant keeps its name, but may stand between others now.
    named.sort(Comparator.comparingDouble(Main::station));
    List<String> names = new ArrayList<>();
    for (Main main : named) {
      String id = main.id().orElseThrow();
      names.add(id);
      plantIds.add(id, main.value());
      Planting plant = main.kind().at(id, row.at(main.station()), Optional.of(row.id()));
      placed.add(new Placed(plant, main.value()));
    }
    companions(fields, row, named, names, planted);
  }

  /** What the numbers of a row's plants follow: A gives A1, but north gives north-1. */
  static String prefix(String rowId) {
    return rowId.length() == 1 && Character.isLetter(rowId.charAt(0)) ? rowId : rowId + "-";
  }

  private void mains(
      Fields entry,
      Value item,
      Row row,
      Optional<LocalDate> planted,
      OptionalDouble container,
      List<Main> mains) {
    PlantReader.Kind kind = plants.kind(entry, planted, container);
    Optional<String> id = entry.get("id").flatMap(Value::id);
    if (entry.has("at") && entry.get("at").orElseThrow().isList()) {
      entry.problem(
          "at",
          "a plant of a row stands along it: give the distance from its start, such as 3 m; list"
              + " plants with coordinates under plants:");
      return;
    }
    double length = row.lengthM();
    if (!entry.has("first") && !entry.has("every") && !entry.has("count")) {
      entry.need("at", "the distance from the row's start, such as 3 m; or first, every and count");
      OptionalDouble at = entry.quantity("at", Measure.LENGTH, 0, 5000);
      if (at.isPresent() && onRow(entry, "at", at.getAsDouble(), length)) {
        mains.add(new Main(at.getAsDouble(), kind, id, item));
      }
      return;
    }
    if (entry.has("at")) {
      entry.problem("at", "contradicts first, every and count: those place several plants");
    }
    if (id.isPresent()) {
      entry.problem("id", "contradicts count: several plants cannot share a name");
    }
    double first = entry.needQuantity("first", Measure.LENGTH, 0, 5000);
    double every = entry.needQuantity("every", Measure.LENGTH, 0.05, 500);
    int count =
        entry
            .need("count", "how many plants, such as 5")
            .map(v -> v.whole(1, MOST_PER_ENTRY).orElse(0))
            .orElse(0);
    if (count > 0 && onRow(entry, "count", first + (count - 1) * every, length)) {
      for (int i = 0; i < count; i++) {
        mains.add(new Main(first + i * every, kind, Optional.empty(), item));
      }
    }
  }

  private static boolean onRow(Fields entry, String key, double station, double length) {
    if (station > length + Shapes.TOLERANCE_M) {
      entry.problem(
          key,
          "reaches {0} along the row, which is {1} long",
          entry.length(station),
          entry.length(length));
      return false;
    }
    return !Double.isNaN(station);
  }

  private void companions(
      Fields fields, Row row, List<Main> mains, List<String> names, Optional<LocalDate> planted) {
    // Companions of several entries share a gap or a tree: they are spread evenly together.
    Map<Integer, List<Companion>> gaps = new LinkedHashMap<>();
    Map<Integer, List<Companion>> trees = new LinkedHashMap<>();
    for (Value item : fields.get("companions").map(Value::items).orElse(List.of())) {
      Optional<Fields> entry = item.fields(Section.COMPANION);
      if (entry.isEmpty()) {
        continue;
      }
      PlantReader.Kind kind = plants.kind(entry.get(), planted, OptionalDouble.empty());
      int count = entry.get().get("count").map(v -> v.whole(1, 50).orElse(1)).orElse(1);
      entry.get().onlyOneOf(List.of("between", "around"), "companions stand in one of these ways");
      if (entry.get().has("around")) {
        double distance = entry.get().needQuantity("distance", Measure.LENGTH, 0.05, 20);
        Companion companion = new Companion(kind, count, distance, item);
        List<Integer> around = trees(entry.get().get("around").orElseThrow(), names);
        if (!Double.isNaN(distance)) {
          around.forEach(
              tree -> trees.computeIfAbsent(tree, t -> new ArrayList<>()).add(companion));
        }
      } else {
        if (entry.get().has("distance")) {
          entry.get().problem("distance", "contradicts between: only companions around have it");
        }
        Optional<Value> between =
            entry.get().need("between", "each, or two neighbours such as [A1, A2]; or around");
        Companion companion = new Companion(kind, count, 0, item);
        for (int gap : between.map(v -> gaps(v, names)).orElse(List.of())) {
          gaps.computeIfAbsent(gap, g -> new ArrayList<>()).add(companion);
        }
      }
    }
    gaps.forEach((gap, companions) -> inGap(row, mains, gap, companions));
    trees.forEach((tree, companions) -> around(row, mains.get(tree), names.get(tree), companions));
  }

  private static List<Integer> gaps(Value between, List<String> names) {
    if (between.scalarIs(text -> text.equals("each"))) {
      if (names.size() < 2) {
        between.problem("there are no two plants in this row to stand between");
      }
      return java.util.stream.IntStream.range(0, Math.max(0, names.size() - 1)).boxed().toList();
    }
    Sentence wanted = Sentence.of("each, or two neighbours in the row such as [A1, A2]");
    if (!between.isList()) {
      between.problem("must be {0}", wanted);
      return List.of();
    }
    List<Integer> ends = indices(between, names);
    if (ends.size() == 2 && Math.abs(ends.get(0) - ends.get(1)) == 1) {
      return List.of(Math.min(ends.get(0), ends.get(1)));
    }
    if (ends.size() == between.items().size()) {
      between.problem("must be {0}", wanted);
    }
    return List.of();
  }

  private static List<Integer> trees(Value around, List<String> names) {
    if (around.scalarIs(text -> text.equals("each"))) {
      if (names.isEmpty()) {
        around.problem("there is no plant in this row to stand around");
      }
      return java.util.stream.IntStream.range(0, names.size()).boxed().toList();
    }
    if (!around.isList()) {
      around.problem("must be each, or a list of plants of the row such as [A1, A3]");
      return List.of();
    }
    return indices(around, names).stream().distinct().toList();
  }

  private static List<Integer> indices(Value list, List<String> names) {
    List<Integer> indices = new ArrayList<>();
    for (Value item : list.items()) {
      Optional<String> name = item.id();
      if (name.isPresent()) {
        int index = names.indexOf(name.get());
        if (index >= 0) {
          indices.add(index);
        } else {
          item.problem(
              "there is no plant '{0}' in this row{1}; it has {2}",
              name.get(), Nearest.hint(name.get(), names), String.join(", ", names));
        }
      }
    }
    return indices;
  }

  private void inGap(Row row, List<Main> mains, int gap, List<Companion> companions) {
    double from = mains.get(gap).station();
    double until = mains.get(gap + 1).station();
    int total = companions.stream().mapToInt(Companion::count).sum();
    String name = prefix(row.id()) + (gap + 1) + "-" + (gap + 2);
    Map<String, Integer> numbers = new LinkedHashMap<>();
    int standing = 0;
    for (Companion companion : companions) {
      for (int i = 0; i < companion.count(); i++) {
        standing++;
        Point place = row.at(from + (until - from) * standing / (total + 1));
        add(companion, name, numbers, place, row);
      }
    }
  }

  private void around(Row row, Main main, String name, List<Companion> companions) {
    Point centre = row.at(main.station());
    Point start = row.line().get(0);
    Point end = row.line().get(row.line().size() - 1);
    // The first stands beside the row, to the left of its direction, out of the way of the tubing.
    double first = Math.atan2(end.y() - start.y(), end.x() - start.x()) + Math.PI / 2;
    int total = companions.stream().mapToInt(Companion::count).sum();
    Map<String, Integer> numbers = new LinkedHashMap<>();
    int standing = 0;
    for (Companion companion : companions) {
      for (int i = 0; i < companion.count(); i++) {
        double angle = first + 2 * Math.PI * standing / total;
        Point place =
            new Point(
                centre.x() + companion.distanceM() * Math.cos(angle),
                centre.y() + companion.distanceM() * Math.sin(angle));
        standing++;
        add(companion, name, numbers, place, row);
      }
    }
  }

  private void add(
      Companion companion, String name, Map<String, Integer> numbers, Point place, Row row) {
    String species = companion.kind().speciesKey();
    String id = name + "." + species + "-" + numbers.merge(species, 1, Integer::sum);
    plantIds.add(id, companion.value());
    placed.add(
        new Placed(companion.kind().at(id, place, Optional.of(row.id())), companion.value()));
  }
}
