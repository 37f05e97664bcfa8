package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.demand.Requirement;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Watering.Run;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.junit.jupiter.api.Test;

/** Lines that the owner drew or laid are kept and checked, and the others are proposed. */
class OwnLinesTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final Plan PROPOSED = plan("");

  private static Plan plan(String laterals) {
    String text = demo().replace("on_hand:", laterals + "\non_hand:");
    DescriptionReader reader =
        new DescriptionReader(
            CATALOGUE, new org.grovewright.formats.weather.WeatherOfDescription());
    return Planner.plan(reader.describe(text, "demo").grove(), CATALOGUE);
  }

  private static String demo() {
    try (InputStream in =
        OwnLinesTest.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static List<ZoneDesign.LateralDesign> laterals(Plan plan, String row) {
    return plan.watering().zones().stream()
        .flatMap(zone -> zone.design().laterals().stream())
        .filter(lateral -> lateral.rowId().equals(row))
        .toList();
  }

  private static double metres(Plan plan, String item) {
    return plan.watering().requirements().stream()
        .filter(one -> one.itemKey().equals(item))
        .mapToDouble(Requirement::quantity)
        .sum();
  }

  @Test
  void aLaidLineIsKeptAsItLiesAndNotBought() {
    Plan plan =
        plan(
            "  laterals:\n"
                + "    - {row: A, run: dead end, tubing: pipe.pe-16, laid: yes,"
                + " route: [[3 m, 12.4 m], [42.5 m, 12.4 m]]}\n");
    List<ZoneDesign.LateralDesign> own = laterals(plan, "A");
    assertThat(own).hasSize(1);
    assertThat(own.get(0).run()).isEqualTo(Run.DEAD_END);
    assertThat(own.get(0).tubing().key()).isEqualTo("pipe.pe-16");
    assertThat(own.get(0).lines().get(0).lengthM()).isCloseTo(39.5, within(1e-9));
    // Row B is still proposed; the 16 mm tubing on the list is that of row B alone.
    double rest =
        laterals(plan, "B").stream()
            .filter(l -> l.tubing().key().equals("pipe.pe-16"))
            .flatMap(l -> l.lines().stream())
            .mapToDouble(line -> Terrain.of(plan.grove().site()).lengthOver(line.path()))
            .sum();
    assertThat(laterals(plan, "B")).isNotEmpty();
    assertThat(metres(plan, "pipe.pe-16")).isCloseTo(rest, within(1e-6));
    assertThat(metres(plan, "pipe.pe-16")).isLessThan(metres(PROPOSED, "pipe.pe-16"));
    assertThat(plan.findings()).extracting(Finding::code).contains("irrigation.laid");
    // It is checked like any other: every emitter is solved, and one side of trees is remarked on.
    assertThat(plan.watering().zones())
        .flatExtracting(ZoneResult::outlets)
        .filteredOn(o -> plan.grove().plantings().get(o.outlet().plant()).id().startsWith("A"))
        .isNotEmpty()
        .allSatisfy(o -> assertThat(o.pressurePa()).isPositive());
    assertThat(plan.findings())
        .anyMatch(f -> f.code().equals("irrigation.one-side") && f.subject().equals("A"));
  }

  @Test
  void aLineThatPassesItsPlantsTooFarOffFallsShort() {
    Plan plan =
        plan(
            "  laterals:\n"
                + "    - {row: A, run: loop, route: [[4 m, 14.5 m], [42 m, 14.5 m], [42 m, 16 m],"
                + " [4 m, 16 m]]}\n");
    assertThat(plan.findings())
        .anyMatch(f -> f.code().equals("irrigation.line-too-far") && f.subject().equals("A1"));
    assertThat(laterals(plan, "A").get(0).lines().get(0).lengthM()).isCloseTo(79, within(1e-9));
    assertThat(laterals(plan, "A").get(0).lines().get(0).closed()).isTrue();
  }

  @Test
  void anOwnLineKeepsItsRunWhateverElseIsProposed() {
    Plan plan = plan("  laterals:\n    - {row: B, run: two sided}\n");
    assertThat(laterals(plan, "B")).hasSize(1);
    assertThat(laterals(plan, "B").get(0).run()).isEqualTo(Run.TWO_SIDED);
    assertThat(laterals(plan, "A")).isNotEmpty();
  }

  @Test
  void whatCannotBeIsSaidWithItsField() {
    assertThat(problems("  laterals:\n    - {row: A, run: loop, laid: yes}\n")).contains("tubing");
    assertThat(problems("  laterals:\n    - {row: C, run: loop}\n")).contains("there is no row");
    assertThat(problems("  laterals:\n    - {row: A, run: loop}\n    - {row: A, run: dead end}\n"))
        .contains("row A has one already");
    assertThat(
            problems("  laterals:\n    - {row: A, run: loop, route: [[0 m, 0 m], [1 m, 0 m]]}\n"))
        .contains("route");
    assertThat(
            problems(
                "  laterals:\n    - {row: A, run: loop}\n"
                    + "  zones:\n    - {id: x, laterals: [{row: B, run: loop}]}\n"))
        .contains("put each line into its zone");
  }

  private static String problems(String laterals) {
    try {
      plan(laterals);
      return "";
    } catch (DescriptionException e) {
      return e.getMessage() + e.problems();
    }
  }
}
