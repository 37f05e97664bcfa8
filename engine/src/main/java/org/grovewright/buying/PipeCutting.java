package org.grovewright.buying;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.demand.Requirement;

/**
 * Cuts the pieces of one pipe from coils or lengths, either whole, with joints only in pieces
 * longer than a length, or with joints wherever that saves a length.
 */
final class PipeCutting {
  private final List<Requirement.Cut> pieces;
  private final List<Long> onHand = new ArrayList<>();
  private final long stock;
  private final long leastPart;

  /**
   * Takes the problem.
   *
   * @param pieces the pieces, with the allowance for waste in their length
   * @param onHandM pipe on hand, metres, taken to be whole coils or lengths and one remainder
   * @param stockM length of a coil or length, metres
   * @param leastPartM shortest part worth joining, metres
   */
  PipeCutting(List<Requirement.Cut> pieces, double onHandM, double stockM, double leastPartM) {
    this.pieces = List.copyOf(pieces);
    this.stock = Math.max(1, (long) Math.floor(stockM * 1000 + 1e-6));
    this.leastPart = millimetres(leastPartM);
    long left = (long) Math.floor(onHandM * 1000 + 1e-6);
    for (; left >= stock; left -= stock) {
      onHand.add(stock);
    }
    if (left > 0) {
      onHand.add(left);
    }
  }

  private static long millimetres(double metres) {
    return Math.max(1, (long) Math.ceil(metres * 1000 - 1e-6));
  }

  /** Whole pieces; a piece longer than a length is whole lengths and one more part. */
  CuttingPlan whole() {
    List<Part> parts = new ArrayList<>();
    int joints = 0;
    for (Requirement.Cut piece : pieces) {
      List<Long> split = new ArrayList<>();
      long left = millimetres(piece.lengthM());
      while (left > stock) {
        // The last part must not be a stub too short to join.
        boolean leavesStub = left - stock < leastPart && stock >= 2 * leastPart;
        long take = leavesStub ? left - leastPart : stock;
        split.add(take);
        left -= take;
      }
      split.add(left);
      joints += split.size() - 1;
      for (int k = 0; k < split.size(); k++) {
        parts.add(new Part(piece.label(), split.get(k), k + 1, split.size()));
      }
    }
    CuttingStock cutting =
        new CuttingStock(
            parts.stream().mapToLong(Part::lengthMm).toArray(),
            onHand.stream().mapToLong(l -> l).toArray(),
            stock);
    int[] bins = cutting.assignment();
    List<List<Part>> byBin = empty(onHand.size() + cutting.bought());
    for (int i = 0; i < bins.length; i++) {
      byBin.get(bins[i]).add(parts.get(i));
    }
    return plan(byBin, cutting.bought(), joints, cutting.provenFewest());
  }

  /**
   * Pieces joined where that saves a length: pieces that fit are cut whole, the longest first, and
   * the others are put together from the longest off-cuts.
   */
  CuttingPlan joined() {
    long total = pieces.stream().mapToLong(p -> millimetres(p.lengthM())).sum();
    long missing = total - onHand.stream().mapToLong(l -> l).sum();
    int least = (int) Math.max(0, -Math.floorDiv(-missing, stock));
    CuttingPlan whole = whole();
    for (int bought = least; bought < whole.bought(); bought++) {
      List<List<Part>> byBin = empty(onHand.size() + bought);
      int joints = joinInto(byBin);
      if (joints >= 0) {
        return plan(byBin, bought, joints, bought == least);
      }
    }
    // Joining as it is done here saved nothing, so the pieces stay whole.
    return new CuttingPlan(
        whole.lengths(), whole.bought(), whole.joints(), whole.bought() == least);
  }

  /** Returns the joints, or -1 if the pieces cannot be made from these lengths. */
  private int joinInto(List<List<Part>> byBin) {
    long[] free = new long[byBin.size()];
    for (int bin = 0; bin < free.length; bin++) {
      free[bin] = bin < onHand.size() ? onHand.get(bin) : stock;
    }
    List<Requirement.Cut> longestFirst = new ArrayList<>(pieces);
    longestFirst.sort((a, b) -> Double.compare(b.lengthM(), a.lengthM()));
    List<Requirement.Cut> toJoin = new ArrayList<>();
    for (Requirement.Cut piece : longestFirst) {
      long length = millimetres(piece.lengthM());
      int fit = -1;
      for (int bin = 0; bin < free.length; bin++) {
        if (free[bin] >= length && (fit < 0 || free[bin] < free[fit])) {
          fit = bin;
        }
      }
      if (fit < 0) {
        toJoin.add(piece);
      } else {
        free[fit] -= length;
        byBin.get(fit).add(new Part(piece.label(), length, 1, 1));
      }
    }
    int joints = 0;
    for (Requirement.Cut piece : toJoin) {
      int parts = join(piece, free, byBin);
      if (parts == 0) {
        return -1;
      }
      joints += parts - 1;
    }
    return joints;
  }

  /** Returns the number of parts, or 0 if what is left does not make the piece. */
  private int join(Requirement.Cut piece, long[] free, List<List<Part>> byBin) {
    List<Integer> bins = new ArrayList<>();
    List<Long> takes = new ArrayList<>();
    long left = millimetres(piece.lengthM());
    while (left > 0) {
      int longest = 0;
      for (int bin = 1; bin < free.length; bin++) {
        longest = free[bin] > free[longest] ? bin : longest;
      }
      long take = free.length == 0 ? 0 : Math.min(left, free[longest]);
      if (take < left && left - take < leastPart) {
        take = left - leastPart;
      }
      if (take < Math.min(leastPart, left)) {
        return 0;
      }
      free[longest] -= take;
      bins.add(longest);
      takes.add(take);
      left -= take;
    }
    for (int k = 0; k < bins.size(); k++) {
      byBin.get(bins.get(k)).add(new Part(piece.label(), takes.get(k), k + 1, bins.size()));
    }
    return bins.size();
  }

  private static List<List<Part>> empty(int bins) {
    List<List<Part>> byBin = new ArrayList<>();
    for (int bin = 0; bin < bins; bin++) {
      byBin.add(new ArrayList<>());
    }
    return byBin;
  }

  private CuttingPlan plan(List<List<Part>> byBin, int bought, int joints, boolean proven) {
    List<CuttingPlan.Length> lengths = new ArrayList<>();
    for (int bin = 0; bin < byBin.size(); bin++) {
      boolean fromShed = bin < onHand.size();
      List<CuttingPlan.Cut> cuts = new ArrayList<>();
      for (Part part : byBin.get(bin)) {
        cuts.add(
            new CuttingPlan.Cut(part.label(), part.lengthMm() / 1000.0, part.number(), part.of()));
      }
      long length = fromShed ? onHand.get(bin) : stock;
      lengths.add(new CuttingPlan.Length(fromShed, length / 1000.0, cuts));
    }
    return new CuttingPlan(lengths, bought, joints, proven);
  }

  private record Part(String label, long lengthMm, int number, int of) {}
}
