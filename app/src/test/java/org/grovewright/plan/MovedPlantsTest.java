package org.grovewright.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.description.OpenDescription;
import org.grovewright.layout.LayoutCheck;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is found quickly while a plant is moved must be what the whole plan would say. */
class MovedPlantsTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();

  private static OpenDescription open(String example) throws IOException {
    String text = Files.readString(Path.of("..", "examples", example));
    return new DescriptionReader(
            CATALOGUE,
            (file, windHeight, source) -> {
              throw new AssertionError("no files");
            })
        .open(text, example);
  }

  @ParameterizedTest
  @ValueSource(strings = {"demo.yaml", "us-gravity.yaml"})
  void costAndConflictsAreThoseOfAWholePlanWhereverAPlantIsMoved(String example)
      throws IOException {
    OpenDescription open = open(example);
    Grove grove = open.described().grove();
    Plan plan = Planner.plan(grove, CATALOGUE);
    MovedPlants moved = new MovedPlants(plan);
    assertThat(moved.cost(grove)).isEqualTo(plan.shopping().total());
    List<Planting> movable =
        grove.plantings().stream()
            .filter(
                plant -> !open.described().plantEntries().get(plant.id()).contains("].companions["))
            .toList();
    Random random = new Random(20270302);
    boolean dearer = false;
    for (int step = 0; step < 12; step++) {
      Planting plant = movable.get(random.nextInt(movable.size()));
      // A drag of some steps comes back to places near those before, as a memory must notice.
      double far = step % 3 == 0 ? 4 : 0.5;
      Point to =
          new Point(
              plant.at().x() + far * (random.nextDouble() - 0.5),
              plant.at().y() + far * (random.nextDouble() - 0.5));
      Grove there = open.moved(Map.of(plant.id(), to));
      Plan whole = Planner.plan(there, CATALOGUE);
      assertThat(moved.cost(there))
          .as(plant.id() + " to " + to)
          .isEqualTo(whole.shopping().total());
      assertThat(LayoutCheck.conflicts(there, CATALOGUE)).isEqualTo(whole.layout().conflicts());
      dearer |= whole.shopping().total() != plan.shopping().total();
    }
    assertThat(dearer).as("some move changes the cost").isTrue();
  }
}
