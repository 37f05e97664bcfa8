package org.grovewright.formats.description;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Supply;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said relative to something else comes out as places. */
class ResolvedPlacesTest {
  private static Map<String, Planting> plants(Grove grove) {
    return grove.plantings().stream().collect(Collectors.toMap(Planting::id, Function.identity()));
  }

  private static void assertAt(Planting plant, double xFt, double yFt) {
    assertThat(plant.at().distanceTo(new Point(xFt * 0.3048, yFt * 0.3048)))
        .as("%s at %s", plant.id(), plant.at())
        .isCloseTo(0, within(1e-9));
  }

  @Test
  void plantsAndCompanionsOfRows() {
    Map<String, Planting> plants = plants(Descriptions.read(Descriptions.starter()));
    assertAt(plants.get("A1"), 15, 12);
    // Two companions part the 15 ft between neighbours into thirds.
    assertAt(plants.get("A1-2.lavender-1"), 20, 12);
    assertAt(plants.get("A1-2.lavender-2"), 25, 12);
    assertAt(plants.get("B1"), 22, 32);
    assertAt(plants.get("B4"), 52, 32);
    assertAt(plants.get("B5"), 72, 32);
    // Around a plant the first stands left of the row's direction, the second opposite.
    assertAt(plants.get("B1.comfrey-1"), 22, 35);
    assertAt(plants.get("B1.comfrey-2"), 22, 29);
    assertAt(plants.get("gate rosemary"), 81, 34);
    assertThat(plants.get("B5").containerM3()).isZero();
    assertThat(plants.get("A4").keptSpreadM()).hasValueCloseTo(12 * 0.3048, within(1e-12));
  }

  @Test
  void companionsOfSeveralEntriesShareAGap() {
    String text =
        Descriptions.starter()
            .replace(
                "- {species: lavender, between: each, count: 2, container: 1 gal}",
                "- {species: lavender, between: [A1, A2], count: 2, container: 1 gal}\n"
                    + "      - {species: yarrow, between: [A2, A1], container: 1 gal}");
    Map<String, Planting> plants = plants(Descriptions.read(text));
    assertAt(plants.get("A1-2.lavender-1"), 18.75, 12);
    assertAt(plants.get("A1-2.lavender-2"), 22.5, 12);
    assertAt(plants.get("A1-2.yarrow-1"), 26.25, 12);
  }

  @Test
  void bareCoordinatesTakeTheUnitOfTheSite() {
    String text =
        Descriptions.starter()
            .replace("  boundary: ", "  coordinates_in: ft\n  boundary: ")
            .replaceAll("\\[(\\d+) ft, (\\d+) ft\\]", "[$1, $2]");
    assertThat(text).contains("[90, 60]");
    assertThat(Descriptions.read(text)).isEqualTo(Descriptions.read(Descriptions.starter()));
  }

  @Test
  void stockIsInTheUnitOfTheItem() {
    String text =
        Descriptions.starter()
            .replace("mulch.wood-chips: 1 yd3", "mulch.wood-chips: 1400 lb\n  emitter.pc-2: 7");
    Grove grove = Descriptions.read(text);
    double density = Descriptions.CATALOGUE.mulches().get("mulch.wood-chips").densityKgPerM3();
    assertThat(grove.stock().onHand().get("mulch.wood-chips"))
        .isCloseTo(1400 * 0.45359237 / density, within(1e-9));
    assertThat(grove.stock().onHand()).containsEntry("emitter.pc-2", 7.0);
    assertThat(grove.stock().prices().get("pipe.pe-16").packSize()).isCloseTo(30.48, within(1e-9));
  }

  @Test
  void gravityTankNeedsNoPressure() {
    String text =
        Descriptions.starter()
            .replace("kind: house tap", "kind: Gravity-Tank")
            .replaceFirst("static_pressure: 50 psi", "tank_level: 5 ft\n  tank_volume: 275 gal");
    Supply supply = Descriptions.read(text).supply();
    assertThat(supply.kind()).isEqualTo(Supply.SupplyKind.GRAVITY_TANK);
    assertThat(supply.tankLevelM()).hasValueCloseTo(1.524, within(1e-12));
  }

  @Test
  void boundaryFromAMap(@TempDir Path folder) throws Exception {
    Files.writeString(
        folder.resolve("land.geojson"),
        "{\"type\":\"Polygon\",\"coordinates\":[[[-121.5,38.5],[-121.4990,38.5],"
            + "[-121.4990,38.5006],[-121.5,38.5006],[-121.5,38.5]]]}");
    String text =
        Descriptions.starter()
            .replaceAll("(?m)^  (latitude|longitude|north):.*\n", "")
            .replaceAll(
                "(?s)  boundary:.*?\\[0 ft, 60 ft\\]\n", "  boundary_geojson: land.geojson\n");
    Path file = Files.writeString(folder.resolve("grove.yaml"), text);
    Grove grove = Descriptions.READER.read(file);
    assertThat(grove.site().latitudeDeg()).isEqualTo(38.5);
    assertThat(grove.site().longitudeDeg()).isEqualTo(-121.5);
    assertThat(grove.site().boundary()).hasSize(4);
    assertThat(grove.site().boundary().get(2).x()).isCloseTo(87.2, within(0.1));
    Files.writeString(folder.resolve("land.geojson"), "{}");
    assertThat(
            List.of(
                org.assertj.core.api.Assertions.catchThrowableOfType(
                        DescriptionException.class, () -> Descriptions.READER.read(file))
                    .problems()
                    .get(0)
                    .path()))
        .containsExactly("site.boundary_geojson");
  }

  @Test
  void faultsOfTheWeatherFileAreShownAtItsName() {
    String text =
        Descriptions.starter().replaceAll("(?s)  months:.*?\nsupply:", "  daily: w.csv\nsupply:");
    assertThat(Descriptions.problems(text))
        .singleElement()
        .satisfies(
            problem -> {
              assertThat(problem.path()).isEqualTo("climate.daily");
              assertThat(problem.message()).contains("w.csv:3:2: no daily weather here");
            });
  }
}
