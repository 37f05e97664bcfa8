package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.grovewright.irrigation.InventedPlot.CATALOGUE;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.grovewright.demand.Requirement;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.description.DescriptionWriter;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.trench.LaidMain;
import org.junit.jupiter.api.Test;

/** A main that lies there is neither bought nor dug, and water still runs through it. */
class LaidMainTest {
  private static final String PIPE = "pipe.pe100-pn16-25";

  /** An invented level orchard of two rows, 10 m and 14 m up from a tap in the corner. */
  private static Grove grove(String watering) {
    return InventedPlot.grove(
        0,
        InventedPlot.tap("[4 m, 2 m]", "300 kPa"),
        InventedPlot.row("A", "[4 m, 10 m]", "[16 m, 10 m]")
            + InventedPlot.row("B", "[4 m, 14 m]", "[16 m, 14 m]"),
        watering);
  }

  private static WateringSystem system(String watering) {
    return InventedPlot.system(grove(watering));
  }

  private static final String ZONES =
      "zones: [{id: all, laterals: [{row: A, run: dead end, tubing: pipe.pe-16},"
          + " {row: B, run: dead end, tubing: pipe.pe-16}]}]";

  private static WateringSystem system(String main, String zones) {
    return system("{propose: true, main: {pipe: " + PIPE + ", " + main + "}, " + zones + "}");
  }

  private static Map<String, Double> goods(WateringSystem system) {
    Map<String, Double> goods = new TreeMap<>();
    for (Requirement r : system.requirements()) {
      goods.merge(r.itemKey(), r.quantity(), Double::sum);
    }
    return goods;
  }

  private static double work(WateringSystem system, String task) {
    return system.work().stream()
        .filter(w -> w.taskKey().equals(task))
        .mapToDouble(WorkAmount::amount)
        .sum();
  }

  private static List<String> codes(WateringSystem system) {
    return system.findings().stream().map(Finding::code).toList();
  }

  @Test
  void aMainThatLiesThereIsNotBoughtAndNotDug() {
    String route = "route: [[4 m, 10 m], [4 m, 14 m]]";
    WateringSystem open = system(route, ZONES);
    WateringSystem laid = system(route + ", laid: yes", ZONES);

    assertThat(goods(open)).containsKey(PIPE);
    assertThat(goods(laid))
        .doesNotContainKeys(
            PIPE, "part.tee-pe100-pn16-25", "part.elbow-pe100-pn16-25", TrenchGoods.TAPE);
    assertThat(goods(laid).keySet()).noneMatch(key -> key.startsWith("part.adaptor"));
    // The laterals are new, so each still gets its joint to the main.
    assertThat(goods(laid).get("part.take-off-pe100-pn16-25")).isEqualTo(2);
    for (String task : List.of("dig-trench", "backfill-trench", "lay-main")) {
      assertThat(work(laid, task)).as(task).isZero();
    }
    assertThat(work(open, "lay-main")).isCloseTo(12, within(8.0));
    assertThat(laid.trench().segments()).isEmpty();
    assertThat(codes(laid)).contains("irrigation.main-laid");
    assertThat(codes(open)).doesNotContain("irrigation.main-laid");

    // Water runs through it with the friction of its 8 m and 4 m.
    ZoneDesign zone = laid.zones().get(0).design();
    assertThat(zone.mainPipe().key()).isEqualTo(PIPE);
    assertThat(zone.main().stream().mapToDouble(Paths::length).toArray())
        .containsExactly(new double[] {8, 4}, within(1e-9));
    assertThat(laid.zones().get(0).solution().velocity("main-1")).isPositive();
  }

  /** From the end at (4, 10) to the feed of row B at (4, 14) are 4 m. */
  @Test
  void whatGoesOnFromItsEndIsBoughtAndDug() {
    WateringSystem laid = system("route: [[4 m, 10 m]], laid: yes", ZONES);
    assertThat(goods(laid).get(PIPE)).isCloseTo(4, within(1e-6));
    assertThat(goods(laid)).containsEntry("part.coupling-pe100-pn16-25", 1.0);
    assertThat(work(laid, "lay-main")).isCloseTo(4, within(1e-6));
    assertThat(laid.trench().lengthM()).isCloseTo(4, within(1e-6));
    assertThat(laid.zones().get(0).design().main().get(0)).hasSize(2);
  }

  @Test
  void rowsAreFedWhereTheLaidMainPassesThem() {
    // It comes in from the far end of the rows, which is the far end from the tap too.
    WateringSystem laid =
        system("route: [[18 m, 2 m], [18 m, 14 m]], laid: yes", "emitter_sorts: 3");
    for (ZoneResult zone : laid.zones()) {
      for (List<Point> leg : zone.design().main()) {
        assertThat(leg.get(leg.size() - 1).x()).isEqualTo(16);
      }
    }
    // 2 m from the main to the end of either row, each with a tee or the end of the main.
    assertThat(goods(laid).get(PIPE)).isCloseTo(4, within(0.2));
  }

  @Test
  void valvesOfZonesThatShareItStandWhereWaterLeavesIt() {
    String zones =
        "zones: [{id: a, laterals: [{row: A, run: dead end}]},"
            + " {id: b, laterals: [{row: B, run: dead end}]}]";
    WateringSystem apart = system("route: [[4 m, 10 m], [4 m, 14 m]], laid: yes", zones);
    assertThat(goods(apart)).containsEntry("part.timer-tap-1", 2.0);
    WateringSystem together = system("route: [[4 m, 9 m]], laid: yes", zones);
    assertThat(goods(together)).containsEntry("part.timer-tap-2", 1.0);
    assertThat(codes(together)).contains("irrigation.main-laid-shared");
  }

  @Test
  void aMainThatIsTooNarrowIsKeptAndSaid() {
    // About 180 m of the thinnest pipe: by the Blasius law the loss goes with nearly the fifth
    // power of the bore, so a wider pipe brings the water.
    String far = "route: [[56 m, 2 m], [56 m, 38 m], [2 m, 38 m], [2 m, 12 m]";
    WateringSystem narrow =
        system(
            "{propose: true, main: {pipe: pipe.pe-13, "
                + far
                + "], laid: yes}, zones: [{id: all, laterals: [{row: A, run: dead end,"
                + " emitter: "
                + mostThirsty()
                + ", emitters_per_plant: 6}, {row: B, run: dead end, emitter: "
                + mostThirsty()
                + ", emitters_per_plant: 6}]}]}");
    assertThat(narrow.zones().get(0).design().mainPipe().key()).isEqualTo("pipe.pe-13");
    assertThat(narrow.findings())
        .filteredOn(f -> f.code().equals("irrigation.main-laid-narrow"))
        .singleElement()
        .satisfies(
            f ->
                assertThat(f.quantities().get(1).value())
                    .isGreaterThan(f.quantities().get(0).value()));
  }

  private static String mostThirsty() {
    return CATALOGUE.emitters().values().stream()
        .filter(e -> !e.compensating())
        .max(java.util.Comparator.comparingDouble(e -> e.nominalFlowM3PerS()))
        .orElseThrow()
        .key();
  }

  @Test
  void itIsReadWrittenAndReadAgain() {
    Grove grove =
        grove("{propose: true, main: {pipe: " + PIPE + ", route: [[4 m, 10 m]], laid: yes}}");
    assertThat(grove.watering().mainLaid()).isTrue();
    String text = new DescriptionWriter(CATALOGUE).write(grove);
    assertThat(new DescriptionReader(CATALOGUE, null).read(text, "again.yaml", Path.of(".")))
        .isEqualTo(grove);
  }

  @Test
  void whatIsMissingIsSaidWithItsField() {
    assertThat(problem("main: {route: [[4 m, 10 m]], laid: yes}"))
        .contains("pipe")
        .contains("laid: false");
    assertThat(problem("main: {pipe: " + PIPE + ", laid: yes}")).contains("route");
    assertThat(problem("main: {pipe: " + PIPE + ", route: [], laid: yes}")).contains("is empty");
    assertThat(problem("main: {pipe: " + PIPE + ", route: [[4 m, 10 m]], laid: perhaps}"))
        .contains("laid");
  }

  private static String problem(String main) {
    try {
      grove("{propose: true, " + main + "}");
      return "";
    } catch (DescriptionException e) {
      return e.getMessage() + e.problems();
    }
  }

  @Test
  void aWayIsCutWhereItLeavesThePipe() {
    LaidMain laid = new LaidMain(List.of(new Point(0, 0), new Point(10, 0), new Point(10, 10)));
    List<Point> leg =
        List.of(new Point(0, 0), new Point(10, 0), new Point(10, 4), new Point(13, 8));
    List<List<Point>> missing = laid.missing(List.of(leg)).get(0);
    assertThat(missing).hasSize(1);
    assertThat(Paths.length(missing.get(0))).isCloseTo(5, within(1e-6));
    // On from there back to the pipe and along it nothing is laid; beyond its end 2 m are.
    List<Point> next =
        List.of(new Point(13, 8), new Point(10, 4), new Point(10, 10), new Point(10, 12));
    List<List<Point>> second = laid.missing(List.of(leg, next)).get(1);
    assertThat(second).hasSize(1);
    assertThat(Paths.length(second.get(0))).isCloseTo(2, within(1e-6));
    assertThat(LaidMain.NONE.missing(List.of(leg)).get(0)).containsExactly(leg);
  }
}
