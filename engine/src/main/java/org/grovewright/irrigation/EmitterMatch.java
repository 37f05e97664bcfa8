package org.grovewright.irrigation;

import java.util.Arrays;
import java.util.List;
import org.grovewright.catalogue.EmitterType;

/**
 * Matches the emitters of a zone to the needs of its plants. One valve runs all of them for as long
 * as the plant served worst needs, so what a plant is given beyond its need is set by the emitters
 * of all. The choice is the one with the least money for emitters and water over the life of the
 * system that can be reached by changing the emitters of one plant at a time, the pressure taken to
 * be the same at all; the solved network comes after.
 */
final class EmitterMatch {
  /** Shares of the longest run that choices are begun from. */
  private static final double[] STARTS = {1, 0.5, 0.25};

  private static final int MOST_SWEEPS = 12;

  /** Share of the money that is worth another sweep. */
  private static final double WORTH = 1e-6;

  /** Money that a flow outside its bounds counts for, more than any system costs. */
  private static final double OUT_OF_BOUNDS = 1e6;

  private static final int MONTHS = 12;

  private final double waterValue;
  private final double leastFlow;
  private final double flowLimit;

  /** By plant and option: share of each month that the zone would run for this plant. */
  private final double[][][] shares;

  private final Option[][] options;
  private final double[] greatestNeed;

  /** What a zone with the emitters chosen so far comes to. */
  private int[] chosen;

  private double flow;
  private double rated;
  private double money;

  /** By month: the longest share, whose it is, and the longest of all others. */
  private final double[] longest = new double[MONTHS];

  private final int[] longestOf = new int[MONTHS];
  private final double[] second = new double[MONTHS];

  /**
   * A match for one zone.
   *
   * @param plants its plants
   * @param waterValue money for a flow of 1 m3/s for a month of each year of the system's life, as
   *     it leaves the supply
   * @param leastFlow flow by rating that the zone's regulator needs, m3/s
   * @param flowLimit flow that the zone may draw, m3/s
   */
  EmitterMatch(List<Plant> plants, double waterValue, double leastFlow, double flowLimit) {
    this.waterValue = waterValue;
    this.leastFlow = leastFlow;
    this.flowLimit = flowLimit;
    int n = plants.size();
    shares = new double[n][][];
    options = new Option[n][];
    greatestNeed = new double[n];
    for (int i = 0; i < n; i++) {
      double[] need = plants.get(i).need();
      options[i] = plants.get(i).options().toArray(Option[]::new);
      shares[i] = new double[options[i].length][MONTHS];
      for (int m = 0; m < MONTHS; m++) {
        greatestNeed[i] = Math.max(greatestNeed[i], need[m]);
        for (int o = 0; o < options[i].length; o++) {
          shares[i][o][m] = need[m] / options[i][o].sure();
        }
      }
    }
  }

  /**
   * Emitters that a plant may have.
   *
   * @param type their type
   * @param count their number
   * @param flowM3PerS what they give together
   * @param spread share of that which the plant gets at least, however they were made
   * @param money their price
   */
  record Option(EmitterType type, int count, double flowM3PerS, double spread, double money) {
    /** Flow that can be counted on. */
    double sure() {
      return flowM3PerS * spread;
    }

    private double rated() {
      return count * type.nominalFlowM3PerS();
    }
  }

  /**
   * A plant.
   *
   * @param need its need by month, m3/s as a mean of the month
   * @param options emitters it may have, none left out that the caller wants tried
   */
  record Plant(double[] need, List<Option> options) {}

  /**
   * A choice.
   *
   * @param options for each plant, the index of its option
   * @param money what emitters and the water they give cost over the life
   */
  record Choice(int[] options, double money) {}

  /**
   * The best choice.
   *
   * @param longestShare share of a day that the zone may run
   */
  Choice best(double longestShare) {
    Choice best = null;
    for (double start : STARTS) {
      chosen = covering(start * longestShare);
      double found = bettered();
      if (best == null || found < best.money() * (1 - 1e-9)) {
        best = new Choice(chosen, found);
      }
    }
    return best;
  }

  /** For each plant the least flow that covers its need in a run, or else the greatest. */
  private int[] covering(double share) {
    int[] covering = new int[options.length];
    for (int i = 0; i < covering.length; i++) {
      double wanted = greatestNeed[i] / share * (1 - 1e-9);
      int best = 0;
      for (int o = 1; o < options[i].length; o++) {
        double sure = options[i][o].sure();
        double bestSure = options[i][best].sure();
        boolean better = bestSure >= wanted ? sure >= wanted && sure < bestSure : sure > bestSure;
        best = better ? o : best;
      }
      covering[i] = best;
    }
    return covering;
  }

  /** Changes one plant after the other for as long as that saves; the money it comes to. */
  private double bettered() {
    addUp();
    double sum = Double.POSITIVE_INFINITY;
    for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      double before = sum;
      for (int i = 0; i < chosen.length; i++) {
        sum = bettered(i);
      }
      if (sum >= before * (1 - WORTH)) {
        break;
      }
    }
    return sum;
  }

  private void addUp() {
    flow = 0;
    rated = 0;
    money = 0;
    Arrays.fill(longest, 0);
    Arrays.fill(second, 0);
    Arrays.fill(longestOf, -1);
    for (int i = 0; i < chosen.length; i++) {
      Option option = options[i][chosen[i]];
      flow += option.flowM3PerS();
      rated += option.rated();
      money += option.money();
      double[] own = shares[i][chosen[i]];
      for (int m = 0; m < MONTHS; m++) {
        if (own[m] > longest[m]) {
          second[m] = longest[m];
          longest[m] = own[m];
          longestOf[m] = i;
        } else if (own[m] > second[m]) {
          second[m] = own[m];
        }
      }
    }
  }

  /** Gives a plant its best option beside those of the others; the money it comes to. */
  private double bettered(int plant) {
    int before = chosen[plant];
    Option had = options[plant][before];
    double otherFlow = flow - had.flowM3PerS();
    double otherRated = rated - had.rated();
    double otherMoney = money - had.money();
    double[] others = new double[MONTHS];
    double least = 0;
    for (int m = 0; m < MONTHS; m++) {
      others[m] = longestOf[m] == plant ? second[m] : longest[m];
      least += others[m];
    }
    double best = Double.POSITIVE_INFINITY;
    for (int o = 0; o < options[plant].length; o++) {
      Option option = options[plant][o];
      double all = otherFlow + option.flowM3PerS();
      if (otherMoney + option.money() + waterValue * least * all >= best) {
        continue;
      }
      double[] own = shares[plant][o];
      double runs = 0;
      for (int m = 0; m < MONTHS; m++) {
        runs += Math.max(others[m], own[m]);
      }
      double sum = otherMoney + option.money() + waterValue * runs * all;
      sum += Math.max(0, all / flowLimit - 1) * OUT_OF_BOUNDS;
      if (leastFlow > 0) {
        sum += Math.max(0, 1 - (otherRated + option.rated()) / leastFlow) * OUT_OF_BOUNDS;
      }
      if (sum < best * (1 - 1e-12)) {
        best = sum;
        chosen[plant] = o;
      }
    }
    if (chosen[plant] != before) {
      addUp();
    }
    return best;
  }
}
