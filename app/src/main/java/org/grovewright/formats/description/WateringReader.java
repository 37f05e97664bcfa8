package org.grovewright.formats.description;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.Point;
import org.grovewright.model.Watering;
import org.grovewright.texts.Sentence;

/** Reads the watering system, or the wish to have one proposed. */
final class WateringReader {
  private final Catalogue catalogue;
  private final Set<String> rowIds;
  private final Set<String> wateredRows = new HashSet<>();

  /** A reader of watering for these rows. */
  WateringReader(Catalogue catalogue, Set<String> rowIds) {
    this.catalogue = catalogue;
    this.rowIds = rowIds;
  }

  /** The wish to have everything proposed, which holds where a description is silent. */
  static Watering proposal() {
    return new Watering(
        true,
        Optional.empty(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  Watering read(Value value) {
    Optional<Fields> found = value.fields(Section.WATERING);
    if (found.isEmpty()) {
      return null;
    }
    Fields fields = found.get();
    boolean propose = fields.get("propose").flatMap(Value::yesNo).orElse(true);
    Optional<Fields> main = fields.get("main").flatMap(v -> v.fields(Section.MAIN));
    Optional<String> mainPipe = main.flatMap(m -> m.key("pipe", catalogue.pipes(), "pipe"));
    List<Point> route =
        main.flatMap(m -> m.get("route")).flatMap(v -> v.points(0)).orElse(List.of());
    boolean laid = main.flatMap(m -> m.get("laid")).flatMap(Value::yesNo).orElse(false);
    if (laid) {
      main.ifPresent(m -> checkLaid(m, route));
    }
    if (!propose) {
      fields.need("zones", "the zones with their laterals, or propose: true");
      fields.need("main", "the pipe from the supply to the rows, or propose: true");
      main.ifPresent(m -> m.need("pipe", "the catalogue's key of the main, or propose: true"));
    }
    List<Watering.Zone> zones = zones(fields, propose);
    List<Watering.Lateral> laterals = ownLaterals(fields, propose, !zones.isEmpty());
    return new Watering(
        propose,
        mainPipe,
        route,
        laid,
        fields.key("filter", catalogue.filters(), "filter"),
        fields.key("regulator", catalogue.regulators(), "regulator"),
        chosen(fields, propose),
        wishes(fields),
        zones,
        laterals);
  }

  /** A main that lies there is known by its pipe and by its bends as far as its end. */
  private static void checkLaid(Fields main, List<Point> route) {
    main.need("pipe", "the catalogue's key of the pipe that lies there, or laid: false");
    Optional<Value> given =
        main.need(
            "route", "the bends of the main that lies there, the last its end, or laid: false");
    if (route.isEmpty()) {
      given
          .filter(Value::isList)
          .ifPresent(
              v ->
                  v.problem(
                      "is empty; give the bends of the main that lies there, the last its end, or"
                          + " laid: false"));
    }
  }

  /** Laterals that are kept while everything else is proposed. */
  private List<Watering.Lateral> ownLaterals(Fields watering, boolean propose, boolean zones) {
    Optional<Value> list = watering.get("laterals");
    if (list.isPresent() && (zones || !propose)) {
      list.get()
          .problem(
              "stands for itself only where the zones are proposed; put each line into its zone"
                  + " instead");
      return List.of();
    }
    List<Watering.Lateral> laterals = new ArrayList<>();
    for (Value item : list.map(Value::items).orElse(List.of())) {
      item.fields(Section.OWN_LATERAL)
          .map(fields -> lateral(fields, true))
          .ifPresent(laterals::add);
    }
    return laterals;
  }

  private static Watering.Wishes wishes(Fields fields) {
    OptionalInt sorts =
        fields.get("emitter_sorts").map(v -> v.whole(1, 12)).orElse(OptionalInt.empty());
    OptionalInt inAll =
        fields.get("emitter_sorts_in_all").map(v -> v.whole(1, 24)).orElse(OptionalInt.empty());
    if (sorts.isPresent() && inAll.isPresent() && inAll.getAsInt() < sorts.getAsInt()) {
      fields
          .get("emitter_sorts_in_all")
          .ifPresent(
              v -> v.problem("is less than emitter_sorts, the most behind one valve; raise it"));
    }
    OptionalDouble hour =
        fields
            .get("hour_of_work")
            .map(
                v ->
                    v.number(
                        new Range(0, 100_000),
                        "an amount of money without its currency, such as 20; 0 if your own time"
                            + " counts nothing"))
            .orElse(OptionalDouble.empty());
    return new Watering.Wishes(sorts, inAll, hour);
  }

  private static Optional<String> chosen(Fields fields, boolean propose) {
    Optional<Value> value = fields.get("choose");
    if (!propose && value.isPresent()) {
      value.get().problem("has nothing to choose from with propose: false; leave out one of both");
      return Optional.empty();
    }
    return value.flatMap(
        v -> v.text("the short name of a way to build it, from the report of an earlier plan"));
  }

  private List<Watering.Zone> zones(Fields watering, boolean propose) {
    List<Watering.Zone> zones = new ArrayList<>();
    List<Value> items = watering.get("zones").map(Value::items).orElse(List.of());
    if (items.isEmpty() && !propose) {
      watering
          .get("zones")
          .filter(Value::isList)
          .ifPresent(v -> v.problem("is empty; give the zones, or propose: true"));
    }
    Ids ids = new Ids("zone");
    for (Value item : items) {
      item.fields(Section.ZONE)
          .ifPresent(
              fields -> {
                String id =
                    fields
                        .need("id", "a short name of the zone, such as north")
                        .flatMap(ids::read)
                        .orElse("");
                zones.add(new Watering.Zone(id, laterals(fields, propose)));
              });
    }
    return zones;
  }

  private List<Watering.Lateral> laterals(Fields zone, boolean propose) {
    List<Watering.Lateral> laterals = new ArrayList<>();
    Optional<Value> list = zone.need("laterals", "the lines of the zone, one a row");
    List<Value> items = list.map(Value::items).orElse(List.of());
    if (items.isEmpty()) {
      list.filter(Value::isList)
          .ifPresent(v -> v.problem("is empty; a zone has a lateral at least"));
    }
    for (Value item : items) {
      item.fields(Section.LATERAL).map(fields -> lateral(fields, propose)).ifPresent(laterals::add);
    }
    return laterals;
  }

  private Watering.Lateral lateral(Fields fields, boolean propose) {
    Optional<Value> row = fields.need("row", "the row it serves");
    Optional<String> rowId = row.flatMap(Value::id);
    rowId.ifPresent(id -> checkRow(row.orElseThrow(), id));
    Optional<Watering.Run> run =
        fields
            .need("run", "dead end, loop or two sided")
            .flatMap(v -> v.choice(Watering.Run.class));
    if (!propose) {
      fields.need("tubing", "the catalogue's key of the tubing, or propose: true in watering");
      fields.need("emitter", "the catalogue's key of the emitters, or propose: true in watering");
      fields.need("emitters_per_plant", "their number at each plant, or propose: true in watering");
    }
    boolean laid = fields.get("laid").flatMap(Value::yesNo).orElse(false);
    if (laid && propose) {
      fields.need("tubing", "the catalogue's key of the tubing that lies there, or laid: false");
    }
    Watering.Run as = run.orElse(Watering.Run.DEAD_END);
    int corners = as == Watering.Run.LOOP ? 3 : 2;
    List<Point> route = fields.get("route").flatMap(v -> v.points(corners)).orElse(List.of());
    return new Watering.Lateral(
        rowId.orElse(""),
        as,
        fields.key("tubing", catalogue.pipes(), "pipe"),
        fields.key("emitter", catalogue.emitters(), "emitter"),
        fields.get("emitters_per_plant").map(v -> v.whole(1, 24)).orElse(OptionalInt.empty()),
        fields.key("companion_emitter", catalogue.emitters(), "emitter"),
        fields.quantity("offset", Measure.LENGTH, 0, 3).orElse(0),
        route,
        laid);
  }

  private void checkRow(Value row, String id) {
    if (!rowIds.contains(id)) {
      row.problem("there is no row '{0}'{1}{2}", id, Nearest.hint(id, rowIds), rows());
    } else if (!wateredRows.add(id)) {
      row.problem("contradicts an earlier lateral: row {0} has one already", id);
    }
  }

  private Sentence rows() {
    return rowIds.isEmpty()
        ? Sentence.of("; the description has no rows")
        : Sentence.of("; there are {0}", String.join(", ", rowIds));
  }
}
