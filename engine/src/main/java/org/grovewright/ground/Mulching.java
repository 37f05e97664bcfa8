package org.grovewright.ground;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Mulch;
import org.grovewright.layout.Crown;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Fixture;
import org.grovewright.model.Grove;
import org.grovewright.model.Row;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;
import org.locationtech.jts.geom.Geometry;

/** Works out the rings of mulch. */
final class Mulching {
  /** Id of the figure of the mulch to be bought. */
  static final String DELIVERED = "ground.total.mulch-delivered";

  private final Grove grove;
  private final Catalogue catalogue;
  private final FigureBook book;
  private final MulchRings.Memory memory;

  Mulching(Grove grove, Catalogue catalogue, FigureBook book, MulchRings.Memory memory) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.book = book;
    this.memory = memory;
  }

  MulchPlan of(List<Crown> crowns, Mulch mulch) {
    Map<String, List<Crown>> byRow = new LinkedHashMap<>();
    for (Row row : grove.rows()) {
      byRow.put(row.id(), new ArrayList<>());
    }
    for (Crown crown : crowns) {
      String row = crown.planting().rowId().filter(byRow::containsKey).orElse("");
      byRow.computeIfAbsent(row, key -> new ArrayList<>()).add(crown);
    }
    MulchRings rings = rings(crowns);
    Map<String, Double> areaByRow = new LinkedHashMap<>();
    List<Input> areas = new ArrayList<>();
    for (Map.Entry<String, List<Crown>> entry : byRow.entrySet()) {
      if (entry.getValue().isEmpty()) {
        continue;
      }
      double free = 0;
      for (Crown crown : entry.getValue()) {
        free += rings.add(ring(crown));
      }
      areaByRow.put(entry.getKey(), free);
      areas.add(Input.from("A", rowFigure(entry.getKey(), free)));
    }
    return volumes(mulch, areaByRow, areas);
  }

  /** Ring of mulch of one plant, the collar not yet left out. */
  private MulchRings.Disc ring(Crown crown) {
    double least =
        catalogue
            .constant(crown.isMain() ? "ground.mulch-width-main" : "ground.mulch-width-companion")
            .value();
    double spread = crown.spreadM(catalogue.constant("ground.mulch-year").value());
    return new MulchRings.Disc(crown.planting().at(), Math.max(least, spread) / 2);
  }

  private MulchRings rings(List<Crown> crowns) {
    List<MulchRings.Disc> collars = new ArrayList<>();
    List<Geometry> obstacles = new ArrayList<>();
    double main = catalogue.constant("ground.mulch-collar-main").value();
    double companion = catalogue.constant("ground.mulch-collar-companion").value();
    for (Crown crown : crowns) {
      collars.add(new MulchRings.Disc(crown.planting().at(), crown.isMain() ? main : companion));
    }
    for (Fixture fixture : grove.site().fixtures()) {
      boolean covered =
          switch (fixture.kind()) {
            case BUILDING, WALL, TANK, WELL, EXISTING_TREE, PAVING, GRAVEL -> true;
            case FENCE, SEPTIC_FIELD, BURIED_SERVICE, LAWN -> false;
          };
      if (covered) {
        obstacles.add(Shapes.of(fixture.shape()));
      }
    }
    obstacles.removeIf(obstacle -> obstacle.getDimension() < 2);
    Geometry land = Shapes.outline(grove.site().boundary());
    return new MulchRings(collars, obstacles, land, memory);
  }

  private Figure rowFigure(String row, double area) {
    String id =
        row.isEmpty()
            ? "ground.off-row.mulch-area"
            : "ground.row." + FigureBook.slug(row) + ".mulch-area";
    return book.enter(
        id,
        row.isEmpty() ? "Mulched ground about plants in no row" : "Mulched ground in row " + row,
        area,
        Kind.AREA,
        Working.of(
            "union of the rings, each to the drip line of the mulch year but not narrower than the"
                + " least width, less collars, fixed things and what an earlier row covers",
            "plane geometry",
            catalogue.constant("ground.mulch-year").as("mulch year"),
            catalogue.constant("ground.mulch-width-main").as("least width, main plants"),
            catalogue.constant("ground.mulch-width-companion").as("least width, companions"),
            catalogue.constant("ground.mulch-collar-main").as("collar, main plants"),
            catalogue.constant("ground.mulch-collar-companion").as("collar, companions")));
  }

  private MulchPlan volumes(Mulch mulch, Map<String, Double> areaByRow, List<Input> areas) {
    Figure area =
        book.enter(
            "ground.total.mulch-area",
            "Mulched ground",
            areaByRow.values().stream().mapToDouble(Double::doubleValue).sum(),
            Kind.AREA,
            new Working("sum of A", areas, "arithmetic"));
    Figure settled =
        book.enter(
            "ground.total.mulch-settled",
            mulch.name() + " once settled",
            area.value() * mulch.depthM(),
            Kind.BULK_VOLUME,
            Working.of(
                "A z",
                "arithmetic",
                Input.from("A", area),
                new Input("z", mulch.depthM(), Kind.BORE, "catalogue: mulches, depth")));
    Figure delivered =
        book.enter(
            DELIVERED,
            mulch.name() + " as delivered",
            settled.value() / (1 - mulch.settlement()),
            Kind.BULK_VOLUME,
            Working.of(
                "V / (1 - c)",
                mulch.source(),
                Input.from("V", settled),
                new Input("c", mulch.settlement(), Kind.SHARE, "catalogue: mulches, settlement")));
    BulkLoad load = BulkLoad.ofVolume(delivered.value(), mulch.densityKgPerM3());
    Figure mass =
        book.enter(
            "ground.total.mulch-mass",
            mulch.name() + " as delivered, by mass",
            load.massKg(),
            Kind.MASS,
            Working.of(
                "V rho",
                mulch.source(),
                Input.from("V", delivered),
                new Input(
                    "rho", mulch.densityKgPerM3(), Kind.DENSITY, "catalogue: mulches, density")));
    Barrows.enter("ground.total.mulch-barrows", mulch.name(), delivered, mass, catalogue, book);
    return new MulchPlan(mulch.key(), area.value(), areaByRow, settled.value(), load);
  }
}
