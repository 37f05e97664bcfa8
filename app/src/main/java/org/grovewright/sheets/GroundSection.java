package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Caution;
import org.grovewright.ground.PlantGround;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.FigureBook;

/** What to dig and fill: the hole of each plant, the soil that moves, amendments and mulch. */
final class GroundSection {
  private final Plan plan;
  private final Workings workings;

  GroundSection(Plan plan, Workings workings) {
    this.plan = plan;
    this.workings = workings;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    if (!plan.ground().plants().isEmpty()) {
      blocks.add(new Block.Heading("Holes"));
      blocks.add(
          Block.Paragraph.of(
              "Dig each hole no deeper than the root ball is high, so that the plant does not sink,"
                  + " and wider than the ball. Backfill is what goes back around the ball."));
      blocks.add(holes());
    }
    blocks.add(totals());
    amendmentCautions().forEach(blocks::add);
    return blocks;
  }

  private Block holes() {
    // Plants with like holes share a row, which shows the working of the first of them.
    Map<List<String>, List<Cell>> first = new LinkedHashMap<>();
    Map<List<String>, List<String>> names = new LinkedHashMap<>();
    for (PlantGround plant : plan.ground().plants()) {
      String id = "ground.plant." + FigureBook.slug(plant.plantId()) + ".";
      List<Cell> cells =
          List.of(
              workings.cell(id + "hole-width"),
              workings.cell(id + "hole-depth"),
              workings.cell(id + "raise"),
              workings.cell(id + "backfill"),
              workings.cell(id + "mix-bought"),
              workings.cell(id + "ball-mass"));
      List<String> texts = cells.stream().map(Cell::text).toList();
      first.putIfAbsent(texts, cells);
      names.computeIfAbsent(texts, t -> new ArrayList<>()).add(plant.plantId());
    }
    List<List<Cell>> rows = new ArrayList<>();
    first.forEach(
        (texts, cells) -> {
          List<Cell> row = new ArrayList<>();
          row.add(Cell.of(String.join(", ", names.get(texts))));
          row.add(Cell.of(String.valueOf(names.get(texts).size())));
          row.addAll(cells);
          rows.add(row);
        });
    return new Block.Table(
        "Holes, plants with like ones together",
        List.of(
            Block.Column.words("Plants"),
            Block.Column.numbers("Number"),
            Block.Column.numbers("Width at the top"),
            Block.Column.numbers("Depth"),
            Block.Column.numbers("Set above the ground"),
            Block.Column.numbers("Backfill"),
            Block.Column.numbers("Bought mix in it"),
            Block.Column.numbers("Ball weighs")),
        rows);
  }

  private Block totals() {
    List<List<Cell>> rows = new ArrayList<>();
    total(rows, "Volume of all holes", "hole-volume");
    total(rows, "Heap of dug soil, loose", "dug-loose");
    total(rows, "Backfill about all root balls", "backfill");
    total(rows, "Bought mix as delivered", "mix-bought");
    total(rows, "Bought mix, by weight", "mix-mass");
    total(rows, "Barrow loads of bought mix", "mix-barrows");
    plan.ground()
        .amendmentsKg()
        .keySet()
        .forEach(
            key ->
                total(
                    rows,
                    plan.catalogue().amendments().get(key).name() + " in the backfill",
                    "amendment." + FigureBook.slug(key)));
    total(rows, "Dug soil left over, loose", "surplus");
    total(rows, "Barrow loads of soil left over", "surplus-barrows");
    total(rows, "Ground to mulch", "mulch-area");
    total(rows, "Mulch as delivered", "mulch-delivered");
    total(rows, "Barrow loads of mulch", "mulch-barrows");
    total(rows, "Trees to stake", "staked");
    total(rows, "Fertiliser for the first year", "fertiliser-year-1");
    return new Block.Table(
        "All together",
        List.of(Block.Column.words("What"), Block.Column.numbers("How much")),
        rows);
  }

  private void total(List<List<Cell>> rows, String name, String what) {
    String id = "ground.total." + what;
    if (workings.has(id)) {
      rows.add(List.of(Cell.of(name), workings.cell(id)));
    }
  }

  private List<Block> amendmentCautions() {
    Set<String> keys = new LinkedHashSet<>(plan.ground().amendmentsKg().keySet());
    plan.ground().fertiliserKey().ifPresent(keys::add);
    List<Block> blocks = new ArrayList<>();
    for (String key : keys) {
      Amendment amendment = plan.catalogue().amendments().get(key);
      amendment
          .caution()
          .map(plan.cautions()::get)
          .ifPresent(caution -> blocks.add(block(amendment, caution)));
    }
    return blocks;
  }

  private static Block block(Amendment amendment, Caution caution) {
    return new Block.Caution("", caution.title() + " (" + amendment.name() + ")", caution.text());
  }
}
