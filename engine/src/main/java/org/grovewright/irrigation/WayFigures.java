package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Enters the figures of the ways to water that are shown, under {@code irrigation.way.KEY}. */
final class WayFigures {
  private static final String GOODS =
      "the sum over the goods of amount times price of one metre or piece";
  private static final String PRICES =
      "amounts counted on the design; your price, or the typical one of the catalogue";

  private final Catalogue catalogue;
  private final Costs costs;
  private final Rulebook rules;
  private final FigureBook book;

  WayFigures(Catalogue catalogue, Costs costs, Rulebook rules, FigureBook book) {
    this.catalogue = catalogue;
    this.costs = costs;
    this.rules = rules;
    this.book = book;
  }

  void enter(Candidate way, Alternative as, Candidate cheapest) {
    enterGoods(way, as);
    enterWork(as);
    enterWater(as);
    LifeCost cost = as.cost();
    book.enter(
        as.figureId("cash"),
        "Goods to be paid for: " + as.name(),
        cost.cash(),
        Kind.MONEY,
        Working.of(
            "pipe + fittings",
            "sum of its parts",
            new Input("pipe", cost.pipe(), Kind.MONEY, as.figureId("pipe")),
            new Input("fittings", cost.fittings(), Kind.MONEY, as.figureId("fittings"))));
    book.enter(
        as.figureId("cost"),
        "Cost over " + Math.round(costs.lifeYears()) + " years: " + as.name(),
        cost.total(),
        Kind.MONEY,
        Working.of(
            "pipe + fittings + work + water",
            "sum of its parts",
            new Input("pipe", cost.pipe(), Kind.MONEY, as.figureId("pipe")),
            new Input("fittings", cost.fittings(), Kind.MONEY, as.figureId("fittings")),
            new Input("work", cost.labour(), Kind.MONEY, as.figureId("labour")),
            new Input("water", cost.water(), Kind.MONEY, as.figureId("water"))));
    book.enter(
        as.figureId("extra"),
        "Cost beyond that of the cheapest that keeps the rules: " + as.name(),
        cost.total() - cheapest.cost().total(),
        Kind.MONEY,
        Working.of(
            "C - Cmin",
            "difference of the two costs",
            new Input("C", cost.total(), Kind.MONEY, as.figureId("cost")),
            new Input("Cmin", cheapest.cost().total(), Kind.MONEY, "cost of " + cheapest.name())));
    book.enter(
        as.figureId("uniformity"),
        "Emission uniformity of its least even zone: " + as.name(),
        as.emissionUniformity(),
        Kind.SHARE,
        Working.of(
            "the least of its zones",
            "Keller and Karmeli (1974), taken plant by plant",
            goodFrom(way)));
    book.enter(
        as.figureId("minutes"),
        "Run of all its zones on a day of the peak month: " + as.name(),
        as.peakRunS(),
        Kind.RUN_TIME,
        Working.of(
            "the greatest month's sum over zones of the greatest V / (e q),"
                + " V need, q flow of a plant",
            "one valve runs until the plant served worst has its need; needs of the third year",
            new Input("zones", as.zones(), Kind.COUNT, "counted on the design")));
  }

  private Input goodFrom(Candidate way) {
    ZoneResult least =
        way.zones().stream()
            .min(Comparator.comparingDouble(ZoneResult::emissionUniformity))
            .orElseThrow();
    return new Input(
        "good from",
        rules.evenness().of(least).good(),
        Kind.SHARE,
        "catalogue: constants, irrigation.good-uniformity");
  }

  private void enterGoods(Candidate way, Alternative as) {
    Predicate<String> isPipe = catalogue.pipes()::containsKey;
    enterMoney(way, as, "pipe", "Pipe and tubing: ", as.cost().pipe(), isPipe);
    enterMoney(
        way,
        as,
        "fittings",
        "Emitters, fittings and devices: ",
        as.cost().fittings(),
        isPipe.negate());
  }

  private void enterMoney(
      Candidate way,
      Alternative as,
      String what,
      String label,
      double money,
      Predicate<String> of) {
    List<Input> inputs = new ArrayList<>(way.goods().list().money(costs::unitPrice, of));
    book.enter(
        as.figureId(what),
        label + as.name(),
        money,
        Kind.MONEY,
        new Working(GOODS, inputs, PRICES));
  }

  private void enterWork(Alternative as) {
    book.enter(
        as.figureId("work"),
        "Work to build it: " + as.name(),
        as.cost().workS(),
        Kind.WORK_TIME,
        Working.of(
            "the sum of each task's set-up and its rate times its amount",
            "rates of the catalogue: tasks"));
    book.enter(
        as.figureId("labour"),
        "Value of the work: " + as.name(),
        as.cost().labour(),
        Kind.MONEY,
        Working.of(
            "hours x value of an hour",
            "a value of your time, not money that you pay out",
            new Input("work", as.cost().workS(), Kind.WORK_TIME, as.figureId("work")),
            new Input(
                "value of an hour", costs.labourPerS() * 3600, Kind.MONEY, costs.hourOrigin())));
  }

  private void enterWater(Alternative as) {
    book.enter(
        as.figureId("wasted-water"),
        "Water given in excess over its life: " + as.name(),
        as.cost().wastedM3(),
        Kind.WATER_VOLUME,
        Working.of(
            "years x sum over months and zones of"
                + " (greatest of V / (s q) x sum of q - sum of V) / e,"
                + " V need, q flow of a plant, s = 1 - 1.27 CV / sqrt(n)",
            "the plant served worst gets its need; s after Keller and Karmeli (1974), from"
                + " memory; needs of the third year",
            new Input("years", costs.lifeYears(), Kind.NUMBER, "catalogue: constants")));
    book.enter(
        as.figureId("water"),
        "Price of that water: " + as.name(),
        as.cost().water(),
        Kind.MONEY,
        Working.of(
            "volume x price of a cubic metre",
            "multiplication",
            new Input(
                "volume", as.cost().wastedM3(), Kind.WATER_VOLUME, as.figureId("wasted-water")),
            new Input(
                "price of a cubic metre",
                costs.waterPerM3(),
                Kind.MONEY,
                costs.waterPriceOrigin())));
  }
}
