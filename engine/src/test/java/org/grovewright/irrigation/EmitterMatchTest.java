package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Market;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/**
 * Emitters matched to needs beside all combinations of them, added up anew here from the rule that
 * one valve runs until the plant served worst has its need.
 */
class EmitterMatchTest {
  private static final double LITRES_AN_HOUR = 1 / 3.6e6;
  private static final double LITRES_A_DAY = 1e-3 / 86_400;
  private static final double MONTH_S = 365.25 / 12 * 86_400;

  /** Ten years of water at 2 a cubic metre, for 1 m3/s in one month of each year. */
  private static final double WATER_VALUE = 10 * 2 * MONTH_S;

  private static final double NO_LIMIT = 1;

  private static EmitterType emitter(double litresAnHour) {
    return new EmitterType(
        "emitter.test-" + litresAnHour,
        "test emitter",
        litresAnHour * LITRES_AN_HOUR,
        100_000,
        0,
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

  private static List<EmitterMatch.Option> options(int least, int most, double... ratings) {
    List<EmitterMatch.Option> options = new ArrayList<>();
    for (double rating : ratings) {
      for (int count = least; count <= most; count++) {
        double flow = count * rating * LITRES_AN_HOUR;
        double spread = 1 - 1.27 * 0.05 / Math.sqrt(count);
        options.add(new EmitterMatch.Option(emitter(rating), count, flow, spread, 0.4 * count));
      }
    }
    return options;
  }

  /** Needs through the year of a plant, with a peak somewhere and rain somewhere. */
  private static double[] need(Random random) {
    double peak = (1 + 30 * random.nextDouble()) * LITRES_A_DAY;
    double phase = random.nextInt(3);
    double base = random.nextDouble();
    double[] need = new double[12];
    for (int m = 0; m < 12; m++) {
      double season = 0.5 + 0.5 * Math.cos(2 * Math.PI * (m - phase) / 12);
      need[m] = peak * Math.max(0, base + (1 - base) * season - 0.3 * random.nextDouble());
    }
    return need;
  }

  /** Emitters and water of a choice, by the rule itself. */
  private static double money(List<EmitterMatch.Plant> plants, int[] chosen) {
    double money = 0;
    double flow = 0;
    double runs = 0;
    for (int i = 0; i < chosen.length; i++) {
      EmitterMatch.Option option = plants.get(i).options().get(chosen[i]);
      money += option.money();
      flow += option.flowM3PerS();
    }
    for (int m = 0; m < 12; m++) {
      double longest = 0;
      for (int i = 0; i < chosen.length; i++) {
        EmitterMatch.Option option = plants.get(i).options().get(chosen[i]);
        longest =
            Math.max(longest, plants.get(i).need()[m] / (option.flowM3PerS() * option.spread()));
      }
      runs += longest;
    }
    return money + WATER_VALUE * runs * flow;
  }

  private static double least(List<EmitterMatch.Plant> plants, double limit) {
    int[] chosen = new int[plants.size()];
    double least = Double.POSITIVE_INFINITY;
    while (true) {
      double flow = 0;
      for (int i = 0; i < chosen.length; i++) {
        flow += plants.get(i).options().get(chosen[i]).flowM3PerS();
      }
      if (flow <= limit) {
        least = Math.min(least, money(plants, chosen));
      }
      int i = 0;
      while (i < chosen.length && ++chosen[i] == plants.get(i).options().size()) {
        chosen[i++] = 0;
      }
      if (i == chosen.length) {
        return least;
      }
    }
  }

  /** Bounds of what was found: see docs/watering-design.md. */
  @Test
  void comesCloseToTheBestOfAllCombinations(TestReporter reporter) {
    Random random = new Random(7);
    int exact = 0;
    double worst = 0;
    double sum = 0;
    int cases = 200;
    for (int c = 0; c < cases; c++) {
      List<EmitterMatch.Plant> plants = new ArrayList<>();
      int n = 2 + random.nextInt(3);
      for (int i = 0; i < n; i++) {
        boolean tree = random.nextBoolean();
        plants.add(
            new EmitterMatch.Plant(
                need(random), tree ? options(2, 6, 2, 4, 8) : options(1, 4, 2, 4, 8)));
      }
      EmitterMatch.Choice found = new EmitterMatch(plants, WATER_VALUE, 0, NO_LIMIT).best(0.2);
      assertThat(found.money()).isCloseTo(money(plants, found.options()), within(1e-6));
      double gap = found.money() / least(plants, NO_LIMIT) - 1;
      assertThat(gap).isGreaterThan(-1e-9);
      exact += gap < 1e-6 ? 1 : 0;
      worst = Math.max(worst, gap);
      sum += gap;
    }
    reporter.publishEntry(
        "matching gap",
        String.format(
            Locale.ROOT,
            "exact in %d of %d, mean %.3f %%, worst %.2f %%",
            exact,
            cases,
            100 * sum / cases,
            100 * worst));
    assertThat(exact).isGreaterThanOrEqualTo(EXACT);
    assertThat(worst).isLessThan(WORST);
    assertThat(sum / cases).isLessThan(MEAN);
  }

  private static final int EXACT = 150;
  private static final double WORST = 0.1;
  private static final double MEAN = 0.01;

  @Test
  void keepsTheFlowThatAZoneMayDraw() {
    Random random = new Random(11);
    for (int c = 0; c < 50; c++) {
      List<EmitterMatch.Plant> plants = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        plants.add(new EmitterMatch.Plant(need(random), options(2, 6, 2, 4, 8)));
      }
      double limit = (12 + random.nextInt(20)) * LITRES_AN_HOUR;
      EmitterMatch.Choice found = new EmitterMatch(plants, WATER_VALUE, 0, limit).best(0.2);
      double flow = 0;
      for (int i = 0; i < 3; i++) {
        flow += plants.get(i).options().get(found.options()[i]).flowM3PerS();
      }
      assertThat(flow).isLessThanOrEqualTo(limit * (1 + 1e-9));
    }
  }

  @Test
  void reachesTheFlowThatTheRegulatorNeeds() {
    double[] need = new double[12];
    java.util.Arrays.fill(need, 3 * LITRES_A_DAY);
    List<EmitterMatch.Plant> plants =
        List.of(
            new EmitterMatch.Plant(need, options(1, 6, 2, 4, 8)),
            new EmitterMatch.Plant(need, options(1, 6, 2, 4, 8)));
    double least = 25 * LITRES_AN_HOUR;
    EmitterMatch.Choice found = new EmitterMatch(plants, WATER_VALUE, least, NO_LIMIT).best(0.2);
    double rated = 0;
    for (int i = 0; i < 2; i++) {
      EmitterMatch.Option o = plants.get(i).options().get(found.options()[i]);
      rated += o.count() * o.type().nominalFlowM3PerS();
    }
    assertThat(rated).isGreaterThanOrEqualTo(least * (1 - 1e-9));
  }

  /** With equal needs and equal plants, no emitters waste less than equal ones. */
  @Test
  void givesEqualPlantsTheSame() {
    double[] need = new double[12];
    java.util.Arrays.fill(need, 10 * LITRES_A_DAY);
    List<EmitterMatch.Plant> plants = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      plants.add(new EmitterMatch.Plant(need, options(2, 6, 2, 4, 8)));
    }
    int[] found = new EmitterMatch(plants, WATER_VALUE, 0, NO_LIMIT).best(0.2).options();
    for (int option : found) {
      assertThat(option).isEqualTo(found[0]);
    }
  }
}
