package org.grovewright.buying;

import java.util.List;

/**
 * Which piece is cut from which coil or length.
 *
 * @param lengths the coils or lengths that are cut, those on hand first
 * @param bought how many of them are bought
 * @param joints couplings needed where a piece is put together from parts
 * @param provenFewest whether no plan with fewer bought coils or lengths exists under the same rule
 *     on joints
 */
public record CuttingPlan(List<Length> lengths, int bought, int joints, boolean provenFewest) {
  /** Copies the lengths. */
  public CuttingPlan {
    lengths = List.copyOf(lengths);
  }

  /** What is left of all lengths, metres. */
  public double offCutsM() {
    return lengths.stream().mapToDouble(Length::offCutM).sum();
  }

  /**
   * One coil or length.
   *
   * @param onHand whether it comes from the shed
   * @param lengthM its length, metres
   * @param cuts what is cut from it
   */
  public record Length(boolean onHand, double lengthM, List<Cut> cuts) {
    /** Copies the cuts. */
    public Length {
      cuts = List.copyOf(cuts);
    }

    /** What is left of it, metres. */
    public double offCutM() {
      double left = lengthM;
      for (Cut cut : cuts) {
        left -= cut.lengthM();
      }
      return Math.max(0, left);
    }
  }

  /**
   * One cut.
   *
   * @param label where the piece goes
   * @param lengthM its length with the allowance for waste, metres
   * @param part which part of the piece it is, from 1
   * @param parts how many parts the piece is joined from, 1 for a whole piece
   */
  public record Cut(String label, double lengthM, int part, int parts) {}
}
