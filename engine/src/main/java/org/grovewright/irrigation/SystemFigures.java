package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.model.Grove;
import org.grovewright.model.Preferences;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Enters the figures of the solved zones under {@code hydraulics.zone.ZONE}. */
final class SystemFigures {
  private static final String SOLVED =
      "steady state of the zone's network: mass balance at every node, head loss along every pipe,"
          + " emitter flow by its pressure, solved together by Newton's method";

  private SystemFigures() {}

  static String zoneId(String zone) {
    return "hydraulics.zone." + FigureBook.slug(zone) + ".";
  }

  /** Id of a zone's figures in a year; those of the last year stand without it. */
  static String zoneId(String zone, int year) {
    return year >= WateringSystem.DESIGN_YEAR ? zoneId(zone) : zoneId(zone) + "year-" + year + ".";
  }

  static void enter(List<List<ZoneResult>> byYear, Grove grove, Rulebook rules, FigureBook book) {
    int last = byYear.size();
    enterFull(byYear.get(last - 1), grove, rules, book);
    for (int year = 1; year <= last; year++) {
      for (ZoneResult zone : byYear.get(year - 1)) {
        enterYear(zone, year, last, grove, book);
      }
    }
  }

  private static void enterYear(ZoneResult zone, int year, int last, Grove grove, FigureBook book) {
    String id = zoneId(zone.design().id(), year);
    book.enter(
        zoneId(zone.design().id()) + "year-" + year + ".emitters",
        "Emitters in the zone",
        zone.outlets().size(),
        Kind.COUNT,
        Working.of("emitters of all plants of the zone", "counted on the design"));
    if (year == last) {
      return;
    }
    book.enter(
        id + "flow",
        "Flow the zone draws",
        zone.flowM3PerS(),
        Kind.FLOW,
        Working.of("the sum of the flows of its emitters", "solved network"));
    enterPlantFlows(zone, id, grove, book);
  }

  private static void enterPlantFlows(ZoneResult zone, String id, Grove grove, FigureBook book) {
    for (Map.Entry<Integer, Double> plant : zone.plantFlows().entrySet()) {
      String plantId = grove.plantings().get(plant.getKey()).id();
      book.enter(
          id + "plant." + FigureBook.slug(plantId) + ".flow",
          "Flow to " + plantId + " while the zone runs",
          plant.getValue(),
          Kind.EMITTER_FLOW,
          Working.of("the sum of the flows of its emitters", "solved network"));
    }
  }

  private static void enterFull(
      List<ZoneResult> zones, Grove grove, Rulebook rules, FigureBook book) {
    String friction =
        grove.preferences().friction() == Preferences.Friction.HAZEN_WILLIAMS
            ? "Hazen-Williams friction"
            : "Darcy-Weisbach friction";
    for (ZoneResult zone : zones) {
      enter(zone, grove, rules, friction, book);
    }
  }

  private static void enter(
      ZoneResult zone, Grove grove, Rulebook rules, String friction, FigureBook book) {
    String id = zoneId(zone.design().id());
    Working solved =
        Working.of(
            SOLVED,
            friction + "; residuals of the solve are listed",
            new Input("mass residual", zone.solution().massResidual(), Kind.FLOW, "solver"),
            new Input("energy residual", zone.solution().energyResidual(), Kind.HEAD, "solver"),
            new Input("Newton steps", zone.solution().iterations(), Kind.COUNT, "solver"));
    book.enter(id + "flow", "Flow the zone draws", zone.flowM3PerS(), Kind.FLOW, solved);
    book.enter(
        id + "emitters",
        "Emitters in the zone",
        zone.outlets().size(),
        Kind.COUNT,
        Working.of("emitters of all plants of the zone", "counted on the design"));
    book.enter(
        id + "least-pressure",
        "Least pressure at any emitter",
        zone.minPressurePa(),
        Kind.PRESSURE,
        solved);
    book.enter(
        id + "greatest-pressure",
        "Greatest pressure at any emitter",
        zone.maxPressurePa(),
        Kind.PRESSURE,
        solved);
    book.enter(
        id + "greatest-velocity",
        "Greatest speed of water, in " + zone.fastestPipe(),
        zone.maxVelocityMPerS(),
        Kind.VELOCITY,
        Working.of(
            "v = Q / (pi/4 d^2), the greatest of all pipes",
            "continuity; limit by common practice against water hammer",
            new Input("limit", rules.maxVelocityMPerS(), Kind.VELOCITY, "catalogue: constants")));
    enterUniformity(zone, rules, id, book);
    for (ZoneResult.OutletResult o : zone.outlets()) {
      enterOutlet(o, grove, id, solved, book);
    }
    enterPlantFlows(zone, id, grove, book);
  }

  private static void enterUniformity(ZoneResult zone, Rulebook rules, String id, FigureBook book) {
    ZoneResult.OutletResult weakest = zone.weakest();
    EmissionClasses.EmissionClass kind = rules.evenness().of(zone);
    book.enter(
        id + "emission-uniformity",
        "Design emission uniformity",
        zone.emissionUniformity(),
        Kind.SHARE,
        Working.of(
            "EU = least of (1 - 1.27 CV / sqrt(n)) r over the mean of r, r = q over the flow of the type at the mean pressure",
            "Keller and Karmeli (1974), taken plant by plant",
            new Input(
                "r at " + weakest.outlet().id(), weakest.relativeFlow(), Kind.SHARE, "solved"),
            new Input(
                "CV there",
                weakest.outlet().emitter().manufacturingCv(),
                Kind.SHARE,
                "catalogue: emitters, " + weakest.outlet().emitter().key()),
            new Input("good from", kind.good(), Kind.SHARE, id + "good-uniformity")));
    List<Input> why = new ArrayList<>();
    why.add(kind.row().as(kind.row().name()));
    why.add(kind.floor().as(kind.floor().name()));
    if (Double.isFinite(kind.spacingM())) {
      why.add(
          new Input(
              "mean distance of a plant from the nearest other",
              kind.spacingM(),
              Kind.LENGTH,
              "measured on the plan"));
    }
    why.add(
        new Input(
            "rise over run between the lowest and the highest emitter",
            kind.slope(),
            Kind.SLOPE,
            "measured on the plan"));
    book.enter(
        id + "good-uniformity",
        "Emission uniformity that counts as good for such a zone",
        kind.good(),
        Kind.SHARE,
        new Working(
            "the lower end of the published range for its spacing and slope, and no less than the"
                + " floor",
            why,
            kind.row().source()));
    book.enter(
        id + "low-quarter-uniformity",
        "Low-quarter distribution uniformity",
        zone.lowQuarter(),
        Kind.SHARE,
        Working.of(
            "mean of the lowest quarter of r over the mean of all, r as for emission uniformity",
            "Merriam and Keller (1978); before manufacturing variation"));
    book.enter(
        id + "christiansen-uniformity",
        "Christiansen's coefficient of uniformity",
        zone.christiansen(),
        Kind.SHARE,
        Working.of(
            "1 - mean deviation of r over its mean, r as for emission uniformity",
            "Christiansen (1942); before manufacturing variation"));
  }

  private static void enterOutlet(
      ZoneResult.OutletResult o, Grove grove, String id, Working solved, FigureBook book) {
    String plantId = grove.plantings().get(o.outlet().plant()).id();
    String outlet = id + "outlet." + FigureBook.slug(o.outlet().id()) + ".";
    EmitterType emitter = o.outlet().emitter();
    book.enter(
        outlet + "pressure",
        "Pressure at an emitter of " + plantId,
        o.pressurePa(),
        Kind.PRESSURE,
        solved);
    book.enter(
        outlet + "flow",
        "Flow of an emitter of " + plantId,
        o.flowM3PerS(),
        Kind.EMITTER_FLOW,
        Working.of(
            emitter.compensating()
                ? "q = qn (p / pmin)^x from pmin to pmax, as an orifice outside"
                : "q = qn (p / pn)^x",
            "emitter equation, Karmeli (1977); rating of the catalogue",
            new Input(
                "qn",
                emitter.nominalFlowM3PerS(),
                Kind.EMITTER_FLOW,
                "catalogue: emitters, " + emitter.key()),
            new Input("p", o.pressurePa(), Kind.PRESSURE, outlet + "pressure"),
            new Input(
                emitter.compensating() ? "pmin" : "pn",
                emitter.compensating() ? emitter.minPressurePa() : emitter.nominalPressurePa(),
                Kind.PRESSURE,
                "catalogue: emitters, " + emitter.key()),
            new Input(
                "x", emitter.exponent(), Kind.NUMBER, "catalogue: emitters, " + emitter.key())));
  }
}
