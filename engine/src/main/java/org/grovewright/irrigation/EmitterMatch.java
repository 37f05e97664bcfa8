package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
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
  private static final double[] STARTS = {1, 0.75, 0.55, 0.4, 0.3, 0.2};

  /** Starts that are gone on with. */
  private static final int BETTERED = 2;

  /** By how much runs of all months are made shorter or longer together. */
  private static final double[] SHAKES = {0.8, 0.9, 1.12, 1.25};

  private static final int MOST_SWEEPS = 12;

  /** Share of the money that is worth another sweep. */
  private static final double WORTH = 1e-6;

  /** Money that a flow outside its bounds counts for, more than any system costs. */
  private static final double OUT_OF_BOUNDS = 1e6;

  private static final int MONTHS = 12;

  private final double waterValue;
  private final double leastFlow;
  private final double flowLimit;

  /** Kind of each plant; those of a kind have the same needs and options, and get the same. */
  private final int[] kindOf;

  private final int[] number;

  /** By kind and option: share of each month that the zone would run for such a plant. */
  private final double[][][] shares;

  /**
   * By kind and option: those shares of all months together, and flow and money of all its plants.
   */
  private final double[][] allShares;

  private final double[][] flows;
  private final double[][] moneys;

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

  /** The longest shares of all kinds but the one that is bettered. */
  private final double[] others = new double[MONTHS];

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
    kindOf = new int[plants.size()];
    List<Plant> kinds = new ArrayList<>();
    for (int i = 0; i < kindOf.length; i++) {
      Plant plant = plants.get(i);
      int kind = 0;
      while (kind < kinds.size() && !kinds.get(kind).like(plant)) {
        kind++;
      }
      if (kind == kinds.size()) {
        kinds.add(plant);
      }
      kindOf[i] = kind;
    }
    int n = kinds.size();
    number = new int[n];
    for (int kind : kindOf) {
      number[kind]++;
    }
    shares = new double[n][][];
    allShares = new double[n][];
    flows = new double[n][];
    moneys = new double[n][];
    options = new Option[n][];
    greatestNeed = new double[n];
    for (int i = 0; i < n; i++) {
      double[] need = kinds.get(i).need();
      options[i] = kinds.get(i).options().toArray(Option[]::new);
      int count = options[i].length;
      shares[i] = new double[count][MONTHS];
      allShares[i] = new double[count];
      flows[i] = new double[count];
      moneys[i] = new double[count];
      for (int o = 0; o < count; o++) {
        flows[i][o] = number[i] * options[i][o].flowM3PerS();
        moneys[i][o] = number[i] * options[i][o].money();
      }
      for (int m = 0; m < MONTHS; m++) {
        greatestNeed[i] = Math.max(greatestNeed[i], need[m]);
        for (int o = 0; o < count; o++) {
          shares[i][o][m] = need[m] / options[i][o].sure();
          allShares[i][o] += shares[i][o][m];
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
  record Plant(double[] need, List<Option> options) {
    private boolean like(Plant other) {
      return Arrays.equals(need, other.need) && options.equals(other.options);
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
   * The best choice that is found: of several starts those with the least money are bettered plant
   * by plant; then the runs of all months are made shorter or longer together, which no change of
   * one plant can do where several are equally needy, and what comes of it is bettered again.
   *
   * @param longestShare share of a day that the zone may run
   */
  Choice best(double longestShare) {
    List<Choice> starts = new ArrayList<>();
    for (double start : STARTS) {
      chosen = covering(start * longestShare);
      addUp();
      starts.add(new Choice(chosen, sum()));
    }
    starts.sort(Comparator.comparingDouble(Choice::money));
    Choice best = null;
    for (Choice start : starts.subList(0, BETTERED)) {
      best = better(best, start.options());
    }
    boolean helped = true;
    while (helped) {
      Choice before = best;
      for (double shake : SHAKES) {
        chosen = best.options().clone();
        addUp();
        best = better(best, within(shake));
      }
      helped = best != before;
    }
    return new Choice(ofPlants(best.options()), best.money());
  }

  private int[] ofPlants(int[] ofKinds) {
    int[] chosenOptions = new int[kindOf.length];
    for (int i = 0; i < kindOf.length; i++) {
      chosenOptions[i] = ofKinds[kindOf[i]];
    }
    return chosenOptions;
  }

  /** A choice, or what comes of bettering another if that costs less. */
  private Choice better(Choice than, int[] from) {
    chosen = from.clone();
    double found = bettered();
    return than == null || found < than.money() * (1 - 1e-9) ? new Choice(chosen, found) : than;
  }

  /** What the emitters chosen and their water come to. */
  private double sum() {
    double runs = 0;
    for (double share : longest) {
      runs += share;
    }
    return sum(money, runs, flow, rated);
  }

  private double sum(double emitters, double runs, double allFlow, double allRated) {
    double sum = emitters + waterValue * runs * allFlow;
    sum += Math.max(0, allFlow / flowLimit - 1) * OUT_OF_BOUNDS;
    if (leastFlow > 0) {
      sum += Math.max(0, 1 - allRated / leastFlow) * OUT_OF_BOUNDS;
    }
    return sum;
  }

  /** For each kind the option with the least money among those that the runs times this serve. */
  private int[] within(double times) {
    double runs = 0;
    double[] most = new double[MONTHS];
    for (int m = 0; m < MONTHS; m++) {
      most[m] = longest[m] * times * (1 + 1e-9);
      runs += most[m];
    }
    int[] within = new int[options.length];
    for (int i = 0; i < within.length; i++) {
      double least = Double.POSITIVE_INFINITY;
      int strongest = 0;
      within[i] = -1;
      for (int o = 0; o < options[i].length; o++) {
        Option option = options[i][o];
        strongest = option.sure() > options[i][strongest].sure() ? o : strongest;
        double cost = option.money() + waterValue * runs * option.flowM3PerS();
        if (cost < least && served(shares[i][o], most)) {
          least = cost;
          within[i] = o;
        }
      }
      within[i] = within[i] < 0 ? strongest : within[i];
    }
    return within;
  }

  private static boolean served(double[] share, double[] most) {
    for (int m = 0; m < MONTHS; m++) {
      if (share[m] > most[m]) {
        return false;
      }
    }
    return true;
  }

  /** For each kind the least flow that covers its need in a run, or else the greatest. */
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

  /** Changes one kind after the other for as long as that saves; the money it comes to. */
  private double bettered() {
    addUp();
    double sum = Double.POSITIVE_INFINITY;
    int settled = 0;
    for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      double before = sum;
      for (int i = 0; i < chosen.length && settled < chosen.length; i++) {
        int had = chosen[i];
        sum = bettered(i);
        settled = chosen[i] == had ? settled + 1 : 1;
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
      flow += flows[i][chosen[i]];
      rated += number[i] * options[i][chosen[i]].rated();
      money += moneys[i][chosen[i]];
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

  /**
   * Gives the plants of a kind their best option beside those of the others; the money it comes to.
   */
  private double bettered(int kind) {
    int before = chosen[kind];
    int n = number[kind];
    double otherFlow = flow - flows[kind][before];
    double otherRated = rated - n * options[kind][before].rated();
    double otherMoney = money - moneys[kind][before];
    double least = 0;
    for (int m = 0; m < MONTHS; m++) {
      others[m] = longestOf[m] == kind ? second[m] : longest[m];
      least += others[m];
    }
    // What it has now is among the options, so none that must cost more need be added up.
    double enough = sum() * (1 + 1e-9);
    double best = Double.POSITIVE_INFINITY;
    for (int o = 0; o < options[kind].length; o++) {
      double all = otherFlow + flows[kind][o];
      double emitters = otherMoney + moneys[kind][o];
      double atLeast = emitters + waterValue * Math.max(least, allShares[kind][o]) * all;
      if (atLeast >= best || atLeast > enough) {
        continue;
      }
      double[] own = shares[kind][o];
      double runs = 0;
      for (int m = 0; m < MONTHS; m++) {
        runs += Math.max(others[m], own[m]);
      }
      double sum = sum(emitters, runs, all, otherRated + n * options[kind][o].rated());
      if (sum < best * (1 - 1e-12)) {
        best = sum;
        chosen[kind] = o;
      }
    }
    if (chosen[kind] != before) {
      addUp();
    }
    return best;
  }
}
