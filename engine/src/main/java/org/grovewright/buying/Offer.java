package org.grovewright.buying;

import java.util.OptionalDouble;
import org.grovewright.buying.ShoppingLine.PriceOrigin;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TypicalPrice;
import org.grovewright.model.Stock;
import org.grovewright.quantity.Kind;

/**
 * How an item is sold.
 *
 * @param kind what the item is measured in
 * @param packSize content of a pack in the SI unit of the kind; empty if unknown
 * @param packPrice price of a pack; empty if unknown
 * @param currency ISO 4217 code of the price
 * @param origin whose price it is
 * @param source where pack and price are written
 */
record Offer(
    Kind kind,
    OptionalDouble packSize,
    OptionalDouble packPrice,
    String currency,
    PriceOrigin origin,
    String source) {

  /**
   * The owner's own price where there is one, else the catalogue's typical price, turned into the
   * plan's currency where the owner gives a rate.
   *
   * @param asked measure in which the item is asked for, used where neither says
   */
  static Offer of(String key, Kind asked, Stock stock, Catalogue catalogue) {
    TypicalPrice typical = catalogue.prices().get(key);
    Kind kind = typical == null ? asked : typical.kind();
    Stock.Price own = stock.prices().get(key);
    if (own != null) {
      return new Offer(
          kind,
          OptionalDouble.of(own.packSize()),
          OptionalDouble.of(own.amount()),
          stock.currency(),
          PriceOrigin.OWNER,
          "description: stock prices");
    }
    if (typical == null) {
      return new Offer(
          kind,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          stock.currency(),
          PriceOrigin.UNKNOWN,
          "assumed: any amount can be bought");
    }
    boolean same = typical.currency().equals(stock.currency());
    if (!same && stock.typicalTimes().isPresent()) {
      double times = stock.typicalTimes().getAsDouble();
      return new Offer(
          kind,
          OptionalDouble.of(typical.packSize()),
          OptionalDouble.of(typical.amount() * times),
          stock.currency(),
          PriceOrigin.TYPICAL,
          "catalogue: prices, " + key + ", times the description's " + times);
    }
    return new Offer(
        kind,
        OptionalDouble.of(typical.packSize()),
        OptionalDouble.of(typical.amount()),
        typical.currency(),
        same ? PriceOrigin.TYPICAL : PriceOrigin.TYPICAL_OTHER_CURRENCY,
        "catalogue: prices, " + key);
  }

  /** The same goods without a usable pack or price. */
  Offer unusable(Kind asked, String planCurrency) {
    return new Offer(
        asked,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        planCurrency,
        PriceOrigin.UNKNOWN,
        "assumed: any amount can be bought");
  }
}
