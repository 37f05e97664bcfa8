package org.grovewright.model;

import java.util.Map;
import java.util.OptionalDouble;

/**
 * What the owner has and what things cost.
 *
 * @param onHand quantity in the shed by catalogue item key, in the SI unit of the item's measure
 * @param prices the owner's own prices by catalogue item key; they take the place of the
 *     catalogue's typical price
 * @param currency ISO 4217 code of all prices of this plan
 * @param typicalTimes money of the plan's currency for one of the catalogue's, by which typical
 *     prices are turned into the plan's; empty leaves them in their own
 */
public record Stock(
    Map<String, Double> onHand,
    Map<String, Price> prices,
    String currency,
    OptionalDouble typicalTimes) {
  /** Stock of an owner who says no exchange rate. */
  public Stock(Map<String, Double> onHand, Map<String, Price> prices, String currency) {
    this(onHand, prices, currency, OptionalDouble.empty());
  }

  /** Copies the maps. */
  public Stock {
    onHand = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(onHand));
    prices = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(prices));
  }

  /**
   * What one pack costs.
   *
   * @param packSize content of the pack in the SI unit of the item's measure
   * @param amount money
   */
  public record Price(double packSize, double amount) {}
}
