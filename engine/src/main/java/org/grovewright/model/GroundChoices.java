package org.grovewright.model;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the owner wants in and on the ground. Whatever is empty is chosen from the catalogue.
 *
 * @param mixKey catalogue key of the soil mix blended into the backfill
 * @param mixShare share of bought mix in the backfill, by volume in place; 0 for native soil only
 * @param holeWidthRatio width of a main plant's hole over the width of its root ball
 * @param amendmentKeys catalogue keys of the amendments blended into the backfill at their label
 *     rates; empty means none
 * @param mulchKey catalogue key of the mulch
 * @param fertiliserKey catalogue key of the fertiliser used for feeding
 */
public record GroundChoices(
    Optional<String> mixKey,
    OptionalDouble mixShare,
    OptionalDouble holeWidthRatio,
    List<String> amendmentKeys,
    Optional<String> mulchKey,
    Optional<String> fertiliserKey) {
  /** Nothing said: the catalogue's usual choice in everything, and no amendments. */
  public static final GroundChoices NONE =
      new GroundChoices(
          Optional.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          List.of(),
          Optional.empty(),
          Optional.empty());

  /** Copies the list. */
  public GroundChoices {
    amendmentKeys = List.copyOf(amendmentKeys);
  }
}
