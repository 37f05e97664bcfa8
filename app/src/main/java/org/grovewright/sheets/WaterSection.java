package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Filter;
import org.grovewright.hydraulics.SupplyCurve;
import org.grovewright.hydraulics.Water;
import org.grovewright.irrigation.Device;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;

/** How the water runs: the supply, each zone, and pressure and flow at each plant. */
final class WaterSection {
  private static final double PASCALS_PER_METRE = 1000 * Water.STANDARD_GRAVITY;
  private static final int CURVE_POINTS = 60;

  private final Grove grove;
  private final WateringSystem system;
  private final Workings workings;
  private final ReaderUnits units;

  WaterSection(Grove grove, WateringSystem system, Workings workings, ReaderUnits units) {
    this.grove = grove;
    this.system = system;
    this.workings = workings;
    this.units = units;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.Paragraph.of(
            "The more water you draw, the less pressure is left. The curve shows what your supply"
                + " gives; each dot is what a zone draws while its valve is open."));
    blocks.add(
        new Block.Drawing(
            chart(), "Pressure at the supply against flow. A dot on the curve is a zone at work."));
    if (!system.zones().isEmpty()) {
      blocks.add(zones());
      blocks.add(
          Block.Paragraph.of(
              "Uniformity says how evenly the plants are watered; 100 % would be the same for all."
                  + " Emission uniformity compares the plant that gets least with the average,"
                  + " small differences between emitters from the factory included. The low"
                  + " quarter compares the worst-served quarter of the emitters with the average."));
    }
    if (!system.zones().isEmpty()) {
      blocks.add(devices());
      blocks.add(filter());
    }
    for (ZoneResult zone : system.zones()) {
      blocks.addAll(new EmitterYears(grove, system, workings, units).blocks(zone));
      blocks.add(
          new Block.Fold(
              "Pressure and flow at each plant of " + name(zone) + " in the last year planned",
              false,
              List.of(plants(zone))));
      blocks.add(new Block.Fold("Pipes and parts of " + name(zone), false, List.of(parts(zone))));
    }
    return blocks;
  }

  private String chart() {
    ReaderUnits.Unit flowUnit = units.chartUnit(Kind.FLOW);
    ReaderUnits.Unit pressureUnit = units.chartUnit(Kind.PRESSURE);
    SupplyCurve curve = system.supply().curve();
    double drawn = system.zones().stream().mapToDouble(ZoneResult::flowM3PerS).max().orElse(0);
    double open = curve.flowAt(0);
    double most = Double.isFinite(open) ? open : Math.max(drawn * 1.5, 1e-4);
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i <= CURVE_POINTS; i++) {
      double flow = most * i / CURVE_POINTS;
      points.add(
          new double[] {
            flowUnit.of(flow), pressureUnit.of(Math.max(0, curve.headAt(flow)) * PASCALS_PER_METRE)
          });
    }
    List<CurveChart.Mark> marks = new ArrayList<>();
    for (ZoneResult zone : system.zones()) {
      double flow = zone.flowM3PerS();
      marks.add(
          new CurveChart.Mark(
              Words.capital(name(zone)),
              flowUnit.of(flow),
              pressureUnit.of(Math.max(0, curve.headAt(flow)) * PASCALS_PER_METRE)));
    }
    return CurveChart.draw(
        "What the supply gives and what the zones draw",
        "supply-chart",
        new CurveChart.Axis("Flow, " + flowUnit.symbol(), flowUnit.of(most)),
        new CurveChart.Axis(
            "Pressure, " + pressureUnit.symbol(),
            pressureUnit.of(curve.staticHead() * PASCALS_PER_METRE)),
        points,
        marks);
  }

  private Block zones() {
    List<List<Cell>> rows = new ArrayList<>();
    for (ZoneResult zone : system.zones()) {
      String id = zoneId(zone);
      rows.add(
          List.of(
              Cell.of(Words.capital(name(zone))),
              workings.cell(id + "flow", units.text(zone.flowM3PerS(), Kind.FLOW)),
              workings.cell(id + "least-pressure", units.text(zone.minPressurePa(), Kind.PRESSURE)),
              workings.cell(
                  id + "greatest-pressure", units.text(zone.maxPressurePa(), Kind.PRESSURE)),
              workings.cell(
                  id + "emission-uniformity", units.text(zone.emissionUniformity(), Kind.SHARE)),
              workings.cell(
                  id + "low-quarter-uniformity", units.text(zone.lowQuarter(), Kind.SHARE)),
              workings.cell(
                  id + "greatest-velocity", units.text(zone.maxVelocityMPerS(), Kind.VELOCITY))));
    }
    return new Block.Table(
        "Each zone while it runs",
        List.of(
            Block.Column.words("Zone"),
            Block.Column.numbers("Draws"),
            Block.Column.numbers("Least pressure"),
            Block.Column.numbers("Most pressure"),
            Block.Column.numbers("Emission uniformity"),
            Block.Column.numbers("Low quarter"),
            Block.Column.numbers("Fastest water")),
        rows);
  }

  /** Emitters of one plant taken together. */
  private static final class AtPlant {
    private final Map<String, Integer> emitters = new LinkedHashMap<>();
    private double least = Double.POSITIVE_INFINITY;
    private double flow;
    private String weakest = "";
  }

  private Block plants(ZoneResult zone) {
    Map<Integer, AtPlant> byPlant = new LinkedHashMap<>();
    for (ZoneResult.OutletResult outlet : zone.outlets()) {
      AtPlant plant = byPlant.computeIfAbsent(outlet.outlet().plant(), p -> new AtPlant());
      plant.emitters.merge(outlet.outlet().emitter().name(), 1, Integer::sum);
      if (outlet.pressurePa() < plant.least) {
        plant.least = outlet.pressurePa();
        plant.weakest = outlet.outlet().id();
      }
      plant.flow += outlet.flowM3PerS();
    }
    List<List<Cell>> rows = new ArrayList<>();
    byPlant.forEach(
        (index, plant) -> {
          String id = grove.plantings().get(index).id();
          rows.add(
              List.of(
                  Cell.of(id),
                  Cell.of(EmitterYears.counted(plant.emitters)),
                  workings.cell(
                      zoneId(zone) + "outlet." + FigureBook.slug(plant.weakest) + ".pressure",
                      units.text(plant.least, Kind.PRESSURE)),
                  workings.cell(
                      WateringSystem.plantFlowId(zone.design().id(), id),
                      units.text(plant.flow, Kind.EMITTER_FLOW))));
        });
    return new Block.Table(
        "Plants of " + name(zone),
        List.of(
            Block.Column.words("Plant"),
            Block.Column.words("Emitters"),
            Block.Column.numbers("Least pressure"),
            Block.Column.numbers("Flow")),
        rows);
  }

  private Block parts(ZoneResult zone) {
    List<List<Cell>> rows = new ArrayList<>();
    rows.add(List.of(Cell.of("Main"), Cell.of(zone.design().mainPipe().name())));
    rows.add(List.of(Cell.of("Filter"), Cell.of(zone.design().filter().name())));
    rows.add(
        List.of(
            Cell.of("Pressure regulator"),
            Cell.of(zone.design().regulator().map(r -> r.name()).orElse("none needed"))));
    zone.design()
        .laterals()
        .forEach(
            lateral ->
                rows.add(
                    List.of(
                        Cell.of("Lateral along row " + lateral.rowId()),
                        Cell.of(lateral.tubing().name() + ", " + runOf(lateral.run())))));
    return new Block.Table(
        "Parts of " + name(zone) + " (a lateral is the tubing along a row)",
        List.of(Block.Column.words("Part"), Block.Column.words("What it is")),
        rows);
  }

  private Block devices() {
    List<List<Cell>> rows = new ArrayList<>();
    for (Device device : system.devices()) {
      rows.add(
          List.of(
              Cell.of(device.name()),
              Cell.of(String.valueOf(device.count())),
              Cell.of(device.price() > 0 ? units.text(device.price(), Kind.MONEY) : ""),
              Cell.of(Words.message(device.why(), units))));
    }
    return new Block.Table(
        "Devices, in the order in which water comes to them",
        List.of(
            Block.Column.words("Device"),
            Block.Column.numbers("Number"),
            Block.Column.numbers("Price of one"),
            Block.Column.words("Why, and what to mind")),
        rows);
  }

  private Block filter() {
    Filter filter = system.zones().get(0).design().filter();
    String id = "irrigation.filter.";
    List<List<Cell>> rows = new ArrayList<>();
    rows.add(List.of(Cell.of("Filter"), Cell.of(filter.name())));
    rows.add(
        List.of(Cell.of("Mesh, openings in an inch"), Cell.of(Decimals.fixed(filter.mesh(), 0))));
    for (String[] line :
        new String[][] {
          {"Opening", "opening"},
          {"Largest opening that protects the emitters", "opening-allowed"},
          {"Greatest flow", "flow"},
          {"Screen area", "area"},
          {"Screen area needed at that flow", "area-needed"},
          {"Pressure lost when clean", "loss"},
          {"Pressure lost when it must be cleaned", "loss-dirty"}
        }) {
      rows.add(List.of(Cell.of(line[0]), workings.cell(id + line[1])));
    }
    return new Block.Fold(
        "The filter",
        false,
        List.of(
            new Block.Table(
                "How the filter was sized",
                List.of(Block.Column.words("What"), Block.Column.numbers("How much")),
                rows)));
  }

  private static String runOf(org.grovewright.model.Watering.Run run) {
    return switch (run) {
      case DEAD_END -> "along one side, closed at the far end";
      case LOOP -> "down one side and back up the other";
      case TWO_SIDED -> "one line along each side";
    };
  }

  private static String name(ZoneResult zone) {
    return Words.zone(zone.design().id());
  }

  static String zoneId(ZoneResult zone) {
    return "hydraulics.zone." + FigureBook.slug(zone.design().id()) + ".";
  }
}
