package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.grovewright.demand.Requirement;
import org.grovewright.hydraulics.Link;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.trench.Trench;
import org.grovewright.water.WaterNeeds;
import org.junit.jupiter.api.Test;

/**
 * Pipe and trench are as long as the ground they lie in. On a plane that rises 3 m over 4 m every
 * way straight up is 5 m long for 4 m on the plan (Pythagoras); ways across it are not longer.
 */
class SlopeLengthTest {
  /** An invented steep plot; the row climbs it. */
  private static WateringSystem system(double rise) {
    return InventedPlot.system(
        InventedPlot.grove(
            rise,
            InventedPlot.tap("[4 m, 4 m]", "600 kPa"),
            InventedPlot.row("A", "[4 m, 12 m]", "[4 m, 24 m]"),
            "{propose: true, main: {pipe: pipe.pe100-pn16-25},"
                + " laterals: [{row: A, run: dead end, tubing: pipe.pe-16}]}"));
  }

  private static double metres(WateringSystem system, String item) {
    return system.requirements().stream()
        .filter(r -> r.itemKey().equals(item))
        .mapToDouble(Requirement::quantity)
        .sum();
  }

  @Test
  void pipeAndTrenchUpAPlaneAreAsLongAsItsSlope() {
    WateringSystem steep = system(30);
    // 8 m on the plan from the tap to the row.
    assertThat(steep.trench().lengthM()).isCloseTo(10, within(1e-6));
    assertThat(metres(steep, "pipe.pe100-pn16-25")).isCloseTo(10, within(1e-6));
    Trench.Segment first = steep.trench().segments().get(0);
    assertThat(first.volumeM3())
        .isCloseTo(first.lengthM() * first.widthM() * first.depthM(), within(1e-9));
    double work =
        steep.work().stream()
            .filter(w -> w.taskKey().equals("lay-main"))
            .mapToDouble(w -> w.amount())
            .sum();
    assertThat(work).isCloseTo(10, within(1e-6));

    // The tubing first crosses the slope from the row's line to its own, then climbs.
    Line line = steep.zones().get(0).design().laterals().get(0).lines().get(0);
    double across = line.path().get(0).distanceTo(line.path().get(1));
    double up = line.lengthM() - across;
    assertThat(line.path().get(0).y()).isCloseTo(line.path().get(1).y(), within(1e-9));
    assertThat(metres(steep, "pipe.pe-16")).isCloseTo(across + up * 5 / 4, within(1e-6));

    // Water runs through the same metres.
    assertThat(pipe(steep, "main-1").length()).isCloseTo(10, within(1e-6));
    double pieces =
        steep.zones().get(0).network().network().links().stream()
            .filter(link -> link.id().startsWith("pipe-A"))
            .mapToDouble(link -> steep.zones().get(0).network().alongM().get(link.to()))
            .max()
            .orElseThrow();
    double solved =
        steep.zones().get(0).network().network().links().stream()
            .filter(link -> link.id().startsWith("pipe-A"))
            .mapToDouble(link -> ((Link.Pipe) link).length())
            .sum();
    assertThat(solved).isBetween((pieces - across) * 5 / 4, across + (pieces - across) * 5 / 4 + 2);
  }

  private static Link.Pipe pipe(WateringSystem system, String id) {
    return (Link.Pipe)
        system.zones().get(0).network().network().links().stream()
            .filter(link -> link.id().equals(id))
            .findFirst()
            .orElseThrow();
  }

  /** A line a metre up the slope from its row; its feeders lead straight or aslant down to it. */
  @Test
  void feedersAreAsLongAsTheirSlope() {
    WateringSystem steep =
        InventedPlot.system(
            InventedPlot.grove(
                30,
                InventedPlot.tap("[4 m, 4 m]", "600 kPa"),
                InventedPlot.row("A", "[4 m, 12 m]", "[16 m, 12 m]"),
                "{propose: true, laterals: [{row: A, run: dead end, tubing: pipe.pe-16, laid: yes,"
                    + " route: [[4 m, 13 m], [16 m, 13 m]]}]}"));
    ZoneDesign zone = steep.zones().get(0).design();
    assertThat(zone.allOutlets()).isNotEmpty();
    double bought = 0;
    for (Outlet outlet : zone.allOutlets()) {
      double aside = 4 + outlet.alongM() - outlet.at().x();
      double feeder = Math.hypot(aside, 5.0 / 4);
      bought += feeder;
      assertThat(pipe(steep, "feeder-" + outlet.id()).length()).isCloseTo(feeder, within(1e-6));
    }
    assertThat(metres(steep, "pipe.feeder-4")).isCloseTo(bought, within(1e-6));
  }

  /** What a way is said to take more of is what it takes more of on its list of goods. */
  @Test
  void waysAreComparedByThePipeThatIsBoughtForThem() {
    Grove grove =
        InventedPlot.grove(
            20,
            InventedPlot.tap("[4 m, 4 m]", "400 kPa"),
            InventedPlot.row("A", "[4 m, 12 m]", "[4 m, 24 m]"),
            "{propose: true}");
    FigureBook book = new FigureBook();
    WaterNeeds needs = WaterNeeds.of(grove, InventedPlot.CATALOGUE, book);
    WateringSystem steep =
        WateringSystem.of(grove, InventedPlot.CATALOGUE, needs, Terrain.of(grove.site()), book);
    Alternative least =
        steep.alternatives().stream()
            .filter(way -> way.why().message().startsWith("It costs least"))
            .findFirst()
            .orElseThrow();
    int compared = 0;
    for (Alternative way : steep.alternatives()) {
      for (Quantity said : way.why().quantities()) {
        if (said.kind() == Kind.LENGTH) {
          double more = metres(book, way) - metres(book, least);
          // each amount of the list is printed to a tenth of a metre
          assertThat(said.value()).isCloseTo(Math.abs(more), within(0.25));
          compared++;
        }
      }
    }
    assertThat(compared)
        .as(steep.alternatives().stream().map(way -> way.why().message()).toList().toString())
        .isPositive();
  }

  private static double metres(FigureBook book, Alternative way) {
    return book.get(way.figureId("pipe")).working().inputs().stream()
        .mapToDouble(pipe -> Double.parseDouble(pipe.origin().replaceAll(" m at.*", "")))
        .sum();
  }

  @Test
  void onLevelGroundNothingIsLonger() {
    WateringSystem level = system(0);
    assertThat(level.trench().lengthM()).isCloseTo(8, within(1e-6));
    assertThat(metres(level, "pipe.pe100-pn16-25")).isCloseTo(8, within(1e-6));
    Line line = level.zones().get(0).design().laterals().get(0).lines().get(0);
    assertThat(metres(level, "pipe.pe-16")).isCloseTo(line.lengthM(), within(1e-6));
  }

  @Test
  void theRestOfAWayBeginsWhereItsFirstPartEnds() {
    List<Point> there = List.of(new Point(4, 4), new Point(4, 12), new Point(10, 12));
    assertThat(Terrain.LEVEL.lengthOver(there)).isCloseTo(14, within(1e-9));
    assertThat(Paths.from(there, 10)).containsExactly(new Point(10, 12), new Point(6, 12));
  }
}
