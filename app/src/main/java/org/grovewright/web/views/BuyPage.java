package org.grovewright.web.views;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.buying.CuttingPlan;
import org.grovewright.buying.ShoppingLine;
import org.grovewright.buying.ShoppingLine.PriceOrigin;
import org.grovewright.demand.Requirement;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Kind;
import org.grovewright.sheets.Shelf;

/**
 * What do I buy?
 *
 * @param total what it costs
 * @param complete whether the total holds every item
 * @param guessed whether any price is only the trade's usual one
 * @param shelves the items by where they are bought
 * @param remarks remarks on prices and goods
 */
public record BuyPage(
    Shown total, boolean complete, boolean guessed, List<ShelfOf> shelves, List<Remark> remarks) {
  /**
   * Items bought in one sort of place.
   *
   * @param key stable name
   * @param items the items
   */
  public record ShelfOf(String key, List<Item> items) {}

  /**
   * One item.
   *
   * @param key catalogue key
   * @param name its name
   * @param packs packs to buy
   * @param pack content of a pack, empty if no pack is known or it is a single piece
   * @param needed what the plan needs without waste
   * @param withWaste the same with waste and spares
   * @param onHand what lies in the shed, empty for none
   * @param cost what it costs, empty text if not known
   * @param guess whether the price is only the trade's usual one
   * @param leftOver what remains
   * @param uses what it is for
   * @param cuts for pipe, what is cut from each coil or length
   */
  public record Item(
      String key,
      String name,
      Shown packs,
      String pack,
      Shown needed,
      Shown withWaste,
      String onHand,
      Shown cost,
      boolean guess,
      Shown leftOver,
      List<String> uses,
      List<Coil> cuts) {}

  /**
   * A coil or length and what is cut from it.
   *
   * @param title what it is, e.g. bought 1
   * @param length its length
   * @param pieces the pieces
   * @param left what is left
   */
  public record Coil(String title, String length, List<String> pieces, String left) {}

  /** The page of a plan. */
  public static BuyPage of(Plan plan, Voice voice) {
    Map<Shelf, List<Item>> shelves = new LinkedHashMap<>();
    boolean guessed = false;
    for (ShoppingLine line : plan.shopping().lines()) {
      Item item = item(plan, line, voice);
      guessed |= item.guess();
      shelves.computeIfAbsent(Shelf.of(line, plan.catalogue()), s -> new ArrayList<>()).add(item);
    }
    List<ShelfOf> all = new ArrayList<>();
    shelves.forEach((shelf, items) -> all.add(new ShelfOf(shelf.key(), items)));
    return new BuyPage(
        voice.figure(plan, "buy.total.cost"),
        plan.shopping().complete(),
        guessed,
        all,
        plan.shopping().findings().stream().map(finding -> voice.remark(plan, finding)).toList());
  }

  private static Item item(Plan plan, ShoppingLine line, Voice voice) {
    String id = line.figurePrefix();
    boolean packed = line.packSize().isPresent();
    boolean single = line.kind() == Kind.COUNT && line.packSize().orElse(0) == 1;
    return new Item(
        line.itemKey(),
        voice.say(line.name()),
        voice.shown(plan, id + ".packs", line.packs(), packed ? Kind.COUNT : line.kind()),
        packed && !single ? voice.units().text(line.packSize().getAsDouble(), line.kind()) : "",
        voice.shown(plan, id + ".net", line.net(), line.kind()),
        voice.shown(plan, id + ".with-waste", line.withWaste(), line.kind()),
        line.onHand() == 0 ? "" : voice.units().text(line.onHand(), line.kind()),
        cost(plan, line, voice),
        line.priceOrigin() != PriceOrigin.OWNER && line.cost().orElse(0) > 0,
        voice.shown(plan, id + ".left-over", line.leftOver(), line.kind()),
        line.uses().stream().map(Requirement::purpose).distinct().map(voice::say).toList(),
        line.cutting().map(c -> coils(c, voice)).orElse(List.of()));
  }

  private static Shown cost(Plan plan, ShoppingLine line, Voice voice) {
    if (line.cost().isEmpty()) {
      return Shown.NONE;
    }
    Voice own =
        Voice.of(voice.language().tag(), plan.grove().preferences().units(), line.currency());
    return voice.shown(
        plan,
        line.figurePrefix() + ".cost",
        own.units().text(line.cost().getAsDouble(), Kind.MONEY));
  }

  private static List<Coil> coils(CuttingPlan cutting, Voice voice) {
    List<Coil> coils = new ArrayList<>();
    for (CuttingPlan.Length length : cutting.lengths()) {
      List<String> pieces = new ArrayList<>();
      for (CuttingPlan.Cut cut : length.cuts()) {
        String size = voice.units().text(cut.lengthM(), Kind.LENGTH);
        String label = voice.say(cut.label());
        pieces.add(
            cut.parts() == 1
                ? voice.text("buy.piece", size, label)
                : voice.text("buy.piece-part", size, label, cut.part(), cut.parts()));
      }
      coils.add(
          new Coil(
              voice.text(length.onHand() ? "buy.coil-on-hand" : "buy.coil", coils.size() + 1),
              voice.units().text(length.lengthM(), Kind.LENGTH),
              pieces,
              voice.units().text(length.offCutM(), Kind.LENGTH)));
    }
    return coils;
  }
}
