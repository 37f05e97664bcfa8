package org.grovewright.irrigation;

import java.time.Month;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Chooses emitters for all plants behind one valve so that minutes that are right for one are right
 * for all, in every year.
 *
 * <p>One valve gives every plant the same minutes {@code t = max(V / (q e))}, need over flow of the
 * neediest plant. A plant whose flow is in proportion to its need gets just that; needs of young
 * trees grow many times over in a few years while those of herbs beside them do not, so flows must
 * grow with the trees. Of all ways in which every plant's emitters can be staged over the years,
 * those are sought that make this sum least:
 *
 * <ul>
 *   <li>the water run in all years,
 *   <li>twice more what any plant gets beyond half as much again as it needs, because it drowns,
 *   <li>a share of it all for the plant that gets most over its need,
 *   <li>and for every emitter the water that it must save to be worth its place.
 * </ul>
 *
 * <p>The search starts from several guesses of the minutes of each year, takes for each plant the
 * thriftiest emitters that meet its need in them, and then betters one kind of plant at a time,
 * trying all its options, until nothing helps; then it makes the minutes of a year a little shorter
 * or longer and tries again. The result is never worse than the same emitters in all years: it runs
 * no more water in any year, and drowns no plant more.
 */
final class StagedChoice {
  /** Weight of water with which a plant drowns. */
  private static final double DROWNING = 2;

  /** Weight of the worst share of need that any plant gets, against the sum for the same always. */
  private static final double WORST = 0.05;

  private static final int MONTHS = 12;
  private static final double DAY_S = 86_400;
  private static final double SLACK = 1 + 1e-9;
  private static final double[] LAST_YEAR_RUN = {0.25, 0.4, 0.55, 0.75, 1};
  private static final double[] SECOND_STEP = {1, 0.8};
  private static final double[] FIRST_STEP = {1, 0.75, 0.5};

  private static final double[] SHAKES = {0.85, 1.15};

  /** A shaken choice that costs more than this times the best is not bettered. */
  private static final double WORTH_BETTERING = 1.03;

  /** What counts as better, so that rounding does not. */
  private static final double BETTER = 1 - 1e-9;

  /** Weight of a broken limit; more than any saving can make up for. */
  private static final double BREACH = 10;

  private final List<Group> groups;
  private final Limits limits;
  private final int years;

  /** Water that emitters must give each plant, m3 a day, by group, year and month in one row. */
  private final double[][] demand;

  /** Month of each group's greatest need in each year, in the same row. */
  private final int[][] peak;

  /** Share of its need beyond which a plant starts to drown, half way to too much. */
  private final double ample;

  private final double[] mostFlow;
  private final double[] leastFlow;
  private final double[] mostSeconds;
  private final double[] days = new double[MONTHS];
  private final Score usual;

  /**
   * Plants with the same needs and the same options.
   *
   * @param number how many there are
   * @param need what each needs, m3/s as a mean of the month, by year and month
   * @param usual its emitters if they were the same in all years
   * @param options ways to stage its emitters
   */
  record Group(int number, double[][] need, EmitterOption usual, List<EmitterOption> options) {}

  /**
   * What a choice must keep to, and what it weighs.
   *
   * @param leastFlowM3PerS least that the zone must draw for its regulator to hold
   * @param runS longest run on a day, as a mean
   * @param efficiency share of the water from the emitters that roots can use
   * @param tooMuch share of its need above which a plant drowns
   * @param leastExcess excess that counts as overwatering, m3/s
   * @param emitterWorthM3 water whose saving over all years is worth one emitter more
   */
  record Limits(
      double leastFlowM3PerS,
      double runS,
      double efficiency,
      double tooMuch,
      double leastExcess,
      double emitterWorthM3) {}

  /**
   * What a choice leads to.
   *
   * @param sum what is made least, m3
   * @param cost the sum with the worst share weighed in, and far more where a limit is broken
   * @param seconds run on a day, as a mean, by year and month in one row
   * @param flow flow of the zone by year, m3/s
   * @param volume water run by year, m3
   * @param worst greatest share of its need that any plant gets in its own peak month; 1 where no
   *     plant gets an excess that counts
   * @param group group of that plant, or -1
   * @param year year of that month, from 1
   */
  record Score(
      double sum,
      double cost,
      double[] seconds,
      double[] flow,
      double[] volume,
      double worst,
      int group,
      int year) {}

  /**
   * A choice.
   *
   * @param options the option of each group
   * @param before what the same emitters in all years would lead to
   * @param after what the options lead to
   */
  record Outcome(List<EmitterOption> options, Score before, Score after) {}

  private StagedChoice(List<Group> groups, Limits limits) {
    this.groups = groups;
    this.limits = limits;
    years = groups.get(0).need().length;
    for (int m = 0; m < MONTHS; m++) {
      days[m] = m == 1 ? 28.25 : Month.of(m + 1).length(false);
    }
    ample = (1 + limits.tooMuch()) / 2;
    mostFlow = new double[years];
    leastFlow = new double[years];
    mostSeconds = new double[years];
    demand = new double[groups.size()][years * MONTHS];
    peak = new int[groups.size()][years];
    for (int g = 0; g < groups.size(); g++) {
      for (int k = 0; k < demand[g].length; k++) {
        int y = k / MONTHS;
        demand[g][k] = groups.get(g).need()[y][k % MONTHS] * DAY_S / limits.efficiency();
        if (k % MONTHS == 0 || demand[g][k] > demand[g][peak[g][y]]) {
          peak[g][y] = k;
        }
      }
    }
    usual = score(groups.stream().map(Group::usual).toList());
    for (int y = 0; y < years; y++) {
      mostFlow[y] = usual.flow()[y];
      leastFlow[y] = Math.min(limits.leastFlowM3PerS(), usual.flow()[y]);
      mostSeconds[y] = Math.max(limits.runS(), longest(usual.seconds(), y));
    }
  }

  /**
   * The best choice that is found.
   *
   * @param groups at least one
   */
  static Outcome best(List<Group> groups, Limits limits) {
    return new StagedChoice(groups, limits).search();
  }

  /** A choice and what it leads to. */
  private record Scored(List<EmitterOption> chosen, Score score) {
    double cost() {
      return score.cost();
    }
  }

  private Outcome search() {
    List<Scored> starts = new ArrayList<>();
    for (double last : LAST_YEAR_RUN) {
      for (double second : SECOND_STEP) {
        for (double first : FIRST_STEP) {
          starts.add(thriftiest(guess(last * limits.runS(), second, first)));
        }
      }
    }
    starts.sort(Comparator.comparingDouble(Scored::cost));
    Scored best = shaken(bettered(starts.get(0)));
    if (best.cost() > usual.cost()) {
      best = bettered(new Scored(groups.stream().map(Group::usual).toList(), usual));
    }
    // A cost that is no more than that of the same emitters always breaks no limit.
    return new Outcome(best.chosen(), usual, best.score());
  }

  /** Guess of the run of every month: as long as in the peak month, shorter in earlier years. */
  private double[] guess(double lastS, double second, double first) {
    double[] seconds = new double[years * MONTHS];
    double run = lastS;
    for (int y = years - 1; y >= 0; y--) {
      Arrays.fill(seconds, y * MONTHS, (y + 1) * MONTHS, run);
      run *= y == 1 ? first : second;
    }
    return seconds;
  }

  /** For each group the option that runs least water where the runs are these. */
  private Scored thriftiest(double[] seconds) {
    double[] yearS = new double[years];
    for (int k = 0; k < seconds.length; k++) {
      yearS[k / MONTHS] += days[k % MONTHS] * seconds[k];
    }
    List<EmitterOption> chosen = new ArrayList<>();
    for (int g = 0; g < groups.size(); g++) {
      double[] least = new double[years];
      for (int k = 0; k < seconds.length; k++) {
        if (demand[g][k] > 0) {
          least[k / MONTHS] = Math.max(least[k / MONTHS], demand[g][k] / seconds[k]);
        }
      }
      EmitterOption best = groups.get(g).usual();
      double cost = Double.POSITIVE_INFINITY;
      for (EmitterOption option : groups.get(g).options()) {
        double sum = option.pieces() * limits.emitterWorthM3();
        boolean enough = true;
        for (int y = 0; y < years; y++) {
          enough &= option.flows()[y] * SLACK >= least[y];
          sum += option.flows()[y] * yearS[y];
        }
        if (enough && sum < cost) {
          best = option;
          cost = sum;
        }
      }
      chosen.add(best);
    }
    return new Scored(chosen, score(chosen));
  }

  /** Betters one group at a time until nothing helps. */
  private Scored bettered(Scored start) {
    List<EmitterOption> chosen = new ArrayList<>(start.chosen());
    Score score = start.score();
    boolean helped = true;
    while (helped) {
      helped = false;
      for (int g = 0; g < groups.size(); g++) {
        Score found = bettered(chosen, g, score);
        helped |= found.cost() < score.cost() * BETTER;
        score = found;
      }
    }
    return new Scored(List.copyOf(chosen), score);
  }

  /**
   * Puts the best option of one group into a choice; those with the least bound are tried first.
   */
  private Score bettered(List<EmitterOption> chosen, int g, Score from) {
    double[] others = seconds(chosen, g);
    double[] flow = flow(chosen, g);
    int pieces = pieces(chosen, g);
    double drowned = drowned(chosen, others, g);
    List<EmitterOption> options = groups.get(g).options();
    double[] bound = new double[options.size()];
    for (int i = 0; i < bound.length; i++) {
      bound[i] = leastCost(g, options.get(i), others, flow, pieces, drowned, from.cost());
    }
    Score best = from;
    EmitterOption kept = chosen.get(g);
    while (true) {
      int next = -1;
      for (int i = 0; i < bound.length; i++) {
        if (bound[i] < best.cost() * BETTER && (next < 0 || bound[i] < bound[next])) {
          next = i;
        }
      }
      if (next < 0) {
        chosen.set(g, kept);
        return best;
      }
      bound[next] = Double.POSITIVE_INFINITY;
      chosen.set(g, options.get(next));
      Score found = score(chosen);
      if (found.cost() < best.cost() * BETTER) {
        best = found;
        kept = options.get(next);
      }
    }
  }

  /**
   * Makes the runs of one year shorter or longer for all groups at once, which no change of one
   * group can do where several are equally needy, and betters what comes of it.
   */
  private Scored shaken(Scored start) {
    Scored best = start;
    boolean helped = true;
    while (helped) {
      helped = false;
      for (int y = 0; y < years; y++) {
        for (double factor : SHAKES) {
          double[] seconds = best.score().seconds().clone();
          for (int k = y * MONTHS; k < (y + 1) * MONTHS; k++) {
            seconds[k] *= factor;
          }
          Scored shaken = thriftiest(seconds);
          if (shaken.cost() < best.cost() * WORTH_BETTERING) {
            Scored found = bettered(shaken);
            if (found.cost() < best.cost() * BETTER) {
              best = found;
              helped = true;
            }
          }
        }
      }
    }
    return best;
  }

  /**
   * A cost that the choice with this option cannot come below: all but the share of its need that
   * the most overwatered plant gets, and what other groups drown more because the runs grow longer.
   *
   * @param drowned what the other groups drown at the runs that they want themselves, m3
   * @param enough cost from which on it does not matter by how much it is greater
   */
  private double leastCost(
      int g,
      EmitterOption option,
      double[] others,
      double[] flow,
      int pieces,
      double drowned,
      double enough) {
    int number = groups.get(g).number();
    double sum = (pieces + number * option.pieces()) * limits.emitterWorthM3() + drowned;
    double breach = 0;
    // The last year runs most water, so that it shows soonest what is not worth going on with.
    for (int y = years - 1; y >= 0 && sum < enough; y--) {
      double q = option.flows()[y];
      double perUnit = q > 0 ? 1 / q : 0;
      double daySeconds = 0;
      double longest = 0;
      double own = 0;
      for (int m = 0; m < MONTHS; m++) {
        double needs = demand[g][y * MONTHS + m];
        double seconds = Math.max(others[y * MONTHS + m], needs * perUnit);
        daySeconds += days[m] * seconds;
        longest = Math.max(longest, seconds);
        own += days[m] * Math.max(0, q * seconds - ample * needs);
      }
      double all = flow[y] + number * q;
      sum += all * daySeconds + DROWNING * number * own;
      breach += over(all, mostFlow[y]) + over(leastFlow[y], all) + over(longest, mostSeconds[y]);
      breach += over(all * daySeconds, usual.volume()[y]);
    }
    return sum + BREACH * usual.sum() * breach;
  }

  /** What all groups but one get beyond too much at these runs, m3. */
  private double drowned(List<EmitterOption> chosen, double[] seconds, int without) {
    double sum = 0;
    for (int g = 0; g < groups.size(); g++) {
      if (g == without) {
        continue;
      }
      double[] flows = chosen.get(g).flows();
      double own = 0;
      for (int k = 0; k < seconds.length; k++) {
        double over = flows[k / MONTHS] * seconds[k] - ample * demand[g][k];
        own += over > 0 ? days[k % MONTHS] * over : 0;
      }
      sum += DROWNING * groups.get(g).number() * own;
    }
    return sum;
  }

  /** Run that all groups but one want on a day, by year and month. */
  private double[] seconds(List<EmitterOption> chosen, int without) {
    double[] seconds = new double[years * MONTHS];
    for (int g = 0; g < groups.size(); g++) {
      if (g == without) {
        continue;
      }
      double[] flows = chosen.get(g).flows();
      for (int k = 0; k < seconds.length; k++) {
        if (demand[g][k] > 0) {
          seconds[k] = Math.max(seconds[k], demand[g][k] / flows[k / MONTHS]);
        }
      }
    }
    return seconds;
  }

  private double[] flow(List<EmitterOption> chosen, int without) {
    double[] flow = new double[years];
    for (int g = 0; g < groups.size(); g++) {
      for (int y = 0; g != without && y < years; y++) {
        flow[y] += groups.get(g).number() * chosen.get(g).flows()[y];
      }
    }
    return flow;
  }

  private int pieces(List<EmitterOption> chosen, int without) {
    int pieces = 0;
    for (int g = 0; g < groups.size(); g++) {
      if (g != without) {
        pieces += groups.get(g).number() * chosen.get(g).pieces();
      }
    }
    return pieces;
  }

  private Score score(List<EmitterOption> chosen) {
    double[] seconds = seconds(chosen, -1);
    double[] flow = flow(chosen, -1);
    double[] volume = new double[years];
    for (int k = 0; k < seconds.length; k++) {
      volume[k / MONTHS] += days[k % MONTHS] * seconds[k] * flow[k / MONTHS];
    }
    double sum = pieces(chosen, -1) * limits.emitterWorthM3() + drowned(chosen, seconds, -1);
    for (double v : volume) {
      sum += v;
    }
    double worst = 1;
    int worstGroup = -1;
    int worstYear = 0;
    for (int g = 0; g < groups.size(); g++) {
      for (int y = 0; y < years; y++) {
        double gets = chosen.get(g).flows()[y] * seconds[peak[g][y]];
        double needs = demand[g][peak[g][y]];
        double share = needs > 0 ? gets / needs : 1;
        if (share > worst && (gets - needs) * limits.efficiency() / DAY_S > limits.leastExcess()) {
          worst = share;
          worstGroup = g;
          worstYear = y + 1;
        }
      }
    }
    double base = usual == null ? sum : usual.sum();
    double cost = sum + WORST * base * (worst - 1);
    double breach = usual == null ? 0 : breach(seconds, flow, volume, worst);
    if (breach > 0) {
      cost += BREACH * usual.sum() * breach;
    }
    return new Score(sum, cost, seconds, flow, volume, worst, worstGroup, worstYear);
  }

  /**
   * By how much a choice breaks the limits or is worse than the same emitters always, as a sum of
   * shares; 0 where it does neither.
   */
  private double breach(double[] seconds, double[] flow, double[] volume, double worst) {
    double breach = over(worst, usual.worst());
    for (int y = 0; y < years; y++) {
      breach +=
          over(flow[y], mostFlow[y])
              + over(leastFlow[y], flow[y])
              + over(longest(seconds, y), mostSeconds[y]);
      breach += over(volume[y], usual.volume()[y]);
    }
    return breach;
  }

  private static double over(double value, double most) {
    return value > most * SLACK ? 1 + value / most : 0;
  }

  private static double longest(double[] seconds, int y) {
    double longest = 0;
    for (int m = 0; m < MONTHS; m++) {
      longest = Math.max(longest, seconds[y * MONTHS + m]);
    }
    return longest;
  }
}
