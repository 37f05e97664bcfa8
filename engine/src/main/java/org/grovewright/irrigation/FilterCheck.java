package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Filter;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** Whether a filter bears the pressure of a supply and carries the flow of the zones. */
record FilterCheck(SupplyModel supply, Rulebook rules) {
  /** Pressure at the head with nothing running, pascals. */
  private double restPa() {
    return supply.curve().staticHead() * SupplyModel.PASCALS_PER_METRE;
  }

  /** Whether it bears the supply at rest. */
  boolean bears(Filter filter) {
    return restPa() <= filter.maxPressurePa();
  }

  /**
   * Whether its ports and its screen are large enough.
   *
   * @param flow flow of the largest zone, m3/s
   */
  boolean carries(Filter filter, double flow) {
    return filter.ratedFlowM3PerS() >= flow && screenM2(flow) <= filter.screenAreaM2();
  }

  /** Screen area that a flow needs, m2. */
  private double screenM2(double flow) {
    return flow / rules.screenLoadingMPerS();
  }

  /** Flow of the zone that draws most, m3/s. */
  static double largestFlow(List<ZoneResult> zones) {
    return zones.stream().mapToDouble(ZoneResult::flowM3PerS).max().orElse(0);
  }

  /** What a filter falls short of, by the solved flow of the zones in all years. */
  List<Finding> remarks(List<List<ZoneResult>> byYear) {
    List<ZoneResult> all = byYear.stream().flatMap(List::stream).toList();
    if (all.isEmpty()) {
      return List.of();
    }
    Filter filter = all.get(0).design().filter();
    double flow = largestFlow(all);
    List<Finding> remarks = new ArrayList<>();
    if (!bears(filter)) {
      remarks.add(
          Finding.of(
              "irrigation.filter-pressure",
              Severity.SHORTFALL,
              filter.key(),
              "With nothing running the supply presses with {0}, but this filter is made for {1} at"
                  + " most and may burst. Choose a stronger one.",
              new Quantity(restPa(), Kind.PRESSURE),
              new Quantity(filter.maxPressurePa(), Kind.PRESSURE)));
    }
    if (filter.ratedFlowM3PerS() < flow) {
      remarks.add(
          Finding.of(
              "irrigation.filter-flow",
              Severity.SHORTFALL,
              filter.key(),
              "The largest zone draws {0}, but this filter is made for {1} at most: it takes {2} of"
                  + " the pressure even when clean. Choose a larger one.",
              new Quantity(flow, Kind.FLOW),
              new Quantity(filter.ratedFlowM3PerS(), Kind.FLOW),
              new Quantity(filter.lossPa(flow), Kind.PRESSURE)));
    } else if (screenM2(flow) > filter.screenAreaM2()) {
      remarks.add(
          Finding.of(
              "irrigation.filter-screen",
              Severity.SHORTFALL,
              filter.key(),
              "For the {0} of the largest zone a screen of {1} is wanted, but this filter has {2}:"
                  + " it will clog soon. Choose a larger one.",
              new Quantity(flow, Kind.FLOW),
              new Quantity(screenM2(flow), Kind.SCREEN_AREA),
              new Quantity(filter.screenAreaM2(), Kind.SCREEN_AREA)));
    }
    return remarks;
  }
}
