package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.model.Point;
import org.grovewright.model.Watering.Run;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Trees are watered from both sides: common practice, no source. */
class OneSideTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final Path EXAMPLES = Path.of("../examples");

  private static Plan plan(String text) {
    return Planner.plan(
        new DescriptionReader(CATALOGUE, null).read(text, "test.yaml", EXAMPLES), CATALOGUE);
  }

  private static boolean isTree(Plan plan, int plant) {
    String species = plan.grove().plantings().get(plant).speciesKey();
    return CATALOGUE.species().get(species).role() == Species.Role.MAIN;
  }

  /** Side of the line from one point to another on which a third lies: above zero for left. */
  private static double side(Point from, Point to, Point at) {
    return (to.x() - from.x()) * (at.y() - from.y()) - (to.y() - from.y()) * (at.x() - from.x());
  }

  @ParameterizedTest
  @ValueSource(strings = {"demo", "us-gravity"})
  void everyTreeOfTheExamplesHasEmittersOnBothSides(String example) throws IOException {
    Plan plan = plan(Files.readString(EXAMPLES.resolve(example + ".yaml")));
    int trees = 0;
    for (ZoneResult zone : plan.watering().zones()) {
      for (ZoneDesign.LateralDesign lateral : zone.design().laterals()) {
        List<Point> row =
            plan.grove().rows().stream()
                .filter(r -> r.id().equals(lateral.rowId()))
                .findFirst()
                .orElseThrow()
                .line();
        Map<Integer, List<Outlet>> byPlant =
            lateral.lines().stream()
                .flatMap(line -> line.outlets().stream())
                .collect(Collectors.groupingBy(Outlet::plant));
        for (Map.Entry<Integer, List<Outlet>> plant : byPlant.entrySet()) {
          if (isTree(plan, plant.getKey())) {
            trees++;
            assertThat(plant.getValue())
                .as(plan.grove().plantings().get(plant.getKey()).id())
                .anyMatch(o -> side(row.get(0), row.get(1), o.at()) > 0)
                .anyMatch(o -> side(row.get(0), row.get(1), o.at()) < 0);
          }
        }
      }
    }
    assertThat(trees).isEqualTo(12);
    assertThat(plan.findings()).extracting(Finding::code).doesNotContain("irrigation.one-side");
  }

  @ParameterizedTest
  @ValueSource(strings = {"demo"})
  void treesKeptVerySmallMayHaveOneLine(String example) throws IOException {
    String text = Files.readString(EXAMPLES.resolve(example + ".yaml"));
    Plan plan =
        plan(
            text.replaceAll("kept_spread: [0-9.]+ m", "kept_spread: 0.8 m")
                .replace("{species: lemon, at", "{species: lemon, kept_spread: 0.8 m, at")
                .replace(
                    "kept_spread: 0.8 m, at: 16.5 m, kept_spread: 0.8 m",
                    "kept_spread: 0.8 m, at: 16.5 m"));

    assertThat(plan.watering().zones())
        .flatExtracting(z -> z.design().laterals())
        .extracting(ZoneDesign.LateralDesign::run)
        .contains(Run.DEAD_END);
  }

  @ParameterizedTest
  @ValueSource(strings = {"dead end", "loop"})
  void anOwnersLineAlongOneSideIsKeptAndRemarkedOn(String run) throws IOException {
    String text = Files.readString(EXAMPLES.resolve("demo.yaml"));
    Plan plan =
        plan(
            text.replace(
                "    route: [[13.5 m, 9.5 m], [3 m, 9.5 m]]\n",
                "    route: [[13.5 m, 9.5 m], [3 m, 9.5 m]]\n"
                    + "  zones:\n"
                    + "    - {id: all, laterals: [{row: A, run: "
                    + run
                    + ", offset: 0.3 m}, {row: B, run: loop, offset: 0.3 m}]}\n"));

    assertThat(
            plan.findings().stream()
                .filter(f -> f.code().equals("irrigation.one-side"))
                .map(Finding::subject))
        .isEqualTo(run.equals("loop") ? List.of() : List.of("A"));
  }
}
