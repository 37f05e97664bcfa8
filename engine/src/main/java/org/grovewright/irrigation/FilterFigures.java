package org.grovewright.irrigation;

import java.util.List;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Filter;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Enters how the filter was sized, under {@code irrigation.filter}. */
final class FilterFigures {
  private static final String ID = "irrigation.filter.";

  private FilterFigures() {}

  static void enter(List<ZoneResult> zones, Rulebook rules, FigureBook book) {
    if (zones.isEmpty()) {
      return;
    }
    Filter filter = zones.get(0).design().filter();
    String row = "catalogue: filters, " + filter.key();
    double flow = FilterCheck.largestFlow(zones);
    book.enter(
        ID + "flow",
        "Flow through the filter",
        flow,
        Kind.FLOW,
        Working.of("the flow of the zone that draws most", "one zone runs at a time"));
    EmitterType finest = finest(zones);
    book.enter(
        ID + "opening-allowed",
        "Largest opening that protects the emitters",
        finest.filterOpeningM(),
        Kind.BORE,
        Working.of(
            "the least of what the emitters ask for",
            Working.COMMON_PRACTICE,
            new Input(
                finest.name(),
                finest.filterOpeningM(),
                Kind.BORE,
                "catalogue: emitters, " + finest.key())));
    book.enter(
        ID + "opening",
        "Opening of the filter",
        filter.openingM(),
        Kind.BORE,
        Working.of(
            "an opening that is no larger than the emitters allow",
            "makers' practice",
            new Input("mesh, openings in an inch", filter.mesh(), Kind.COUNT, row)));
    double needed = flow / rules.screenLoadingMPerS();
    book.enter(
        ID + "area-needed",
        "Screen area that the flow needs",
        needed,
        Kind.SCREEN_AREA,
        Working.of(
            "Q / v, v the flow through a part of the screen over its area",
            "University of California, Maintenance of Microirrigation Systems",
            new Input("Q", flow, Kind.FLOW, ID + "flow"),
            new Input("v", rules.screenLoadingMPerS(), Kind.VELOCITY, "catalogue: constants")));
    book.enter(
        ID + "area",
        "Screen area of the filter",
        filter.screenAreaM2(),
        Kind.SCREEN_AREA,
        Working.of(
            "an area that is no smaller than the flow needs",
            "typical of the size; the maker's sheet says what yours has",
            new Input("needed", needed, Kind.SCREEN_AREA, ID + "area-needed")));
    double loss = filter.lossPa(flow);
    book.enter(
        ID + "loss",
        "Pressure that the clean filter takes",
        loss,
        Kind.PRESSURE,
        Working.of(
            "p (Q / Qr)^2",
            "turbulent loss, taken from the rated flow",
            new Input("p", filter.lossAtRatedPa(), Kind.PRESSURE, row),
            new Input("Q", flow, Kind.FLOW, ID + "flow"),
            new Input("Qr", filter.ratedFlowM3PerS(), Kind.FLOW, row)));
    book.enter(
        ID + "loss-dirty",
        "Pressure that it takes when it is time to clean it",
        loss + filter.dirtyAllowancePa(),
        Kind.PRESSURE,
        Working.of(
            "clean loss + allowance for dirt",
            "University of California, Maintenance of Microirrigation Systems: clean a screen once"
                + " its loss has grown by 3 to 5 psi",
            new Input("clean loss", loss, Kind.PRESSURE, ID + "loss"),
            new Input("allowance", filter.dirtyAllowancePa(), Kind.PRESSURE, row)));
  }

  private static EmitterType finest(List<ZoneResult> zones) {
    EmitterType finest = null;
    for (ZoneResult zone : zones) {
      for (Outlet outlet : zone.design().allOutlets()) {
        if (finest == null || outlet.emitter().filterOpeningM() < finest.filterOpeningM()) {
          finest = outlet.emitter();
        }
      }
    }
    return finest;
  }
}
