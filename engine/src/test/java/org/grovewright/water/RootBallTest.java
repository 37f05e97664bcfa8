package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.growth.Growth;
import org.grovewright.model.Planting;
import org.junit.jupiter.api.Test;

/** A root zone of two layers against what must hold in its limits. */
class RootBallTest {
  private static final Catalogue CATALOGUE = TestCatalogue.of(TestCatalogue.evergreen());

  private static DualBalance soil() {
    return new DualBalance(9, 20, 130, 0.5, true, 0.3);
  }

  @Property(tries = 200)
  void equalSoilsThatEvenOutAreOneLayer(
      @ForAll Random random,
      @ForAll @DoubleRange(min = 0.1, max = 2) double basal,
      @ForAll @DoubleRange(min = 0.05, max = 0.9) double volume,
      @ForAll @DoubleRange(min = 0, max = 1) double roots,
      @ForAll @DoubleRange(min = 0, max = 1) double area,
      @ForAll @DoubleRange(min = 0, max = 1) double compensation) {
    DualBalance one = soil();
    DualBalance two = soil();
    double depth = 0.8;
    two.ball(130 * depth * volume, 1 - volume, roots, area, 1, compensation);
    for (int i = 0; i < 300; i++) {
      double et0 = random.nextDouble() * 7;
      double rain = random.nextInt(6) == 0 ? random.nextDouble() * 40 : 0;
      double irrigation = random.nextInt(5) == 0 ? random.nextDouble() * 20 : 0;
      one.day(et0, rain, irrigation, basal, 0.3, 1.2, 0.4, 0.3, depth);
      two.day(et0, rain, irrigation, basal, 0.3, 1.2, 0.4, 0.3, depth);
      assertThat(two.totalAvailableMm()).isCloseTo(one.totalAvailableMm(), within(1e-9));
      // On a day on which the one store is drawn empty its last water goes to the roots wherever it
      // is, while few roots in a large layer leave some behind: from there on the two differ.
      if (one.transpirationMm() < one.stress() * basal * et0 - 1e-12) {
        return;
      }
      // A layer can give no more than it holds, which many roots in little soil can ask of it where
      // one store would not.
      double tight = 21 * basal / one.totalAvailableMm();
      boolean ballIsAmple = volume > tight && roots < 3 * volume;
      boolean restIsAmple = 1 - volume > tight && 1 - roots < 3 * (1 - volume);
      if (ballIsAmple && restIsAmple) {
        assertThat(two.stress()).isCloseTo(one.stress(), within(1e-9));
        assertThat(two.rootMissingMm()).isCloseTo(one.rootMissingMm(), within(1e-6));
        assertThat(two.percolationMm()).isCloseTo(one.percolationMm(), within(1e-6));
        assertThat(two.evaporationMm()).isCloseTo(one.evaporationMm(), within(1e-9));
        assertThat(two.uptakeMissingMm()).isBetween(0.0, one.totalAvailableMm());
      }
    }
  }

  @Property(tries = 200)
  void noWaterIsLostOrMadeInTwoLayers(
      @ForAll Random random,
      @ForAll @DoubleRange(min = 0.1, max = 3) double basal,
      @ForAll @DoubleRange(min = 0.05, max = 0.9) double volume,
      @ForAll @DoubleRange(min = 0, max = 1) double roots,
      @ForAll @DoubleRange(min = 0, max = 1) double exchange) {
    DualBalance balance = soil();
    double missing = 0;
    for (int i = 0; i < 400; i++) {
      if (i % 50 == 0) {
        // The ball becomes a smaller part of a wider root zone.
        double part = volume / (1 + i / 100.0);
        balance.ball(180 * 0.6 * part, 1 - part, roots / (1 + i / 100.0), part, exchange, 1);
      }
      double rain = random.nextInt(5) == 0 ? random.nextDouble() * 60 : 0;
      double irrigation = random.nextInt(4) == 0 ? random.nextDouble() * 20 : 0;
      balance.day(random.nextDouble() * 9, rain, irrigation, basal, 0.3, 1.2, 0.5, 0.4, 0.6);
      missing +=
          balance.evaporationMm()
              + balance.transpirationMm()
              + balance.percolationMm()
              - rain
              - irrigation;
      assertThat(balance.rootMissingMm()).isCloseTo(missing, within(1e-6));
      assertThat(balance.ballMissingMm()).isBetween(-1e-9, balance.rootMissingMm() + 1e-9);
      assertThat(balance.stress()).isBetween(0.0, 1.0);
      assertThat(balance.percolationMm()).isGreaterThanOrEqualTo(0);
    }
  }

  @Test
  void rootsInTheBallAloneDrinkFromItAlone() {
    // By hand: a ball that holds 18 mm, all roots in it, nothing creeps, 3 mm a day, p kept at 0.5:
    // 9 mm are taken with ease on three days, then (18 - 9) / 9 = 1 still at 9 missing on the
    // fourth, and (18 - 12) / 9 = 2/3 on the fifth.
    DualBalance balance = new DualBalance(9, 20, 130, 0.5, false, 0);
    balance.start(20, 0);
    balance.ball(18, 0.7, 1, 0.3, 0, 1);
    double[] stress = {1, 1, 1, 1, 2.0 / 3};
    for (double expected : stress) {
      balance.day(5, 0, 0, 0.6, 0.6, 1.2, 1, 0.01, 0.6);
      assertThat(balance.stress()).isCloseTo(expected, within(0.01));
    }
    // 3 + 3 + 3 + 3 + 2 mm are gone, and the soil around still has all its water.
    assertThat(balance.ballMissingMm()).isCloseTo(14, within(0.05));
    assertThat(balance.rootMissingMm()).isCloseTo(14, within(0.05));
    // A single layer of the same soils would not feel that.
    DualBalance one = new DualBalance(9, 20, 130, 0.5, false, 0);
    one.start(20, 14);
    one.day(5, 0, 0, 0.6, 0.6, 1.2, 1, 0.01, 0.6);
    assertThat(one.stress()).isEqualTo(1);
  }

  @Test
  void rootsInMoistSoilMakeUpForThoseInADryBall() {
    // Four tenths of the roots sit in a dry ball; the six tenths around may take up to twice
    // theirs.
    DualBalance alone = new DualBalance(9, 20, 130, 0.5, false, 0);
    DualBalance helped = new DualBalance(9, 20, 130, 0.5, false, 0);
    for (DualBalance balance : new DualBalance[] {alone, helped}) {
      balance.start(20, 0);
      balance.ball(6, 0.9, 1, 0.1, 0, 0);
      for (int i = 0; i < 30; i++) {
        balance.day(5, 0, 0, 0.6, 0.6, 1.2, 1, 0.01, 1);
      }
    }
    alone.ball(6, 0.9, 0.4, 0.1, 0, 0);
    helped.ball(6, 0.9, 0.4, 0.1, 0, 1);
    alone.day(5, 0, 0, 0.6, 0.6, 1.2, 1, 0.01, 1);
    helped.day(5, 0, 0, 0.6, 0.6, 1.2, 1, 0.01, 1);
    assertThat(alone.stress()).isCloseTo(0.6, within(0.01));
    assertThat(helped.stress()).isCloseTo(1, within(0.01));
  }

  @Test
  void aPlantGrowsOutOfItsBall() {
    Planting tree = TestGroves.plant("tree", "evergreen", 25, TestGroves.START);
    Growth growth =
        Growth.of(tree, TestCatalogue.evergreen(), TestGroves.START, CATALOGUE.constants());
    RootBall ball = RootBall.of(tree, growth, CATALOGUE);
    double before = 1;
    assertThat(ball.rootShare(growth.rootRadiusM(0), growth.rootDepthM(0)))
        .isCloseTo(1, within(1e-9));
    for (double years = 0.1; years < 5; years += 0.1) {
      double share = ball.rootShare(growth.rootRadiusM(years), growth.rootDepthM(years));
      assertThat(share).isLessThanOrEqualTo(before);
      before = share;
    }
    assertThat(before).isZero();
    Planting bare = TestGroves.plant("bare", "evergreen", 0, TestGroves.START);
    assertThat(RootBall.of(bare, growth, CATALOGUE).rootShare(0.2, 0.3)).isZero();
  }
}
