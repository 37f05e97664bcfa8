package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Market;
import org.junit.jupiter.api.Test;

/**
 * Emitters staged over the years. The arithmetic is the definition itself: one valve gives all its
 * plants the same minutes, so what a plant gets over its need follows by hand.
 */
class StagedChoiceTest {
  private static final double LITRES_A_DAY = 1e-3 / 86_400;
  private static final double LITRES_AN_HOUR = 1 / 3.6e6;
  private static final int YEARS = 3;
  private static final EmitterType TWO = emitter(2);
  private static final EmitterType FOUR = emitter(4);
  private static final EmitterType EIGHT = emitter(8);
  private static final List<EmitterType> RATINGS = List.of(TWO, FOUR, EIGHT);

  private static EmitterType emitter(double litresAnHour) {
    return new EmitterType(
        "emitter.test-" + litresAnHour,
        "test emitter",
        litresAnHour * LITRES_AN_HOUR,
        100_000,
        0.05,
        true,
        50_000,
        300_000,
        0.05,
        OptionalDouble.empty(),
        0.8,
        130e-6,
        0.1,
        EmitterType.Pattern.DRIPPER,
        Market.ANY,
        "made up for this test");
  }

  private static EmitterOption.Rated rated(EmitterType type) {
    return new EmitterOption.Rated(type, type.nominalFlowM3PerS());
  }

  private static StagedChoice.Limits limits(double emitterLitres) {
    return new StagedChoice.Limits(0, 2 * 3600, 1, 2, 2 * LITRES_A_DAY, emitterLitres / 1000);
  }

  /** The same need in all months of a year. */
  private static double[][] need(double... litresADayByYear) {
    double[][] need = new double[YEARS][12];
    for (int y = 0; y < YEARS; y++) {
      Arrays.fill(need[y], litresADayByYear[y] * LITRES_A_DAY);
    }
    return need;
  }

  private static StagedChoice.Group group(
      int number, double[][] need, EmitterType full, int count, int least) {
    List<EmitterOption.Rated> smaller =
        RATINGS.stream()
            .filter(e -> e.nominalFlowM3PerS() < full.nominalFlowM3PerS())
            .map(StagedChoiceTest::rated)
            .toList();
    return new StagedChoice.Group(
        number,
        need,
        EmitterOption.constant(rated(full), count, YEARS),
        EmitterOption.all(rated(full), count, smaller, least, YEARS));
  }

  /**
   * A tree that needs 4, 8 and 16 L a day beside a herb that needs 2 L a day. The herb's one 2 L/h
   * emitter wants an hour a day in every year, so the tree must have 4, 8 and 16 L/h: then both get
   * just their need, 6, 10 and 18 L a day in all. With the tree's 16 L/h from the first day it
   * would get four times its need in the first year.
   */
  @Test
  void aTreeBesideAHerbStartsSmallAndGrows() {
    StagedChoice.Outcome outcome =
        StagedChoice.best(
            List.of(group(1, need(4, 8, 16), FOUR, 4, 2), group(1, need(2, 2, 2), TWO, 1, 1)),
            limits(1));

    assertThat(outcome.before().worst()).isCloseTo(4, within(1e-9));
    assertThat(outcome.before().volume()[0]).isCloseTo(0.018 * 365.25, within(1e-6));
    assertThat(outcome.after().worst()).isEqualTo(1);
    double[] least = {0.006 * 365.25, 0.010 * 365.25, 0.018 * 365.25};
    assertThat(outcome.after().volume()).containsExactly(least, within(1e-6));
    double[] tree = outcome.options().get(0).flows();
    double[] herb = outcome.options().get(1).flows();
    for (int y = 0; y < YEARS; y++) {
      assertThat(tree[y] / herb[y]).isCloseTo(Math.pow(2, y + 1), within(1e-9));
    }
  }

  /**
   * Three emitters of one rating, from one on: each of the first two years has one, two or three,
   * the second never fewer than the first, which are C(4, 2) = 6 ways; the third has all three.
   */
  @Test
  void allWaysOfOneRatingAreThereOnce() {
    List<EmitterOption> options = EmitterOption.all(rated(TWO), 3, List.of(), 1, YEARS);

    assertThat(options).hasSize(6);
    assertThat(options).allSatisfy(o -> assertThat(o.flows()[2]).isEqualTo(3 * flow(TWO)));
  }

  /** Emitters are exchanged hole by hole: small ones go when as many full ones come. */
  @Test
  void smallEmittersGoWhenFullOnesTakeTheirHoles() {
    List<EmitterOption> options =
        EmitterOption.all(rated(EIGHT), 4, List.of(rated(TWO), rated(FOUR)), 2, YEARS);

    assertThat(options).anyMatch(o -> !o.starters().isEmpty());
    for (EmitterOption option : options) {
      assertThat(option.stay()).hasSize(4);
      for (int year = 1; year <= YEARS; year++) {
        int now = year;
        long before = open(option.starters(), year - 1) + open(option.stay(), year - 1);
        long there = open(option.starters(), year) + open(option.stay(), year);
        assertThat(there).isBetween(2L, 4L).isGreaterThanOrEqualTo(before);
        assertThat(open(option.starters(), now) == 0 || open(option.stay(), now) == 0).isTrue();
      }
    }
  }

  private static long open(List<StagedEmitter> emitters, int year) {
    return emitters.stream().filter(e -> e.openIn(year)).count();
  }

  private static double flow(EmitterType type) {
    return type.nominalFlowM3PerS();
  }

  private static StagedChoice.Group random(Random chance) {
    boolean tree = chance.nextInt(3) > 0;
    double first = 0.5 + 6 * chance.nextDouble();
    double[][] need = new double[YEARS][12];
    double peak = first;
    for (int y = 0; y < YEARS; y++) {
      double turn = chance.nextInt(12);
      for (int m = 0; m < 12; m++) {
        double season = 0.5 + 0.5 * Math.cos((m - turn) * Math.PI / 6);
        need[y][m] = peak * season * LITRES_A_DAY;
      }
      peak *= tree ? 1 + 2 * chance.nextDouble() : 0.8 + 0.5 * chance.nextDouble();
    }
    int least = tree ? 2 : 1;
    EmitterType type = RATINGS.get(chance.nextInt(3));
    return group(1 + chance.nextInt(3), need, type, least + chance.nextInt(5 - least), least);
  }

  private static List<StagedChoice.Group> zone(Random chance, int kinds) {
    List<StagedChoice.Group> groups = new ArrayList<>();
    for (int i = 0; i < kinds; i++) {
      groups.add(random(chance));
    }
    return groups;
  }

  /** No plant is short, and nothing is worse than with the same emitters in all years. */
  @Property(tries = 40)
  void stagingIsNeverWorseThanTheSameEmittersAlways(@ForAll long seed) {
    Random chance = new Random(seed);
    List<StagedChoice.Group> groups = zone(chance, 1 + chance.nextInt(6));
    StagedChoice.Outcome outcome = StagedChoice.best(groups, limits(100));

    StagedChoice.Score before = outcome.before();
    StagedChoice.Score after = outcome.after();
    assertThat(after.worst()).isLessThanOrEqualTo(before.worst() * (1 + 1e-9));
    for (int y = 0; y < YEARS; y++) {
      assertThat(after.volume()[y]).isLessThanOrEqualTo(before.volume()[y] * (1 + 1e-9));
      double longestBefore = 0;
      double longestAfter = 0;
      for (int m = 0; m < 12; m++) {
        longestBefore = Math.max(longestBefore, before.seconds()[y * 12 + m]);
        longestAfter = Math.max(longestAfter, after.seconds()[y * 12 + m]);
        for (int g = 0; g < groups.size(); g++) {
          double gets = outcome.options().get(g).flows()[y] * after.seconds()[y * 12 + m];
          double needs = groups.get(g).need()[y][m] * 86_400;
          assertThat(gets).isGreaterThanOrEqualTo(needs * (1 - 1e-9));
        }
      }
      assertThat(longestAfter).isLessThanOrEqualTo(Math.max(7200, longestBefore) * (1 + 1e-9));
    }
    for (int g = 0; g < groups.size(); g++) {
      double[] flows = outcome.options().get(g).flows();
      assertThat(flows[1]).isGreaterThanOrEqualTo(flows[0] * (1 - 1e-9));
      assertThat(flows[2]).isCloseTo(groups.get(g).usual().flows()[2], within(1e-15));
    }
  }

  /**
   * Against the optimum by trying everything: three kinds of plant with three emitters and a
   * smaller rating to start with, up to 18^3 ways. So few emitters make for coarse steps.
   */
  @Test
  void theSearchComesCloseToTheBestOfAllWays() {
    int seeds = 100;
    int close = 0;
    double gaps = 0;
    for (int seed = 0; seed < seeds; seed++) {
      List<StagedChoice.Group> groups = new ArrayList<>();
      for (StagedChoice.Group g : zone(new Random(seed), 3)) {
        groups.add(group(g.number(), g.need(), FOUR, 3, 1));
      }
      StagedChoice.Outcome found = StagedChoice.best(groups, limits(100));
      double best = found.before().cost();
      for (EmitterOption a : groups.get(0).options()) {
        for (EmitterOption b : groups.get(1).options()) {
          for (EmitterOption c : groups.get(2).options()) {
            best = Math.min(best, byHand(groups, List.of(a, b, c), found.before()));
          }
        }
      }
      double sum = found.after().cost();
      assertThat(byHand(groups, found.options(), found.before()))
          .as("seed " + seed)
          .isCloseTo(sum, within(1e-9));
      assertThat(sum).as("seed " + seed).isGreaterThanOrEqualTo(best * (1 - 1e-9));
      close += sum <= best * 1.01 ? 1 : 0;
      gaps += sum / best - 1;
    }
    assertThat(close).isGreaterThanOrEqualTo(75);
    assertThat(gaps / seeds).isLessThan(0.05);
  }

  /** The sum written out anew from its definition; infinite where a limit is not kept. */
  private static double byHand(
      List<StagedChoice.Group> groups, List<EmitterOption> chosen, StagedChoice.Score before) {
    double[] days = {31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    double sum = 0;
    double worst = 1;
    for (int g = 0; g < groups.size(); g++) {
      sum += groups.get(g).number() * chosen.get(g).pieces() * 0.1;
    }
    for (int y = 0; y < YEARS; y++) {
      double volume = 0;
      double longest = 0;
      double longestBefore = 0;
      double[] peakGets = new double[groups.size()];
      double[] peakNeeds = new double[groups.size()];
      for (int m = 0; m < 12; m++) {
        double t = 0;
        for (int g = 0; g < groups.size(); g++) {
          t = Math.max(t, groups.get(g).need()[y][m] * 86_400 / chosen.get(g).flows()[y]);
        }
        longest = Math.max(longest, t);
        longestBefore = Math.max(longestBefore, before.seconds()[y * 12 + m]);
        for (int g = 0; g < groups.size(); g++) {
          double gets = chosen.get(g).flows()[y] * t;
          double needs = groups.get(g).need()[y][m] * 86_400;
          volume += groups.get(g).number() * days[m] * gets;
          sum += groups.get(g).number() * days[m] * 2 * Math.max(0, gets - 1.5 * needs);
          if (needs > peakNeeds[g]) {
            peakNeeds[g] = needs;
            peakGets[g] = gets;
          }
        }
      }
      for (int g = 0; g < groups.size(); g++) {
        if (peakGets[g] - peakNeeds[g] > 2e-3) {
          worst = Math.max(worst, peakGets[g] / peakNeeds[g]);
        }
      }
      sum += volume;
      if (volume > before.volume()[y] * (1 + 1e-9)
          || longest > Math.max(7200, longestBefore) * (1 + 1e-9)) {
        return Double.POSITIVE_INFINITY;
      }
    }
    return worst > before.worst() * (1 + 1e-9)
        ? Double.POSITIVE_INFINITY
        : sum + 0.05 * before.sum() * (worst - 1);
  }
}
