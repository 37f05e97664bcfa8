package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Caution;
import org.grovewright.catalogue.Species;
import org.grovewright.layout.CrownSizes;
import org.grovewright.model.Planting;
import org.grovewright.model.Row;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Kind;

/** What goes where: the map and the same places in words. */
final class LayoutSection {
  private final Plan plan;
  private final Workings workings;
  private final ReaderUnits units;
  private final MapScene scene;

  LayoutSection(Plan plan, Workings workings, ReaderUnits units) {
    this.plan = plan;
    this.workings = workings;
    this.units = units;
    this.scene = MapOfPlan.scene(plan, units.language());
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.Paragraph.of(
            "The map is drawn to scale. A crown is the ground that a plant's branches cover; choose"
                + " the time to see how they grow together."));
    blocks.add(new Block.Map(MapSvg.element(scene, units.system()), scene.stages()));
    blocks.add(plants("Main plants and their places", true));
    long others = scene.plants().stream().filter(mark -> !mark.main()).count();
    if (others > 0) {
      blocks.add(
          new Block.Fold(
              "Where each companion goes (" + others + ")",
              false,
              List.of(plants("Companions and their places", false))));
    }
    plantCautions().forEach(blocks::add);
    return blocks;
  }

  private Block plants(String caption, boolean main) {
    List<List<Cell>> rows = new ArrayList<>();
    for (int i = 0; i < plan.grove().plantings().size(); i++) {
      if (scene.plants().get(i).main() != main) {
        continue;
      }
      Planting planting = plan.grove().plantings().get(i);
      Species species = plan.catalogue().species().get(planting.speciesKey());
      rows.add(
          List.of(
              Cell.of(planting.id()),
              Cell.of(
                  units.language().say(species.name())
                      + planting
                          .cultivar()
                          .map(cultivar -> " \u2018" + cultivar + "\u2019")
                          .orElse("")
                      + " ("
                      + species.latin()
                      + ")"),
              Cell.of(place(planting)),
              Cell.of(Words.shortDate(planting.plantedOn())),
              workings.cell(CrownSizes.firstId(planting.id())),
              workings.cell(CrownSizes.laterId(planting.id())),
              workings.cell(CrownSizes.fullId(planting.id()))));
    }
    return new Block.Table(
        caption,
        List.of(
            Block.Column.words("Plant"),
            Block.Column.words("Kind"),
            Block.Column.words("Place"),
            Block.Column.words("Planted"),
            Block.Column.numbers("Crown when planted"),
            Block.Column.numbers("after three years"),
            Block.Column.numbers("full-grown")),
        rows);
  }

  private String place(Planting planting) {
    return planting
        .rowId()
        .flatMap(id -> plan.grove().rows().stream().filter(row -> row.id().equals(id)).findFirst())
        .map(row -> alongRow(row, planting))
        .orElseGet(
            () ->
                units.text(planting.at().x(), Kind.LENGTH)
                    + " right, "
                    + units.text(planting.at().y(), Kind.LENGTH)
                    + " up");
  }

  private String alongRow(Row row, Planting planting) {
    double station = row.stationOf(planting.at());
    double aside = row.at(station).distanceTo(planting.at());
    String text = "row " + row.id() + " at " + units.text(station, Kind.LENGTH);
    return aside < 0.01 ? text : text + ", " + units.text(aside, Kind.LENGTH) + " aside";
  }

  /**
   * Warnings about the plants themselves, such as poisonous parts, with the plants they concern.
   */
  private List<Block> plantCautions() {
    Map<String, List<String>> names = new LinkedHashMap<>();
    for (Planting planting : plan.grove().plantings()) {
      Species species = plan.catalogue().species().get(planting.speciesKey());
      species
          .caution()
          .ifPresent(
              key -> {
                List<String> known = names.computeIfAbsent(key, k -> new ArrayList<>());
                if (!known.contains(species.name())) {
                  known.add(species.name());
                }
              });
    }
    List<Block> blocks = new ArrayList<>();
    names.forEach(
        (key, kinds) -> {
          Caution caution = plan.cautions().get(key);
          if (caution != null) {
            blocks.add(
                new Block.Caution(
                    "", caution.title() + " (" + Words.and(kinds) + ")", caution.text()));
          }
        });
    return blocks;
  }
}
