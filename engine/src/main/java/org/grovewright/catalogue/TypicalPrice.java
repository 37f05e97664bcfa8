package org.grovewright.catalogue;

import org.grovewright.quantity.Kind;

/**
 * A typical price, to be replaced by the owner's own where it is known.
 *
 * @param key key of the item
 * @param packSize content of the usual pack in the SI unit of the kind
 * @param kind what the item is measured in: LENGTH, BULK_VOLUME, MASS, COUNT or WATER_VOLUME
 * @param amount money for a pack in the catalogue's currency
 * @param currency ISO 4217 code
 * @param source where the price comes from
 */
public record TypicalPrice(
    String key, double packSize, Kind kind, double amount, String currency, String source) {}
