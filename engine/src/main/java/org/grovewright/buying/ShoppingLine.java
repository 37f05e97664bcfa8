package org.grovewright.buying;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.demand.Requirement;
import org.grovewright.quantity.Kind;

/**
 * One item to buy. Amounts are in the SI unit of the kind.
 *
 * @param itemKey catalogue key
 * @param name name in plain words
 * @param kind what it is measured in
 * @param net amount needed, without waste
 * @param withWaste amount needed with the allowance for waste or spares
 * @param onHand what lies in the shed
 * @param packSize content of a pack; empty if no pack is known
 * @param packs packs to buy; without a known pack, the amount itself
 * @param leftOver what remains of the packs and of what was on hand
 * @param packPrice price of a pack in the currency of the line, if known
 * @param cost price of all packs; empty if the price is unknown and something must be bought
 * @param currency ISO 4217 code of the price
 * @param priceOrigin whose price it is
 * @param uses what it is needed for
 * @param cutting for pipe in packs, which piece is cut from which coil or length
 */
public record ShoppingLine(
    String itemKey,
    String name,
    Kind kind,
    double net,
    double withWaste,
    double onHand,
    OptionalDouble packSize,
    double packs,
    double leftOver,
    OptionalDouble packPrice,
    OptionalDouble cost,
    String currency,
    PriceOrigin priceOrigin,
    List<Requirement> uses,
    Optional<CuttingPlan> cutting) {
  /** Copies the uses. */
  public ShoppingLine {
    uses = List.copyOf(uses);
  }

  /** Start of the ids of this line's figures, without the last dot. */
  public String figurePrefix() {
    return Ids.of(itemKey);
  }

  /** Whose price a line has. */
  public enum PriceOrigin {
    /** The owner's own price. */
    OWNER,
    /** The catalogue's typical price, in the plan's currency. */
    TYPICAL,
    /** The catalogue's typical price in another currency, kept out of the total. */
    TYPICAL_OTHER_CURRENCY,
    /** Nobody's: the price is not known. */
    UNKNOWN
  }
}
