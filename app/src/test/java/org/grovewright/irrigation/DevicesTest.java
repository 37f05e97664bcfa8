package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.grovewright.irrigation.InventedPlot.CATALOGUE;

import java.util.List;
import org.grovewright.catalogue.Filter;
import org.grovewright.catalogue.Regulator;
import org.grovewright.finding.Finding;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.Network;
import org.grovewright.model.Point;
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
   * test the tap stands half a metre above a twentieth of the rise; the row lies at a quarter of it
   * and the tubing beside the row a little higher.
   */
  @ParameterizedTest
  @CsvSource({"0, hose", "1.60, hose", "1.80, reduced", "4, reduced", "6.1, reduced"})
  void aVacuumBreakerKeepsItsClearance(double rise, String device) {
    WateringSystem system = tap(400, rise);
    double outlet = 0.5 + rise / 20;
    double farthestY =
        system.zones().stream()
            .flatMap(zone -> zone.design().laterals().stream())
            .flatMap(lateral -> lateral.lines().stream())
            .flatMap(line -> line.path().stream())
            .mapToDouble(Point::y)
            .max()
            .orElseThrow();
    assertThat(farthestY).isBetween(10.0, 10.5);
    double highest = rise * farthestY / 40;
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
   * A needle is read well in the middle of its scale; a few metres of water hardly move one that
   * goes to 600 kPa: common practice, no source. The water stands 3.5 m above the ground at the
   * tank, and a row on ground that is 6.4 m lower has 9.9 m, 97 kPa; one that is 7.2 m lower has
   * 10.7 m, 105 kPa, which a gauge to 100 kPa does not show.
   */
  @Test
  void theGaugeSuitsThePressureThatItMustShow() {
    assertThat(of(tank(0), "part.gauge"))
        .extracting(Device::itemKey)
        .containsExactly("part.gauge-low");
    assertThat(of(tank(-32), "part.gauge"))
        .extracting(Device::itemKey)
        .containsExactly("part.gauge-low");
    assertThat(of(tank(-36), "part.gauge"))
        .extracting(Device::itemKey)
        .containsExactly("part.gauge");
    assertThat(of(tap(300, 0), "part.gauge"))
        .extracting(Device::itemKey)
        .containsExactly("part.gauge");
  }

  /** The drawn main runs straight from the tap over a bank to a row on the level behind it. */
  private static WateringSystem overABank(double bankM) {
    String bank = "    - {at: [16 m, 2 m], height: " + bankM + " m}\n";
    return InventedPlot.system(
        InventedPlot.grove(
            0,
            bank,
            InventedPlot.tap("[2 m, 2 m]", "400 kPa"),
            InventedPlot.row("A", "[30 m, 2 m]", "[42 m, 2 m]"),
            "{propose: true, main: {pipe: pipe.pe100-pn16-25, route: [[30 m, 2 m]]}}"));
  }

  /** The same clearance, here above a pipe that only the main leads over the bank. */
  @ParameterizedTest
  @CsvSource({"0, part.backflow-hose, 40", "3, part.backflow-reduced, 70"})
  void aRiseThatOnlyTheMainCrossesCounts(double bankM, String device, double lossCoefficient) {
    WateringSystem system = overABank(bankM);
    assertThat(of(system, "part.backflow")).extracting(Device::itemKey).containsExactly(device);
    Finding remark = backflowRemark(system);
    if (bankM > 0) {
      // the bank is the highest, and the tap stands at least half a metre above its ground
      double above = remark.quantities().get(2).value();
      double outlet = system.supply().elevationM();
      assertThat(above).isCloseTo(bankM + 0.3 - (outlet - 0.5), within(1e-9));
    }
    double bore = CATALOGUE.constant("irrigation.head-bore").value();
    double valve = CATALOGUE.parts().get("part.valve-electric-20").lossCoefficient();
    for (ZoneResult zone : system.zones()) {
      Network network = zone.network().network();
      Link.LossDevice head =
          (Link.LossDevice) network.links().get(network.linkIndex(ZoneNetwork.VALVE_LINK));
      // h = K v^2 / 2g
      double velocity = 1e-4 / (Math.PI / 4 * bore * bore);
      double expected = (valve + lossCoefficient) * velocity * velocity / (2 * 9.80665);
      assertThat(head.loss().headAt(1e-4)).isCloseTo(expected, within(1e-9));
    }
  }

  private static Finding backflowRemark(WateringSystem system) {
    return system.findings().stream()
        .filter(f -> f.code().equals("irrigation.backflow"))
        .findFirst()
        .orElseThrow();
  }

  private static String zones(int count) {
    StringBuilder zones = new StringBuilder();
    for (int i = 0; i < count; i++) {
      zones.append(
          "{id: z%d, laterals: [{row: R%d, run: dead end, tubing: pipe.pe-16}]}, ".formatted(i, i));
    }
    return zones.toString();
  }

  private static WateringSystem inZones(int count, double rise, String main) {
    StringBuilder rows = new StringBuilder();
    for (int i = 0; i < count; i++) {
      rows.append(
          InventedPlot.row(
              "R" + i, "[4 m, %d m]".formatted(6 + 4 * i), "[16 m, %d m]".formatted(6 + 4 * i)));
    }
    return InventedPlot.system(
        InventedPlot.grove(
            rise,
            InventedPlot.tap("[4 m, 2 m]", "300 kPa"),
            rows.toString(),
            "{propose: true, " + main + "zones: [" + zones(count) + "]}"));
  }

  /**
   * A vacuum breaker without a spring stands behind each valve, since it must not stay under
   * pressure; an assembly once before all valves: common practice, no source.
   */
  @ParameterizedTest
  @CsvSource({
    "1, -4, part.backflow-hose, 1",
    "3, -4, part.backflow-hose, 3",
    "5, -4, part.backflow-antisiphon, 5",
    "3, 6, part.backflow-reduced, 1"
  })
  void vacuumBreakersAreBoughtForEachValveAndAnAssemblyOnce(
      int zones, double rise, String device, int count) {
    WateringSystem system = inZones(zones, rise, "");
    assertThat(system.zones()).hasSize(zones);
    assertThat(of(system, "part.backflow"))
        .singleElement()
        .satisfies(
            d -> {
              assertThat(d.itemKey()).isEqualTo(device);
              assertThat(d.count()).isEqualTo(count);
            });
    Finding remark = backflowRemark(system);
    boolean breaker = !device.equals("part.backflow-reduced");
    assertThat(remark.message().contains("one stands behind each valve")).isEqualTo(breaker);
    if (breaker) {
      assertThat(remark.quantities().get(2).value()).isEqualTo(count);
    }
  }

  /** The laid main before the valves stays under pressure: common practice, no source. */
  @Test
  void valvesBehindALaidMainAreGuardedByOneAssembly() {
    String main = "main: {pipe: pipe.pe100-pn16-25, laid: yes, route: [[4 m, 6 m], [4 m, 14 m]]}, ";
    WateringSystem system = inZones(3, -4, main);
    assertThat(of(system, "part.backflow"))
        .singleElement()
        .satisfies(
            d -> {
              assertThat(d.itemKey()).isEqualTo("part.backflow-reduced");
              assertThat(d.count()).isEqualTo(1);
            });
    assertThat(backflowRemark(system).message()).contains("valves stand behind the main");
  }

  /**
   * Openings as the emitters ask; /** Openings as the emitters ask; 150 gal/min through a square
   * foot of screen, 0.102 m/s, is the lower end of what makers recommend (University of California,
   * Maintenance of Microirrigation Systems, as the catalogue names it; not seen this time).
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
