package org.grovewright.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonPointer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.description.Starter;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class DescriptionEditorTest {
  private static DescriptionReader reader;
  private static DescriptionEditor editor;
  private static String demo;

  @BeforeAll
  static void read() throws Exception {
    reader = new DescriptionReader(CatalogueFiles.load().catalogue(), new WeatherOfDescription());
    editor = new DescriptionEditor(reader);
    demo = Files.readString(Path.of("../examples/demo.yaml"));
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

  private static String apply(String text, Operation... operations) {
    return editor.apply(text, List.of(operations));
  }

  @Test
  void movesAPlantAlongItsRowAndKeepsEveryName() {
    Planting before = plant(demo, "A2");
    // Row A runs from (4, 12) to (48, 12); past A3, which stands at 16.5 m.
    String moved = apply(demo, new Operation.MovePlant("A2", new Point(24.004, 13.1), false));
    assertThat(plant(moved, "A2").speciesKey()).isEqualTo(before.speciesKey());
    assertThat(plant(moved, "A2").at().x()).isCloseTo(24.0, Offset.offset(1e-9));
    assertThat(plant(moved, "A2").at().y()).isCloseTo(12, Offset.offset(1e-9));
    for (Planting other : grove(demo).plantings()) {
      boolean main = other.id().matches("[AB]\\d+");
      if (main && !other.id().equals("A2")) {
        assertThat(plant(moved, other.id())).isEqualTo(other);
      }
    }
    assertThat(moved).contains("# measured with a water level");
  }

  @Test
  void takesAPlantOutOfItsRowWithAllThatTheRowSaidOfIt() {
    Planting before = plant(demo, "A3");
    String moved = apply(demo, new Operation.MovePlant("A3", new Point(30, 16), true));
    Planting after = plant(moved, "A3");
    assertThat(after.at()).isEqualTo(new Point(30, 16));
    assertThat(after.rowId()).isEmpty();
    assertThat(after.plantedOn()).isEqualTo(before.plantedOn());
    assertThat(after.containerM3()).isEqualTo(before.containerM3());
    String again = apply(moved, new Operation.MovePlant("A3", new Point(31, 16.5), false));
    assertThat(plant(again, "A3").at()).isEqualTo(new Point(31, 16.5));
  }

  @Test
  void addsAndRemovesPlants() {
    int before = grove(demo).plantings().size();
    String added =
        apply(
            demo,
            new Operation.AddPlant(
                "fig", new Point(46, 12), Optional.of("A"), Map.of("container", "10 L")),
            new Operation.AddPlant(
                "fig",
                new Point(30, 16),
                Optional.empty(),
                Map.of("planted", "2027-04-01", "container", "10 L")));
    assertThat(plant(added, "A7").at().x()).isCloseTo(46, Offset.offset(1e-9));
    assertThat(plant(added, "fig-1").at()).isEqualTo(new Point(30, 16));
    String removed =
        apply(added, new Operation.RemovePlant("A7"), new Operation.RemovePlant("fig-1"));
    assertThat(grove(removed).plantings()).hasSize(before);
    String fewer = apply(demo, new Operation.RemovePlant("A1"));
    assertThat(plant(fewer, "A2")).isEqualTo(plant(demo, "A2"));
  }

  @Test
  void partsAnEntryForSeveralPlants() {
    String several =
        demo.replaceFirst(
            "- \\{species: mandarin.*\n",
            "- {species: mandarin, first: 10 m, every: 1.5 m, count: 3, kept_spread: 1 m}\n");
    Grove before = grove(several);
    Planting middle = plant(several, "A3");
    String moved = apply(several, new Operation.MovePlant("A3", new Point(15.9, 12), false));
    assertThat(plant(moved, "A3").at().x()).isCloseTo(15.9, Offset.offset(1e-9));
    assertThat(plant(moved, "A3").keptSpreadM()).isEqualTo(middle.keptSpreadM());
    assertThat(grove(moved).plantings()).hasSameSizeAs(before.plantings());
    assertThat(plant(moved, "A4")).isEqualTo(plant(several, "A4"));
  }

  @Test
  void writesInTheOwnersUnits() throws Exception {
    String us = Files.readString(Path.of("../examples/us-gravity.yaml"));
    String moved =
        apply(us, new Operation.MovePlant("upper-1", new Point(20 * 0.3048, 50 * 0.3048), false));
    assertThat(moved).contains("at: 0 ft");
  }

  @Test
  void saysWhyACompanionIsNotMoved() {
    assertThatThrownBy(
            () -> apply(demo, new Operation.MovePlant("A1-2.comfrey-1", new Point(1, 1), false)))
        .isInstanceOf(EditException.class)
        .hasMessageContaining("companions of its row");
    assertThatThrownBy(() -> apply(demo, new Operation.RemovePlant("nobody")))
        .hasMessage("There is no plant 'nobody'.");
  }

  @Test
  void saysOfAPlantWhatWasMeasuredOfItAloneOrWhyNot() {
    Map<String, Object> size = Map.of("measured_spread", "0.6 m", "measured_on", "2027-09-01");
    String alone = "  - {species: lemongrass, between: [A1, A2], count: 1, container: 2 L}";
    String one =
        demo.replace("  - {species: lemongrass, between: each, count: 1, container: 2 L}", alone);
    assertThat(one).isNotEqualTo(demo);
    String companion = apply(one, new Operation.SetPlant("A1-2.lemongrass-1", size, List.of()));
    assertThat(plant(companion, "A1-2.lemongrass-1").measured().spreadM()).hasValue(0.6);
    assertThat(grove(companion).plantings()).filteredOn(p -> p.measured().any()).hasSize(1);

    String series =
        demo.replace(
                "      - {species: mango, at: 28.5 m, kept_spread: 4.5 m, kept_height: 4.5 m}\n",
                "")
            .replace(
                "      - {species: pomegranate, at: 35 m, kept_spread: 3 m, kept_height: 3 m}",
                "      - {species: pomegranate, first: 28 m, every: 4 m, count: 3}");
    List<String> names = grove(series).plantings().stream().map(Planting::id).toList();
    String member = apply(series, new Operation.SetPlant("B6", size, List.of()));
    assertThat(plant(member, "B6").measured().spreadM()).hasValue(0.6);
    assertThat(grove(member).plantings()).filteredOn(p -> p.measured().any()).hasSize(1);
    assertThat(grove(member).plantings().stream().map(Planting::id)).containsAll(names);

    assertThatThrownBy(() -> apply(demo, new Operation.SetPlant("A1-2.comfrey-1", size, List.of())))
        .isInstanceOf(EditException.class)
        .hasMessage(
            "A1-2.comfrey-1 is one of 10 companions that row A describes together, so what is said"
                + " of one is said of all of them; write it at the companions of that row in the"
                + " description, or describe A1-2.comfrey-1 by itself under plants.");
  }

  @Test
  void keepsADraftThatCannotBePlannedYet() {
    String draft =
        apply(demo, new Operation.SetField(JsonPointer.valueOf("/soil/texture"), "unknown"));
    assertThat(draft).isEqualTo(demo.replace("texture: clay-loam", "texture: unknown"));
    assertThatThrownBy(() -> apply(draft, new Operation.RemovePlant("A1")))
        .hasMessageContaining("Put the mistakes in the description right first");
  }

  @Test
  void readsNoFileForATextFromElsewhere() {
    String weather =
        demo.replaceFirst("(?s)  months:.*?\n\nsupply", "  daily: /etc/hosts\n\nsupply");
    assertThatThrownBy(() -> reader.describe(weather, "test"))
        .hasMessageContaining("climate.daily: names a file, which cannot be read here");
    String land = demo.replaceFirst("  boundary: .*\n", "  boundary_geojson: /etc/hosts\n");
    assertThatThrownBy(() -> reader.describe(land, "test"))
        .hasMessageContaining("site.boundary_geojson: names a file, which cannot be read here");
  }

  @Test
  void editsTheStarterToo() {
    String text = Starter.text();
    Planting any = grove(text).plantings().get(0);
    assertThat(apply(text, new Operation.MovePlant(any.id(), any.at(), false)))
        .contains(text.lines().findFirst().orElseThrow());
  }
}
