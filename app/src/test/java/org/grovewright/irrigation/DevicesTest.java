package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.grovewright.irrigation.InventedPlot.CATALOGUE;

import java.util.List;
import org.grovewright.catalogue.Filter;
import org.grovewright.catalogue.Regulator;
import org.grovewright.finding.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each device is there on its condition, and left out otherwise. */
class DevicesTest {
  /** An invented row of two trees, on ground that rises by so many metres over 40 m. */
  private static WateringSystem system(String supply, double rise, String watering) {
    return InventedPlot.system(
        InventedPlot.grove(
            rise, supply, InventedPlot.row("A", "[4 m, 10 m]", "[16 m, 10 m]"), watering));
  }

  private static WateringSystem tap(double staticKpa, double rise, String watering) {
    return system(InventedPlot.tap("[2 m, 2 m]", staticKpa + " kPa"), rise, watering);
  }

  private static WateringSystem tap(double staticKpa, double rise) {
    return tap(staticKpa, rise, "{propose: true}");
  }

  private static WateringSystem tank(double rise) {
    return system(
        "{kind: gravity tank, at: [2 m, 2 m], outlet_height: 0.5 m, tank_level: 3 m,"
            + " tank_volume: 1000 L}",
        rise,
        "{propose: true}");
  }

  private static List<Device> of(WateringSystem system, String start) {
    return system.devices().stream().filter(d -> d.itemKey().startsWith(start)).toList();
  }

  /**
   * A vacuum breaker guards against water that is sucked back and only while it stands higher than
   * the outlets; a reduced pressure assembly does wherever they stand (a utility's answers on
   * irrigation, Springfield Utility Board). A tank that no main fills needs neither: common
   * practice, no source.
   */
  @Test
  void theBackflowDeviceFollowsFromTheHeightsOfPlants() {
    assertThat(of(tap(300, -4), "part.backflow"))
        .extracting(Device::itemKey)
        .containsExactly("part.backflow-hose");
    assertThat(of(tap(300, 4), "part.backflow"))
        .extracting(Device::itemKey)
        .containsExactly("part.backflow-reduced");
    WateringSystem tank = tank(-4);
    assertThat(of(tank, "part.backflow")).isEmpty();
    assertThat(tank.findings()).extracting(Finding::code).contains("irrigation.backflow-tank");
  }

  /**
   * Six inches above any piping and opening behind it for an atmospheric vacuum breaker, twelve for
   * a pressure vacuum breaker (irrigation rules of Paris, Texas, read), which is not fitted more
   * than five feet above the ground (South Adams County water district, read). On the plane of the
   * test the row lies at a quarter of the rise, the tap half a metre above a twentieth of it.
   */
  @ParameterizedTest
  @CsvSource({"0, hose", "1.70, hose", "1.80, reduced", "4, reduced", "6.1, reduced"})
  void aVacuumBreakerKeepsItsClearance(double rise, String device) {
    WateringSystem system = tap(400, rise);
    double outlet = 0.5 + rise / 20;
    double highest = rise / 4;
    assertThat(outlet >= highest + 0.15).isEqualTo(device.equals("hose"));
    assertThat(of(system, "part.backflow"))
        .extracting(Device::itemKey)
        .containsExactly("part.backflow-" + device);
    Finding remark =
        system.findings().stream()
            .filter(f -> f.code().equals("irrigation.backflow"))
            .findFirst()
            .orElseThrow();
    assertThat(remark.message()).contains("Your local code decides");
    assertThat(remark.quantities().get(0).value()).isEqualTo(0.15);
    if (device.equals("hose")) {
      assertThat(remark.quantities().get(1).value()).isCloseTo(outlet - highest, within(1e-9));
    } else {
      double above = highest + 0.3 - rise / 20;
      assertThat(remark.quantities().get(2).value()).isCloseTo(above, within(1e-9));
      assertThat(remark.message().contains("does too")).isEqualTo(above <= 1.5);
    }
  }

  /**
   * Openings as the emitters ask; 150 gal/min through a square foot of screen, 0.102 m/s, is the
   * lower end of what makers recommend (University of California, Maintenance of Microirrigation
   * Systems, as the catalogue names it; not seen this time).
   */
  @Test
  void theFilterIsTheSmallestThatIsFineAndLargeEnough() {
    WateringSystem system = tap(300, 0);
    double flow = system.zones().stream().mapToDouble(ZoneResult::flowM3PerS).max().orElseThrow();
    double opening =
        system.zones().stream()
            .flatMap(zone -> zone.design().allOutlets().stream())
            .mapToDouble(o -> o.emitter().filterOpeningM())
            .min()
            .orElseThrow();
    List<Device> filters = of(system, "filter.");
    assertThat(filters).hasSize(1);
    Filter chosen = CATALOGUE.filters().get(filters.get(0).itemKey());
    assertThat(chosen.openingM()).isLessThanOrEqualTo(opening + 1e-12);
    assertThat(chosen.ratedFlowM3PerS()).isGreaterThanOrEqualTo(flow);
    assertThat(chosen.screenAreaM2()).isGreaterThanOrEqualTo(flow / 0.102);
    for (Filter other : CATALOGUE.filters().values()) {
      boolean smaller = other.ratedFlowM3PerS() < chosen.ratedFlowM3PerS();
      assertThat(
              smaller
                  && other.openingM() <= opening
                  && other.screenAreaM2() >= flow / 0.102
                  && other.ratedFlowM3PerS() >= flow)
          .as(other.key())
          .isFalse();
    }
    assertThat(filters.get(0).why().message()).contains("no larger than the emitters allow");
  }

  @Test
  void aFilterThatTheOwnerNamedIsNotCalledFineWhereItIsCoarse() {
    WateringSystem system = tap(300, 0, "{propose: true, filter: filter.gravity-25}");
    assertThat(of(system, "filter."))
        .singleElement()
        .satisfies(
            d -> {
              assertThat(d.itemKey()).isEqualTo("filter.gravity-25");
              assertThat(d.why().message()).contains("choose a finer one");
            });
  }

  /** A filter made for a tank would burst on a main: the catalogue's limit, common practice. */
  @Test
  void aFilterThatDoesNotBearTheSupplyIsNotChosen() {
    for (double kpa : List.of(150.0, 300.0, 600.0)) {
      Filter chosen = CATALOGUE.filters().get(of(tap(kpa, 0), "filter.").get(0).itemKey());
      assertThat(chosen.maxPressurePa()).isGreaterThanOrEqualTo(kpa * 1000);
      assertThat(tap(kpa, 0).findings())
          .extracting(Finding::code)
          .doesNotContain("irrigation.filter-pressure", "irrigation.filter-flow");
    }
    assertThat(of(tank(-4), "filter.").get(0).itemKey()).startsWith("filter.gravity");
    WateringSystem beyond = tap(900, 0);
    assertThat(beyond.findings()).extracting(Finding::code).contains("irrigation.filter-pressure");
  }

  @Test
  void aFilterThatTheOwnerNamedIsRemarkedOnWhereItIsTooWeakForThePressure() {
    WateringSystem system = tap(300, 0, "{propose: true, filter: filter.gravity-25}");
    assertThat(system.findings())
        .filteredOn(f -> f.code().equals("irrigation.filter-pressure"))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.quantities().get(0).value()).isCloseTo(300_000, within(1.0));
              assertThat(f.quantities().get(1).value())
                  .isEqualTo(CATALOGUE.filters().get("filter.gravity-25").maxPressurePa());
            });
    assertThat(tap(80, 0, "{propose: true, filter: filter.gravity-25}").findings())
        .extracting(Finding::code)
        .doesNotContain("irrigation.filter-pressure");
  }

  /** A row of a catalogue of one's own: {@code key, ..., rated flow in L/h}. */
  @Test
  void aFilterThatTheOwnerNamedIsRemarkedOnWhereItIsTooSmallForTheFlow() {
    ZoneResult zone = tap(300, 0).zones().get(0);
    double flow = zone.flowM3PerS();
    Filter usual = zone.design().filter();
    assertThat(codes(zone, small(usual, 0.9 * flow, usual.screenAreaM2())))
        .containsExactly("irrigation.filter-flow");
    // 0.102 m/s through the screen, the lower end of what makers recommend, as above.
    assertThat(codes(zone, small(usual, 1.1 * flow, 0.9 * flow / 0.102)))
        .containsExactly("irrigation.filter-screen");
    assertThat(codes(zone, small(usual, 1.1 * flow, 1.1 * flow / 0.101))).isEmpty();
  }

  private static Filter small(Filter like, double ratedFlow, double area) {
    return new Filter(
        "filter.own",
        "Own filter (invented)",
        like.openingM(),
        like.mesh(),
        area,
        ratedFlow,
        like.lossAtRatedPa(),
        like.dirtyAllowancePa(),
        like.maxPressurePa(),
        "invented");
  }

  private static List<String> codes(ZoneResult zone, Filter filter) {
    ZoneDesign old = zone.design();
    ZoneDesign design =
        new ZoneDesign(
            old.id(), old.main(), old.mainPipe(), old.laterals(), old.regulator(), filter);
    ZoneResult other = ZoneResult.of(design, zone.network(), zone.solution());
    SupplyModel supply = tap(300, 0).supply();
    return new FilterCheck(supply, Rulebook.of(CATALOGUE))
        .remarks(List.of(List.of(other))).stream().map(Finding::code).toList();
  }

  /** Pressure at rest against the most that the emitters bear: physics. */
  @ParameterizedTest
  @CsvSource({"150, 0, false", "240, 0, false", "450, 0, true", "600, -4, true"})
  void aRegulatorIsThereWhereTheEmittersDoNotBearThePressureAtRest(
      double staticKpa, double rise, boolean wanted) {
    WateringSystem system = tap(staticKpa, rise);
    assertThat(of(system, "reg.").isEmpty()).isEqualTo(!wanted);
    for (ZoneResult zone : system.zones()) {
      double bear =
          zone.design().allOutlets().stream()
              .mapToDouble(o -> o.emitter().maxPressurePa())
              .min()
              .orElseThrow();
      double lowestM =
          zone.design().allOutlets().stream()
              .mapToDouble(o -> o.at().y() / 40 * rise)
              .min()
              .orElseThrow();
      double atRest = staticKpa * 1000 + (0.5 + 2.0 / 40 * rise - lowestM) * 9806.65;
      assertThat(zone.design().regulator().isPresent()).isEqualTo(atRest > bear);
      zone.design()
          .regulator()
          .ifPresent(
              r -> {
                assertThat(r.setPressurePa()).isLessThanOrEqualTo(bear);
                assertThat(r.maxInletPa()).isGreaterThanOrEqualTo(staticKpa * 1000);
                assertThat(zone.flowM3PerS())
                    .isBetween(r.minFlowM3PerS() * 0.95, r.maxFlowM3PerS());
              });
    }
  }

  @Test
  void noRegulatorIsPlannedBeyondThePressureThatItBears() {
    double most =
        CATALOGUE.regulators().values().stream()
            .mapToDouble(Regulator::maxInletPa)
            .max()
            .orElseThrow();
    WateringSystem system = tap(most / 1000 + 50, 0);
    assertThat(of(system, "reg.")).isEmpty();
    assertThat(system.findings())
        .extracting(Finding::code)
        .contains("irrigation.pressure-too-high");
  }

  @Test
  void aRegulatorThatTheOwnerNamedIsNotSaidToBeNeededWhereItIsNot() {
    WateringSystem system = tap(150, 0, "{propose: true, regulator: reg.1-bar-low}");
    assertThat(of(system, "reg."))
        .singleElement()
        .satisfies(d -> assertThat(d.why().message()).startsWith("Your description asks for it"));
  }

  /**
   * More than half a metre between the highest and the lowest place: common practice, no source.
   */
  @Test
  void aVentIsThereWhereTheZoneRises() {
    assertThat(of(tap(300, 0), "part.air-vent")).isEmpty();
    WateringSystem steep = tap(300, 6);
    assertThat(of(steep, "part.air-vent"))
        .singleElement()
        .satisfies(d -> assertThat(d.count()).isEqualTo(steep.zones().size()));
  }

  /** Every end of tubing is flushed; a loop has none and gets one: common practice, no source. */
  @ParameterizedTest
  @CsvSource({"dead end, 1", "two sided, 2", "loop, 1"})
  void everyEndOfTubingCanBeFlushed(String run, int ends) {
    WateringSystem system =
        tap(300, 0, "{propose: true, laterals: [{row: A, run: " + run + ", tubing: pipe.pe-16}]}");
    assertThat(of(system, "part.end-cap"))
        .singleElement()
        .satisfies(
            d -> {
              assertThat(d.itemKey()).isEqualTo("part.end-cap-pe-16");
              assertThat(d.count()).isEqualTo(ends);
            });
  }

  @ParameterizedTest
  @ValueSource(strings = {"dead end", "loop"})
  void laidTubingHasItsEnds(String run) {
    String route =
        run.equals("loop")
            ? "[[4 m, 9.6 m], [15 m, 9.6 m], [15 m, 10.4 m], [4 m, 10.4 m]]"
            : "[[4 m, 9.6 m], [15 m, 9.6 m]]";
    WateringSystem system =
        tap(
            300,
            0,
            "{propose: true, laterals: [{row: A, run: "
                + run
                + ", tubing: pipe.pe-16, laid: yes, route: "
                + route
                + "}]}");
    assertThat(of(system, "part.end-cap")).isEmpty();
  }
}
