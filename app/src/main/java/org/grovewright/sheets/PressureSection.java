package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Species;
import org.grovewright.irrigation.LateralProfile;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.irrigation.ZoneResult.OutletResult;
import org.grovewright.model.Planting;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;

/** Pressure and flow at every emitter: on a map, along each line of tubing, and in a table. */
final class PressureSection {
  /** Differences in flow below this share do not matter to a plant. */
  private static final double NARROWEST_FLOW_PERCENT = 2;

  private static final double NARROWEST_PRESSURE_PA = 2000;

  private final Plan plan;
  private final Workings workings;
  private final ReaderUnits units;

  PressureSection(Plan plan, Workings workings, ReaderUnits units) {
    this.plan = plan;
    this.workings = workings;
    this.units = units;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.Paragraph.of(
            "The pictures show each zone while its valve is open: the pressure that arrives at"
                + " every emitter, what the emitter gives for it, and how the pressure changes along"
                + " the tubing as the ground rises and falls and the water rubs along the pipe."));
    for (ZoneResult zone : plan.watering().zones()) {
      String name = Words.zone(zone.design().id());
      String id = FigureBook.slug(zone.design().id());
      blocks.add(new Block.Heading(Words.capital(name)));
      blocks.add(worst(zone));
      blocks.add(pressureMap(zone, name, id));
      blocks.add(flowMap(zone, name, id));
      blocks.add(new Block.Pictures(profiles(zone, id)));
      blocks.add(new Block.Fold("Every emitter of " + name, false, List.of(emitters(zone, name))));
    }
    return blocks;
  }

  private Block worst(ZoneResult zone) {
    OutletResult weakest = zone.weakest();
    Planting plant = plant(weakest);
    String zoneId = WaterSection.zoneId(zone);
    String outlet = zoneId + "outlet." + FigureBook.slug(weakest.outlet().id()) + ".";
    double mean =
        zone.outlets().stream().mapToDouble(OutletResult::relativeFlow).average().orElse(1);
    Species species = plan.catalogue().species().get(plant.speciesKey());
    double share = mean > 0 ? weakest.relativeFlow() / mean : 0;
    List<Cell> pieces = new ArrayList<>();
    pieces.add(
        Cell.of(
            "Served worst is "
                + plant.id()
                + " ("
                + species.name().toLowerCase(java.util.Locale.ROOT)
                + "): its weakest emitter has "));
    pieces.add(workings.cell(outlet + "pressure", units.text(weakest.pressurePa(), Kind.PRESSURE)));
    pieces.add(Cell.of(" and gives "));
    pieces.add(workings.cell(outlet + "flow", units.text(weakest.flowM3PerS(), Kind.EMITTER_FLOW)));
    pieces.add(
        Cell.of(
            ", "
                + Decimals.fixed(100 * share, 1)
                + "\u00a0%"
                + " of the zone's average for emitters of its kind. All the plant's emitters"
                + " together give "));
    pieces.add(workings.cell(WateringSystem.plantFlowId(zone.design().id(), plant.id())));
    pieces.add(Cell.of("."));
    return new Block.Paragraph(pieces);
  }

  private Block pressureMap(ZoneResult zone, String name, String id) {
    ReaderUnits.Unit unit = units.chartUnit(Kind.PRESSURE);
    ValueSteps steps =
        ValueSteps.over(
            unit.of(zone.minPressurePa()),
            unit.of(zone.maxPressurePa()),
            roundUp(unit.of(NARROWEST_PRESSURE_PA)));
    int decimals = steps.step() < 0.1 ? 2 : 1;
    List<String> keys = new ArrayList<>();
    for (int i = 0; i < steps.count(); i++) {
      keys.add(steps.label(i, decimals, unit.symbol()));
    }
    Map<Integer, Double> least = new LinkedHashMap<>();
    List<EmitterMap.Mark> marks = new ArrayList<>();
    for (OutletResult o : zone.outlets()) {
      least.merge(o.outlet().plant(), o.pressurePa(), Math::min);
      marks.add(mark(o, unit.of(o.pressurePa())));
    }
    List<EmitterMap.Label> labels = new ArrayList<>();
    least.forEach(
        (plant, pressure) ->
            labels.add(label(zone, plant, Decimals.fixed(unit.of(pressure), decimals))));
    String title = "Pressure at every emitter of " + name;
    return new Block.Plot(
        EmitterMap.draw(
            title, "pressure-map-" + id, zone.design(), steps, keys, marks, important(labels)),
        title,
        title
            + ". The number beside a plant is the least pressure at its emitters, in "
            + unit.symbol()
            + "; the plant in bold is served worst.");
  }

  private static double roundUp(double least) {
    return least < 0.1 ? 0.02 : 0.5;
  }

  private Block flowMap(ZoneResult zone, String name, String id) {
    List<EmitterMap.Mark> marks = new ArrayList<>();
    double lowest = Double.POSITIVE_INFINITY;
    double highest = 0;
    Map<Integer, Double> rated = new LinkedHashMap<>();
    for (OutletResult o : zone.outlets()) {
      double percent = percentOfRating(o);
      lowest = Math.min(lowest, percent);
      highest = Math.max(highest, percent);
      rated.merge(o.outlet().plant(), o.outlet().emitter().nominalFlowM3PerS(), Double::sum);
      marks.add(mark(o, percent));
    }
    ValueSteps steps = ValueSteps.over(lowest, highest, NARROWEST_FLOW_PERCENT);
    List<String> keys = new ArrayList<>();
    for (int i = 0; i < steps.count(); i++) {
      keys.add(steps.label(i, steps.step() == Math.rint(steps.step()) ? 0 : 1, "%"));
    }
    Map<Integer, Double> flows = zone.plantFlows();
    List<EmitterMap.Label> labels = new ArrayList<>();
    rated.forEach(
        (plant, rating) ->
            labels.add(label(zone, plant, units.text(flows.get(plant), Kind.EMITTER_FLOW))));
    String title = "Flow of every emitter of " + name;
    return new Block.Plot(
        EmitterMap.draw(
            title, "flow-map-" + id, zone.design(), steps, keys, marks, important(labels)),
        title,
        title
            + ", as a share of what it is rated for. The number beside a plant is what all its"
            + " emitters give together.");
  }

  private static double percentOfRating(OutletResult o) {
    return 100 * o.flowM3PerS() / o.outlet().emitter().nominalFlowM3PerS();
  }

  private EmitterMap.Mark mark(OutletResult o, double value) {
    return new EmitterMap.Mark(
        o.outlet().at(),
        o.outlet().id()
            + ": "
            + units.text(o.pressurePa(), Kind.PRESSURE)
            + ", "
            + units.text(o.flowM3PerS(), Kind.EMITTER_FLOW),
        value,
        range(o));
  }

  private static int range(OutletResult o) {
    boolean below = o.pressurePa() < o.outlet().emitter().minPressurePa() * (1 - 1e-9);
    boolean beyond = o.pressurePa() > o.outlet().emitter().maxPressurePa() * (1 + 1e-9);
    return below ? -1 : beyond ? 1 : 0;
  }

  private EmitterMap.Label label(ZoneResult zone, int index, String number) {
    Planting plant = plan.grove().plantings().get(index);
    boolean worst = zone.weakest().outlet().plant() == index;
    return new EmitterMap.Label(plant.at(), plant.id() + " " + number, worst, isMain(plant));
  }

  /** The plant served worst first, then the main plants, so that room goes to them. */
  private static List<EmitterMap.Label> important(List<EmitterMap.Label> labels) {
    List<EmitterMap.Label> sorted = new ArrayList<>(labels);
    sorted.sort(
        java.util.Comparator.comparing((EmitterMap.Label l) -> !l.worst())
            .thenComparing(l -> !l.main()));
    return sorted;
  }

  private boolean isMain(Planting plant) {
    return plan.catalogue().species().get(plant.speciesKey()).role() == Species.Role.MAIN;
  }

  private Planting plant(OutletResult o) {
    return plan.grove().plantings().get(o.outlet().plant());
  }

  private List<Block.Drawing> profiles(ZoneResult zone, String id) {
    List<Block.Drawing> drawings = new ArrayList<>();
    for (LateralProfile profile : LateralProfile.of(zone)) {
      drawings.add(drawing(profile, id + "-" + drawings.size()));
    }
    return drawings;
  }

  private Block.Drawing drawing(LateralProfile profile, String id) {
    ReaderUnits.Unit length = units.chartUnit(Kind.LENGTH);
    ReaderUnits.Unit pressure = units.chartUnit(Kind.PRESSURE);
    List<LateralProfile.Stop> stops = profile.stops();
    double from = 0;
    double to = Double.POSITIVE_INFINITY;
    Map<Integer, OutletResult> least = new LinkedHashMap<>();
    OutletResult lowest = profile.outlets().get(0);
    for (OutletResult o : profile.outlets()) {
      from = Math.max(from, o.outlet().emitter().minPressurePa());
      to = Math.min(to, o.outlet().emitter().maxPressurePa());
      least.merge(o.outlet().plant(), o, (a, b) -> b.pressurePa() < a.pressurePa() ? b : a);
      lowest = o.pressurePa() < lowest.pressurePa() ? o : lowest;
    }
    List<ProfileChart.Drip> drips = new ArrayList<>();
    for (OutletResult o : profile.outlets()) {
      boolean named = least.get(o.outlet().plant()) == o && (o == lowest || isMain(plant(o)));
      String label =
          !named
              ? ""
              : o == lowest
                  ? plant(o).id() + " " + units.text(o.pressurePa(), Kind.PRESSURE)
                  : plant(o).id();
      drips.add(
          new ProfileChart.Drip(
              length.of(o.outlet().alongM()), pressure.of(o.pressurePa()), label, range(o) == 0));
    }
    drips.sort(java.util.Comparator.comparing(drip -> !drip.label().contains(" ")));
    String row = "row " + profile.rowId();
    String title = "Pressure along the tubing of " + row + sideOf(profile);
    String svg =
        ProfileChart.draw(
            title,
            "profile-" + id,
            new ProfileChart.Content(
                "Along the tubing, " + length.symbol(),
                "Pressure, " + pressure.symbol(),
                "Ground, " + length.symbol(),
                stops.stream().mapToDouble(s -> length.of(s.alongM())).toArray(),
                stops.stream().mapToDouble(s -> pressure.of(s.pressurePa())).toArray(),
                stops.stream().mapToDouble(s -> length.of(s.groundM())).toArray(),
                pressure.of(from),
                pressure.of(to),
                drips));
    return new Block.Drawing(
        svg,
        title
            + (profile.line().closed() ? ", round the loop and back" : "")
            + ". Least at "
            + plant(lowest).id()
            + ", "
            + units.text(lowest.pressurePa(), Kind.PRESSURE)
            + "; all its emitters work from "
            + units.text(from, Kind.PRESSURE)
            + " to "
            + units.text(to, Kind.PRESSURE)
            + " (the shaded band).");
  }

  private static String sideOf(LateralProfile profile) {
    String id = profile.line().id();
    return id.endsWith("-left") ? ", left side" : id.endsWith("-right") ? ", right side" : "";
  }

  private Block emitters(ZoneResult zone, String name) {
    List<List<Cell>> rows = new ArrayList<>();
    for (OutletResult o : zone.outlets()) {
      rows.add(
          List.of(
              Cell.of(o.outlet().id()),
              Cell.of(o.outlet().emitter().name()),
              Cell.of(units.text(o.pressurePa(), Kind.PRESSURE)),
              Cell.of(units.text(o.flowM3PerS(), Kind.EMITTER_FLOW)),
              Cell.of(units.text(percentOfRating(o) / 100, Kind.SHARE))));
    }
    return new Block.Table(
        "Emitters of " + name + ", named after their plants",
        List.of(
            Block.Column.words("Emitter"),
            Block.Column.words("Type"),
            Block.Column.numbers("Pressure"),
            Block.Column.numbers("Flow"),
            Block.Column.numbers("Of its rating")),
        rows);
  }
}
