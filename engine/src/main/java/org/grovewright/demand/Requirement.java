package org.grovewright.demand;

import java.util.List;
import org.grovewright.quantity.Kind;

/**
 * Goods that a part of the plan needs. Several requirements may name the same item; buying adds
 * them up.
 *
 * @param itemKey catalogue key of the item (a pipe, emitter, mix, amendment, mulch, part, filter,
 *     regulator or species)
 * @param kind what it is measured in: LENGTH, BULK_VOLUME, MASS or COUNT
 * @param quantity net amount in the SI unit of the kind, without waste or spares
 * @param purpose what it is for, in a gardener's words
 * @param figureId id of the figure that shows the working of the amount
 * @param cuts for LENGTH, the pieces it is cut into; empty otherwise
 */
public record Requirement(
    String itemKey, Kind kind, double quantity, String purpose, String figureId, List<Cut> cuts) {
  /** Copies the cuts. */
  public Requirement {
    cuts = List.copyOf(cuts);
  }

  /**
   * One piece of pipe.
   *
   * @param label where it goes
   * @param lengthM its length, metres
   */
  public record Cut(String label, double lengthM) {}
}
