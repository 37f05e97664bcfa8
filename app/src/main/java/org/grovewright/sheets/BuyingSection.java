package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.buying.CuttingPlan;
import org.grovewright.buying.ShoppingLine;
import org.grovewright.buying.ShoppingLine.PriceOrigin;
import org.grovewright.buying.ShoppingList;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.demand.Requirement;
import org.grovewright.quantity.Kind;
import org.grovewright.texts.Language;

/** What to buy: packs, cost, and which piece of pipe is cut from which coil. */
final class BuyingSection {
  private final ShoppingList list;
  private final Catalogue catalogue;
  private final Workings workings;
  private final ReaderUnits units;

  BuyingSection(ShoppingList list, Catalogue catalogue, Workings workings, ReaderUnits units) {
    this.list = list;
    this.catalogue = catalogue;
    this.workings = workings;
    this.units = units;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Heading("Shopping list"));
    blocks.add(
        new Block.Paragraph(
            List.of(
                Cell.of(
                    list.complete()
                        ? "Everything together costs about "
                        : "What has a known price costs together about "),
                workings.cell("buy.total.cost"),
                Cell.of(
                    ". The amounts include an allowance for waste and spares, less what you"
                        + " have on hand, rounded up to whole packs. A price marked \u2248"
                        + " is typical of the trade and only a guide: put your own in the grove"
                        + " file."))));
    Map<String, List<List<Cell>>> byShelf = new LinkedHashMap<>();
    for (ShoppingLine line : list.lines()) {
      byShelf
          .computeIfAbsent(Shelf.of(line, catalogue).title(), s -> new ArrayList<>())
          .add(row(line));
    }
    byShelf.forEach(
        (shelf, rows) ->
            blocks.add(
                new Block.Table(
                    shelf,
                    List.of(
                        Block.Column.words("Item"),
                        Block.Column.numbers("Needed"),
                        Block.Column.numbers("With waste"),
                        Block.Column.numbers("On hand"),
                        Block.Column.numbers("Pack"),
                        Block.Column.numbers("Packs to buy"),
                        Block.Column.numbers("Cost"),
                        Block.Column.numbers("Left over"),
                        Block.Column.words("For")),
                    rows)));
    for (ShoppingLine line : list.lines()) {
      line.cutting()
          .ifPresent(
              cutting ->
                  blocks.add(
                      new Block.Fold(
                          "How to cut: " + line.name(), false, List.of(cuts(line, cutting)))));
    }
    return blocks;
  }

  private List<Cell> row(ShoppingLine line) {
    String id = line.figurePrefix();
    return List.of(
        Cell.of(line.name()),
        workings.cell(id + ".net", units.text(line.net(), line.kind())),
        workings.cell(id + ".with-waste", units.text(line.withWaste(), line.kind())),
        line.onHand() == 0 ? Cell.NONE : Cell.of(units.text(line.onHand(), line.kind())),
        line.packSize().isPresent()
            ? Cell.of(units.text(line.packSize().getAsDouble(), line.kind()))
            : Cell.NONE,
        workings.cell(
            id + ".packs",
            line.packSize().isPresent()
                ? Decimals.fixed(line.packs(), 0)
                : units.text(line.packs(), line.kind())),
        cost(line),
        workings.cell(id + ".left-over", units.text(line.leftOver(), line.kind())),
        Cell.of(purposes(line, units.language())));
  }

  private Cell cost(ShoppingLine line) {
    if (line.cost().isEmpty()) {
      return Cell.of("not known");
    }
    double cost = line.cost().getAsDouble();
    String money =
        units
            .language()
            .text(
                "unit.money", line.currency(), units.language().decimals(Decimals.fixed(cost, 2)));
    boolean guess = line.priceOrigin() != PriceOrigin.OWNER && cost > 0;
    return workings.cell(line.figurePrefix() + ".cost", guess ? "\u2248\u00a0" + money : money);
  }

  static String purposes(ShoppingLine line, Language language) {
    return String.join(
        "; ",
        line.uses().stream().map(Requirement::purpose).distinct().map(language::say).toList());
  }

  private Block cuts(ShoppingLine line, CuttingPlan cutting) {
    List<List<Cell>> rows = new ArrayList<>();
    int number = 0;
    for (CuttingPlan.Length length : cutting.lengths()) {
      number++;
      List<String> pieces = new ArrayList<>();
      for (CuttingPlan.Cut cut : length.cuts()) {
        String part = cut.parts() == 1 ? "" : " (part " + cut.part() + " of " + cut.parts() + ")";
        pieces.add(
            units
                .language()
                .say(units.text(cut.lengthM(), Kind.LENGTH) + " for " + cut.label() + part));
      }
      rows.add(
          List.of(
              Cell.of((length.onHand() ? "On hand " : "Bought ") + number),
              Cell.of(units.text(length.lengthM(), Kind.LENGTH)),
              Cell.of(pieces.isEmpty() ? "nothing" : String.join("; ", pieces)),
              Cell.of(units.text(length.offCutM(), Kind.LENGTH))));
    }
    return new Block.Table(
        "Cut list: " + line.name(),
        List.of(
            Block.Column.words("Coil or length"),
            Block.Column.numbers("Length"),
            Block.Column.words("Cut from it"),
            Block.Column.numbers("Left")),
        rows);
  }
}
