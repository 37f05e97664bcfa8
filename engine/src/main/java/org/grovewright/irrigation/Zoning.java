package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Row;
import org.grovewright.model.Watering;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.trench.LaidMain;

/** Says which plants hang on which lateral and which laterals share a valve. */
final class Zoning {
  private final Grove grove;
  private final Catalogue catalogue;
  private final Rulebook rules;
  private final List<Finding> findings;
  private final Map<String, List<Integer>> plantsByRow = new LinkedHashMap<>();
  private List<ZoneWish> drawn;

  Zoning(Grove grove, Catalogue catalogue, Rulebook rules, List<Finding> findings) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.rules = rules;
    this.findings = findings;
    assignPlants();
  }

  private void assignPlants() {
    for (Row row : grove.rows()) {
      plantsByRow.put(row.id(), new ArrayList<>());
    }
    for (int i = 0; i < grove.plantings().size(); i++) {
      Planting plant = grove.plantings().get(i);
      Optional<Row> row = rowOf(plant);
      if (row.isPresent()) {
        plantsByRow.get(row.get().id()).add(i);
      } else {
        findings.add(
            Finding.of(
                "irrigation.out-of-reach",
                Severity.SHORTFALL,
                plant.id(),
                "No row of tubing comes within {0} of this plant, so it must be watered by hand."
                    + " Put it on a row, or draw a row past it.",
                new Quantity(rules.maxFeederM(), Kind.LENGTH)));
      }
    }
  }

  private Optional<Row> rowOf(Planting plant) {
    Row nearest = null;
    double best = Double.POSITIVE_INFINITY;
    for (Row row : grove.rows()) {
      if (plant.rowId().isPresent() && plant.rowId().get().equals(row.id())) {
        return Optional.of(row);
      }
      double distance = row.distanceTo(plant.at());
      if (distance < best) {
        best = distance;
        nearest = row;
      }
    }
    return best <= rules.maxFeederM() + rules.offsetM()
        ? Optional.ofNullable(nearest)
        : Optional.empty();
  }

  /** The zones as the owner drew them. Rows in no zone get a remark, once. */
  List<ZoneWish> asDrawn() {
    if (drawn == null) {
      drawn = readDrawn();
    }
    return drawn;
  }

  private List<ZoneWish> readDrawn() {
    List<ZoneWish> zones = new ArrayList<>();
    List<String> served = new ArrayList<>();
    for (Watering.Zone zone : grove.watering().zones()) {
      List<LateralWish> laterals = new ArrayList<>();
      for (Watering.Lateral lateral : zone.laterals()) {
        served.add(lateral.rowId());
        laterals.add(owned(lateral, lateral.offsetM()));
      }
      zones.add(new ZoneWish(zone.id(), inReach(laterals)));
    }
    for (Row row : grove.rows()) {
      if (!served.contains(row.id()) && !plantsByRow.get(row.id()).isEmpty()) {
        findings.add(
            Finding.of(
                "irrigation.row-without-zone",
                Severity.SHORTFALL,
                row.id(),
                "No zone waters this row. Add it to a zone, or ask for a proposal."));
      }
    }
    return zones;
  }

  /**
   * Zones of whole rows, as many to a zone as the supply can carry; a row too large for the supply
   * is shared among zones.
   *
   * @param flowOf flow of a lateral with these plants, m3/s
   * @param limit flow that a zone may draw, m3/s
   * @param run how laterals of rows with main plants run
   * @param sided a lateral with another run, if that one does not do for its plants
   */
  List<ZoneWish> proposed(
      ToDoubleFunction<LateralWish> flowOf,
      double limit,
      Watering.Run run,
      UnaryOperator<LateralWish> sided) {
    List<LateralWish> laterals = new ArrayList<>();
    for (Row row : grove.rows()) {
      if (!plantsByRow.get(row.id()).isEmpty()) {
        laterals.add(own(row).orElseGet(() -> sided.apply(usual(row, run))));
      }
    }
    List<ZoneWish> zones = new ArrayList<>();
    List<LateralWish> open = new ArrayList<>();
    double drawn = 0;
    for (LateralWish lateral : inReach(laterals)) {
      List<LateralWish> parts = split(lateral, flowOf, limit);
      for (LateralWish part : parts) {
        double flow = flowOf.applyAsDouble(part);
        if (!open.isEmpty() && drawn + flow > limit) {
          zones.add(new ZoneWish("zone-" + (zones.size() + 1), open));
          open = new ArrayList<>();
          drawn = 0;
        }
        open.add(part);
        drawn += flow;
      }
    }
    if (!open.isEmpty()) {
      zones.add(new ZoneWish("zone-" + (zones.size() + 1), open));
    }
    return zones;
  }

  /**
   * Zones that are cut after some plants, on the way the main and then the lateral go.
   *
   * @param last the plants after which a new zone begins
   */
  List<ZoneWish> cut(List<ZoneWish> zones, Set<Integer> last) {
    if (last.isEmpty()) {
      return zones;
    }
    List<ZoneWish> cut = new ArrayList<>();
    for (ZoneWish zone : zones) {
      List<LateralWish> open = new ArrayList<>();
      for (LateralWish lateral : zone.laterals()) {
        List<Integer> along = alongRow(lateral);
        if (lateral.whole()) {
          open.add(lateral);
          if (!along.isEmpty() && last.contains(along.get(along.size() - 1))) {
            cut.add(new ZoneWish(zone.id(), open));
            open = new ArrayList<>();
          }
          continue;
        }
        List<Integer> some = new ArrayList<>();
        int part = 0;
        for (int plant : along) {
          some.add(plant);
          if (last.contains(plant)) {
            part++;
            open.add(part(lateral, some, part));
            cut.add(new ZoneWish(zone.id(), open));
            open = new ArrayList<>();
            some = new ArrayList<>();
          }
        }
        if (!some.isEmpty()) {
          open.add(part(lateral, some, part + 1));
        }
      }
      if (!open.isEmpty()) {
        cut.add(new ZoneWish(zone.id(), open));
      }
    }
    return cut;
  }

  private static LateralWish part(LateralWish lateral, List<Integer> some, int part) {
    return some.size() == lateral.plants().size()
        ? lateral
        : lateral.serving(lateral.id() + "-part-" + part, some);
  }

  /** The plants of a lateral in order from the end at which the water comes in. */
  List<Integer> alongRow(LateralWish lateral) {
    List<Integer> plants = new ArrayList<>(lateral.plants());
    plants.sort(
        Comparator.comparingDouble(i -> lateral.row().stationOf(grove.plantings().get(i).at())));
    return plants;
  }

  /** The lateral that the owner drew or laid along a row, of which the zone is left open. */
  private Optional<LateralWish> own(Row row) {
    return grove.watering().laterals().stream()
        .filter(lateral -> lateral.rowId().equals(row.id()))
        .findFirst()
        .map(
            lateral -> {
              boolean asDrawn =
                  !lateral.route().isEmpty() && lateral.run() != Watering.Run.TWO_SIDED;
              boolean usual = lateral.offsetM() == 0 && !asDrawn;
              return owned(lateral, usual ? rules.offsetM() : lateral.offsetM());
            });
  }

  /** A lateral as the owner wants it. */
  private LateralWish owned(Watering.Lateral lateral, double offsetM) {
    Row row = row(lateral.rowId());
    boolean drawnWay = !lateral.route().isEmpty();
    return new LateralWish(
        row.id(),
        drawnWay ? new Row(row.id(), lateral.route()) : row,
        lateral.run(),
        plantsByRow.get(row.id()),
        lateral.tubingKey().map(catalogue.pipes()::get),
        lateral.emitterKey().map(catalogue.emitters()::get),
        lateral.emittersPerPlant(),
        lateral.companionEmitterKey().map(catalogue.emitters()::get),
        offsetM,
        LateralWish.Kept.of(drawnWay, lateral.laid()));
  }

  private LateralWish usual(Row row, Watering.Run run) {
    List<Integer> plants = plantsByRow.get(row.id());
    boolean trees = plants.stream().anyMatch(this::isMain);
    return new LateralWish(
        row.id(),
        row,
        trees ? run : Watering.Run.DEAD_END,
        plants,
        Optional.empty(),
        Optional.empty(),
        OptionalInt.empty(),
        Optional.empty(),
        rules.offsetM(),
        LateralWish.Kept.NOTHING);
  }

  private List<LateralWish> split(
      LateralWish lateral, ToDoubleFunction<LateralWish> flowOf, double limit) {
    double whole = flowOf.applyAsDouble(lateral);
    int parts = (int) Math.min(lateral.plants().size(), Math.ceil(whole / limit - 1e-9));
    if (parts <= 1 || lateral.whole()) {
      return List.of(lateral);
    }
    return parts(lateral, parts);
  }

  /** The zone as two, or nothing where it has one plant only. */
  List<ZoneWish> halved(ZoneWish zone) {
    List<LateralWish> laterals = zone.laterals();
    if (laterals.size() > 1) {
      int half = laterals.size() / 2;
      return List.of(
          new ZoneWish(zone.id(), laterals.subList(0, half)),
          new ZoneWish(zone.id(), laterals.subList(half, laterals.size())));
    }
    LateralWish only = laterals.get(0);
    if (only.plants().size() < 2 || only.whole()) {
      return List.of();
    }
    return parts(only, 2).stream().map(p -> new ZoneWish(zone.id(), List.of(p))).toList();
  }

  /** A lateral as several, each serving a stretch of the row. */
  private List<LateralWish> parts(LateralWish lateral, int count) {
    List<Integer> plants = alongRow(lateral);
    List<LateralWish> pieces = new ArrayList<>();
    for (int p = 0; p < count; p++) {
      List<Integer> some =
          plants.subList(p * plants.size() / count, (p + 1) * plants.size() / count);
      pieces.add(lateral.serving(lateral.id() + "-part-" + (p + 1), some));
    }
    return pieces;
  }

  /** Laterals in the order in which a main reaches them, each walked from its nearer end. */
  private List<LateralWish> inReach(List<LateralWish> laterals) {
    LaidMain laid = LaidMain.of(grove);
    if (!laid.isEmpty()) {
      return laterals.stream()
          .map(lateral -> turned(lateral, laid::distance))
          .sorted(
              Comparator.comparingDouble((LateralWish l) -> laid.stationOf(feed(l)))
                  .thenComparingDouble(l -> laid.distance(feed(l))))
          .toList();
    }
    List<Point> bends = grove.watering().mainRoute();
    Point at = bends.isEmpty() ? grove.supply().at() : bends.get(bends.size() - 1);
    List<LateralWish> left = new ArrayList<>(laterals);
    List<LateralWish> order = new ArrayList<>();
    while (!left.isEmpty()) {
      Point here = at;
      LateralWish next =
          left.stream().min(Comparator.comparingDouble(l -> distance(l, here))).orElseThrow();
      left.remove(next);
      LateralWish turned = turned(next, here::distanceTo);
      order.add(turned);
      at = feed(turned);
    }
    return order;
  }

  private static double distance(LateralWish lateral, Point from) {
    List<Point> line = lateral.row().line();
    if (lateral.drawn()) {
      return from.distanceTo(line.get(0));
    }
    return Math.min(from.distanceTo(line.get(0)), from.distanceTo(line.get(line.size() - 1)));
  }

  private static Point feed(LateralWish lateral) {
    return lateral.row().line().get(0);
  }

  /** The lateral walked from its nearer end, unless its way is drawn. */
  private static LateralWish turned(LateralWish lateral, ToDoubleFunction<Point> distance) {
    List<Point> line = lateral.row().line();
    if (lateral.drawn()) {
      return lateral;
    }
    boolean turn =
        distance.applyAsDouble(line.get(line.size() - 1))
            < distance.applyAsDouble(line.get(0)) - 1e-9;
    Row row = turn ? new Row(lateral.row().id(), Paths.reversed(line)) : lateral.row();
    return new LateralWish(
        lateral.id(),
        row,
        lateral.run(),
        lateral.plants(),
        lateral.tubing(),
        lateral.emitter(),
        lateral.count(),
        lateral.companionEmitter(),
        lateral.offsetM(),
        lateral.kept());
  }

  private Row row(String id) {
    return grove.rows().stream().filter(r -> r.id().equals(id)).findFirst().orElseThrow();
  }

  boolean isMain(int plant) {
    String key = grove.plantings().get(plant).speciesKey();
    return catalogue.species().get(key).role() == Species.Role.MAIN;
  }
}
