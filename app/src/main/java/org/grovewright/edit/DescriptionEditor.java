package org.grovewright.edit;

import com.fasterxml.jackson.core.JsonPointer;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.description.DescriptionReader.Described;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences.Units;
import org.grovewright.model.Row;
import org.grovewright.quantity.FigureBook;

/** Makes changes in descriptions. */
public final class DescriptionEditor {
  private static final double METRES_PER_FOOT = 0.3048;
  private static final List<String> PLACING = List.of("first", "every", "count");

  private final DescriptionReader reader;

  /** An editor that finds plants with a reader. */
  public DescriptionEditor(DescriptionReader reader) {
    this.reader = reader;
  }

  /**
   * Makes changes one after another.
   *
   * @param text the description
   * @param operations the changes
   * @return the changed description; whether it can be planned is for its reader to say
   * @throws EditException if one of them cannot be made; none is made then
   */
  public String apply(String text, List<Operation> operations) {
    String changed = text;
    for (Operation operation : operations) {
      changed = apply(changed, operation);
    }
    return changed;
  }

  private String apply(String text, Operation operation) {
    if (operation instanceof Operation.Replace replace) {
      return YamlDocument.parse(replace.text()).text();
    }
    YamlDocument document = YamlDocument.parse(text);
    if (operation instanceof Operation.SetField set) {
      return document.set(set.place(), set.value()).text();
    }
    if (operation instanceof Operation.RemoveField remove) {
      return document.remove(remove.place()).text();
    }
    Described described = read(document);
    if (operation instanceof Operation.AddPlant add) {
      return add(document, described, add).text();
    }
    if (operation instanceof Operation.MovePlant move) {
      return move(document, described, move).text();
    }
    if (operation instanceof Operation.SetPlant set) {
      return set(document, described, set).text();
    }
    if (operation instanceof Operation.MoveRow move) {
      return move(document, described, move).text();
    }
    return remove(document, described, ((Operation.RemovePlant) operation).plantId()).text();
  }

  private Described read(YamlDocument document) {
    try {
      return reader.describe(document.text(), "description");
    } catch (DescriptionException e) {
      throw new EditException(
          "Put the mistakes in the description right first; then plants can be moved again.");
    }
  }

  private YamlDocument add(YamlDocument document, Described described, Operation.AddPlant add) {
    Map<String, Object> entry = new LinkedHashMap<>();
    if (add.rowId().isEmpty()) {
      entry.put("id", unused(described, add.species() + "-"));
      entry.put("species", add.species());
      entry.put("at", place(add.at(), described));
      entry.putAll(new TreeMap<>(add.further()));
      return document.set(JsonPointer.valueOf("/plants/-"), entry);
    }
    Row row = row(described, add.rowId().get());
    YamlDocument named = nameAll(document, described, row.id());
    entry.put("id", unused(described, prefix(row.id())));
    entry.put("species", add.species());
    entry.put("at", length(row.stationOf(add.at()), described));
    entry.putAll(new TreeMap<>(add.further()));
    int index = described.grove().rows().indexOf(row);
    return named.set(JsonPointer.valueOf("/rows/" + index + "/plants/-"), entry);
  }

  private YamlDocument move(YamlDocument document, Described described, Operation.MovePlant move) {
    Planting plant = plant(described, move.plantId());
    JsonPointer entry = ownEntry(described, plant);
    if (!inRow(entry)) {
      return document.set(entry.append(JsonPointer.valueOf("/at")), place(move.to(), described));
    }
    Row row = row(described, plant.rowId().orElseThrow());
    YamlDocument named = nameAll(document, described, row.id());
    JsonPointer place = ownEntry(read(named), plant);
    if (!move.offRow()) {
      return named.set(
          place.append(JsonPointer.valueOf("/at")), length(row.stationOf(move.to()), described));
    }
    Map<String, Object> fields = fields(named, place);
    Map<String, Object> inherited = fields(named, place.head().head());
    Map<String, Object> free = new LinkedHashMap<>(fields);
    free.put("at", place(move.to(), described));
    for (String key : List.of("planted", "container")) {
      if (!free.containsKey(key) && inherited.containsKey(key)) {
        free.put(key, inherited.get(key));
      }
    }
    return named.remove(place).set(JsonPointer.valueOf("/plants/-"), free);
  }

  private YamlDocument set(YamlDocument document, Described described, Operation.SetPlant set) {
    Planting plant = plant(described, set.plantId());
    boolean companion = described.isSpread(plant.id());
    JsonPointer entry = companion ? loneEntry(described, plant) : ownEntry(described, plant);
    YamlDocument changed = document;
    if (inRow(entry) && !companion) {
      changed = nameAll(document, described, plant.rowId().orElseThrow());
      entry = ownEntry(read(changed), plant);
    }
    for (Map.Entry<String, Object> field : new TreeMap<>(set.fields()).entrySet()) {
      changed = changed.set(entry.appendProperty(field.getKey()), field.getValue());
    }
    for (String field : set.without()) {
      JsonPointer place = entry.appendProperty(field);
      if (changed.value(place).isPresent()) {
        changed = changed.remove(place);
      }
    }
    return changed;
  }

  private static YamlDocument move(
      YamlDocument document, Described described, Operation.MoveRow move) {
    Row row = row(described, move.rowId());
    JsonPointer entry = JsonPointer.valueOf("/rows/" + described.grove().rows().indexOf(row));
    List<List<String>> line = move.line().stream().map(point -> place(point, described)).toList();
    boolean straight = document.value(entry.appendProperty("line")).isEmpty();
    if (straight && line.size() == 2) {
      return document
          .set(entry.appendProperty("from"), line.get(0))
          .set(entry.appendProperty("to"), line.get(1));
    }
    YamlDocument changed =
        straight
            ? document.remove(entry.appendProperty("from")).remove(entry.appendProperty("to"))
            : document;
    return changed.set(entry.appendProperty("line"), line);
  }

  private YamlDocument remove(YamlDocument document, Described described, String plantId) {
    Planting plant = plant(described, plantId);
    JsonPointer entry = ownEntry(described, plant);
    if (!inRow(entry)) {
      return document.remove(entry);
    }
    YamlDocument named = nameAll(document, described, plant.rowId().orElseThrow());
    return named.remove(ownEntry(read(named), plant));
  }

  /**
   * Writes the names of all plants of a row down. Unnamed plants are called by their order along
   * the row, so that a change of the order would give their names, and the journal's entries about
   * them, to other plants. An entry for several plants becomes an entry for each.
   */
  private static YamlDocument nameAll(YamlDocument document, Described described, String rowId) {
    Row row = row(described, rowId);
    Map<String, List<Planting>> byEntry = new LinkedHashMap<>();
    for (Planting plant : described.grove().plantings()) {
      String entry = described.plantEntries().get(plant.id());
      if (plant.rowId().equals(java.util.Optional.of(rowId)) && entry.contains("].plants[")) {
        byEntry.computeIfAbsent(entry, e -> new ArrayList<>()).add(plant);
      }
    }
    YamlDocument named = document;
    for (Map.Entry<String, List<Planting>> one : byEntry.entrySet()) {
      JsonPointer place = pointer(one.getKey());
      Map<String, Object> fields = fields(named, place);
      if (!fields.containsKey("count")) {
        if (!fields.containsKey("id")) {
          named = named.set(place.append(JsonPointer.valueOf("/id")), one.getValue().get(0).id());
        }
        continue;
      }
      boolean first = true;
      for (Planting plant : one.getValue()) {
        Map<String, Object> entry = new LinkedHashMap<>();
        entry.put("id", plant.id());
        fields.forEach(entry::put);
        PLACING.forEach(entry::remove);
        entry.put("at", length(row.stationOf(plant.at()), described));
        named = named.set(first ? place : place.head().append(JsonPointer.valueOf("/-")), entry);
        first = false;
      }
    }
    return named;
  }

  private static Planting plant(Described described, String id) {
    return described.grove().plantings().stream()
        .filter(plant -> plant.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new EditException("There is no plant '{0}'.", id));
  }

  private static Row row(Described described, String id) {
    return described.grove().rows().stream()
        .filter(row -> row.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new EditException("There is no row '{0}'.", id));
  }

  private static JsonPointer ownEntry(Described described, Planting plant) {
    if (described.isSpread(plant.id())) {
      throw new EditException(
          "{0} stands where the companions of its row are spread; change the row's companions"
              + " instead.",
          plant.id());
    }
    return pointer(described.plantEntries().get(plant.id()));
  }

  /** The entry of a companion that is the only one of its entry. */
  private static JsonPointer loneEntry(Described described, Planting plant) {
    String entry = described.plantEntries().get(plant.id());
    long together = described.plantEntries().values().stream().filter(entry::equals).count();
    if (together > 1) {
      throw new EditException(
          "{0} is one of {1} companions that row {2} describes together, so what is said of one is"
              + " said of all of them; write it at the companions of that row in the description,"
              + " or describe {0} by itself under plants.",
          plant.id(), together, plant.rowId().orElseThrow());
    }
    return pointer(entry);
  }

  private static boolean inRow(JsonPointer entry) {
    return entry.getMatchingProperty().equals("rows");
  }

  private static Map<String, Object> fields(YamlDocument document, JsonPointer place) {
    Map<String, Object> fields = new LinkedHashMap<>();
    if (document.value(place).orElse(null) instanceof Map<?, ?> map) {
      map.forEach((key, value) -> fields.put(String.valueOf(key), value));
    }
    return fields;
  }

  /** The pointer of a path as the reader writes it, such as {@code rows[0].plants[2]}. */
  private static JsonPointer pointer(String path) {
    return JsonPointer.valueOf("/" + path.replace("[", "/").replace("]", "").replace('.', '/'));
  }

  /** The description language numbers a row's plants after its name in the same way. */
  private static String prefix(String rowId) {
    return rowId.length() == 1 && Character.isLetter(rowId.charAt(0)) ? rowId : rowId + "-";
  }

  private static String unused(Described described, String prefix) {
    Set<String> used = new HashSet<>();
    described.grove().plantings().forEach(plant -> used.add(FigureBook.slug(plant.id())));
    int number = 1;
    while (used.contains(FigureBook.slug(prefix + number))) {
      number++;
    }
    return prefix + number;
  }

  private static List<String> place(Point at, Described described) {
    return List.of(length(at.x(), described), length(at.y(), described));
  }

  /** A length in the owner's unit, to the hundredth: finer than anybody sets a tree. */
  private static String length(double metres, Described described) {
    boolean us = described.grove().preferences().units() == Units.US;
    BigDecimal rounded =
        BigDecimal.valueOf(us ? metres / METRES_PER_FOOT : metres)
            .setScale(2, RoundingMode.HALF_EVEN)
            .stripTrailingZeros();
    String number = rounded.signum() == 0 ? "0" : rounded.toPlainString();
    return number + (us ? " ft" : " m");
  }
}
