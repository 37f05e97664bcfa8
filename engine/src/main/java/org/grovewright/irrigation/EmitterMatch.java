package org.grovewright.irrigation;

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
  private static final double[] STARTS = {1, 0.6, 0.35, 0.2};

  private static final int MOST_SWEEPS = 20;
  /** Money that a flow outside its bounds counts for, more than any system costs. */
  private static final double OUT_OF_BOUNDS = 1e6;

  private final List<Plant> plants;
  private final double waterValue;
  private final double leastFlow;
  private final double flowLimit;

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
    this.plants = plants;
    this.waterValue = waterValue;
    this.leastFlow = leastFlow;
    this.flowLimit = flowLimit;
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
  record Plant(double[] need, List<Option> options) {
    private double greatestNeed() {
      double greatest = 0;
      for (double n : need) {
        greatest = Math.max(greatest, n);
      }
      return greatest;
    }
  }

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
      Choice choice = bettered(covering(start * longestShare));
      if (best == null || choice.money() < best.money() * (1 - 1e-9)) {
        best = choice;
      }
    }
    return best;
  }

  /** For each plant the least flow that covers its need in a run, or else the greatest. */
  private int[] covering(double share) {
    int[] chosen = new int[plants.size()];
    for (int i = 0; i < chosen.length; i++) {
      Plant plant = plants.get(i);
      double wanted = plant.greatestNeed() / share * (1 - 1e-9);
      int best = 0;
      for (int o = 1; o < plant.options().size(); o++) {
        double flow = plant.options().get(o).sure();
        double bestFlow = plant.options().get(best).sure();
        boolean better = bestFlow >= wanted ? flow >= wanted && flow < bestFlow : flow > bestFlow;
        best = better ? o : best;
      }
      chosen[i] = best;
    }
    return chosen;
  }

  private Choice bettered(int[] chosen) {
    double money = Double.POSITIVE_INFINITY;
    for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      double before = money;
      for (int i = 0; i < chosen.length; i++) {
        money = bettered(chosen, i);
      }
      if (money >= before * (1 - 1e-9)) {
        break;
      }
    }
    return new Choice(chosen, money);
  }

  /** Gives a plant its best option beside those of the others; the money it comes to. */
  private double bettered(int[] chosen, int plant) {
    double[] others = new double[12];
    double flow = 0;
    double rated = 0;
    double money = 0;
    for (int j = 0; j < chosen.length; j++) {
      if (j != plant) {
        Option option = plants.get(j).options().get(chosen[j]);
        double sure = option.sure();
        double[] need = plants.get(j).need();
        for (int m = 0; m < 12; m++) {
          others[m] = Math.max(others[m], need[m] / sure);
        }
        flow += option.flowM3PerS();
        rated += option.rated();
        money += option.money();
      }
    }
    double best = Double.POSITIVE_INFINITY;
    double[] need = plants.get(plant).need();
    List<Option> options = plants.get(plant).options();
    for (int o = 0; o < options.size(); o++) {
      Option option = options.get(o);
      double sure = option.sure();
      double runs = 0;
      for (int m = 0; m < 12; m++) {
        runs += Math.max(others[m], need[m] / sure);
      }
      double all = flow + option.flowM3PerS();
      double sum = money + option.money() + waterValue * runs * all;
      sum += Math.max(0, all / flowLimit - 1) * OUT_OF_BOUNDS;
      if (leastFlow > 0) {
        sum += Math.max(0, 1 - (rated + option.rated()) / leastFlow) * OUT_OF_BOUNDS;
      }
      if (sum < best * (1 - 1e-12)) {
        best = sum;
        chosen[plant] = o;
      }
    }
    return best;
  }
}
