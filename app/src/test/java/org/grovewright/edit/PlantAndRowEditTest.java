package org.grovewright.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class PlantAndRowEditTest {
  private static DescriptionReader reader;
  private static String demo;

  @BeforeAll
  static void read() throws IOException {
    reader = new DescriptionReader(CatalogueFiles.load().catalogue(), new WeatherOfDescription());
    demo = Files.readString(Path.of("../examples/demo.yaml"));
  }

  private static String apply(String text, Operation... operations) {
    return new DescriptionEditor(reader).apply(text, List.of(operations));
  }

  private static Grove grove(String text) {
    return reader.describe(text, "test").grove();
  }

  private static Planting plant(String text, String id) {
    return grove(text).plantings().stream()
        .filter(p -> p.id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aPlantGetsFieldsAndLosesOthersAndStaysWhereItIs() {
    String changed =
        apply(
            demo,
            new Operation.SetPlant(
                "A2",
                Map.of("species", "kumquat", "planted", "2027-04-10"),
                List.of("cultivar", "kept_height", "measured_spread")));
    Planting before = plant(demo, "A2");
    Planting after = plant(changed, "A2");
    assertThat(after.speciesKey()).isEqualTo("kumquat");
    assertThat(after.plantedOn()).hasToString("2027-04-10");
    assertThat(after.cultivar()).isEmpty();
    assertThat(after.keptHeightM()).isEmpty();
    assertThat(after.keptSpreadM()).isEqualTo(before.keptSpreadM());
    assertThat(after.at()).isEqualTo(before.at());
    assertThat(grove(changed).plantings()).hasSameSizeAs(grove(demo).plantings());
    assertThat(changed).contains("# measured with a water level");
  }

  @Test
  void aCompanionOfARowIsChangedWithItsRowOnly() {
    Operation change =
        new Operation.SetPlant("A1-2.comfrey-1", Map.of("cultivar", "Any"), List.of());
    assertThatThrownBy(() -> apply(demo, change))
        .isInstanceOf(EditException.class)
        .hasMessageContaining("companions");
  }

  @Test
  void aRowGetsNewEndsAndItsPlantsKeepTheirDistances() {
    List<Point> line = List.of(new Point(4, 14), new Point(48, 16.2));
    String changed = apply(demo, new Operation.MoveRow("A", line));
    assertThat(grove(changed).rows().get(0).line()).isEqualTo(line);
    assertThat(plant(changed, "A1").at().distanceTo(line.get(0))).isCloseTo(3, Offset.offset(1e-9));
    assertThat(changed).contains("from: [4 m, 14 m]");
  }

  @Test
  void aRowMayGetABendAndKeepsIt() {
    List<Point> bent = List.of(new Point(4, 12), new Point(26, 14), new Point(48, 12));
    String changed = apply(demo, new Operation.MoveRow("A", bent));
    assertThat(grove(changed).rows().get(0).line()).isEqualTo(bent);
    List<Point> straight = List.of(new Point(4, 12), new Point(48, 12));
    String again = apply(changed, new Operation.MoveRow("A", straight));
    assertThat(grove(again).rows().get(0).line()).isEqualTo(straight);
  }

  @Test
  void anUnknownRowIsNamed() {
    Operation move = new Operation.MoveRow("Z", List.of(new Point(0, 0), new Point(1, 1)));
    assertThatThrownBy(() -> apply(demo, move)).hasMessage("There is no row 'Z'.");
  }
}
