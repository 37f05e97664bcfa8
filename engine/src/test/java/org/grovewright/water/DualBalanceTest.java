package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** The worked examples of FAO Irrigation and Drainage Paper 56 (1998), read in the paper itself. */
class DualBalanceTest {
  /** Upper limit of Examples 35 and 38: u2 1.6 m/s, RHmin 35 %, h 0.3 m. */
  private static final double GREATEST =
      1.2 + (0.04 * (1.6 - 2) - 0.004 * (35 - 45)) * Math.pow(0.3 / 3, 0.3);

  private static final double[] ET0 = {4.5, 5.0, 3.9, 4.2, 4.8, 2.7, 5.8, 5.1, 4.7, 5.2};

  @Test
  void bareSoilDriesAsInExample31() {
    // Bare loam, Kcb 0.15, ET0 4.5, TEW 20, REW 9, Kc max 1.20, few 1.
    double[] kr = {1, 1, 0.96, 0.55, 0.31, 0.18, 0.10, 0.06, 0.03, 0.02};
    double[] evaporation = {4.73, 4.73, 4.53, 2.59, 1.47, 0.84, 0.48, 0.27, 0.16, 0.09};
    double[] end = {4.73, 9.45, 13.98, 16.57, 18.04, 18.88, 19.36, 19.64, 19.79, 19.88};
    DualBalance balance = new DualBalance(9, 20, 130, 0.5, false, 0);
    for (int i = 0; i < 10; i++) {
      balance.day(4.5, 0, 0, 0.15, 0.15, 1.20, 1, 1, 5);
      assertThat(balance.reduction()).as("day %s", i + 1).isCloseTo(kr[i], within(0.006));
      assertThat(balance.evaporationMm()).isCloseTo(evaporation[i], within(0.006));
      assertThat(balance.surfaceMissingMm()).isCloseTo(end[i], within(0.006));
    }
  }

  @Test
  void wettingsOfPartOfTheSoilAsInExamples32To34() {
    // Cotton: Kcb 0.9, Kc max 1.30, wet surface; few 0.47, 0.3 and 0.19 give Ke 0.40, 0.39, 0.25.
    double[] exposed = {0.47, 0.30, 0.3 * (1 - 2.0 / 3 * 0.53)};
    double[] ke = {0.40, 0.39, 0.25};
    // Kcb + Ke as printed on pages 150 and 151; the example ends there, times ET0 of 7 mm is ours.
    double[] kc = {1.30, 1.29, 1.15};
    double[] etc = {9.1, 9.0, 8.1};
    // Of 0.53 covered: what is left bare; wetted 0.3 by furrows; wetted 0.3 by emitters beneath the
    // crop, of which two thirds of the cover are taken off; equation 75 and Example 34.
    assertThat(exposed[0]).isCloseTo(1 - 0.53, within(0.005));
    assertThat(exposed[1]).isCloseTo(Math.min(1 - 0.53, 0.3), within(1e-9));
    assertThat(exposed[2]).isCloseTo(0.19, within(0.005));
    for (int i = 0; i < 3; i++) {
      DualBalance balance = new DualBalance(9, 20, 130, 0.5, false, 0);
      balance.day(7, 0, 0, 0.9, 0.9, 1.30, 1, exposed[i], 1);
      assertThat(balance.reduction()).isEqualTo(1);
      assertThat(balance.evaporationCoefficient()).isCloseTo(ke[i], within(0.005));
      assertThat(0.9 + balance.evaporationCoefficient()).isCloseTo(kc[i], within(0.005));
      assertThat(balance.evaporationMm() + balance.transpirationMm())
          .isCloseTo(etc[i], within(0.05));
    }
    double limit = 1.2 + KcCurve.weatherShift(3, 0.20, 1);
    assertThat(limit).isCloseTo(1.30, within(0.005));
  }

  @Test
  void tenDaysOfExample35() {
    double[] exposed = {0.80, 0.80, 0.80, 0.80, 0.80, 0.89, 0.88, 0.87, 0.87, 0.86};
    double[] kcb = {0.30, 0.31, 0.32, 0.33, 0.34, 0.36, 0.37, 0.38, 0.39, 0.40};
    double[] deStart = {0, 5, 11, 14, 16, 11, 13, 16, 17, 18};
    double[] kr = {1.00, 1.00, 0.70, 0.40, 0.20, 0.75, 0.53, 0.20, 0.09, 0.05};
    double[] ke = {0.91, 0.90, 0.62, 0.35, 0.18, 0.64, 0.45, 0.17, 0.08, 0.04};
    double[] drained = {32, 0, 0, 0, 0, 0, 0, 0, 0, 0};
    double[] deEnd = {5, 11, 14, 16, 17, 13, 16, 17, 18, 18};
    // On day 3 the paper's E of 2.8 and ETc of 4.0 do not follow from its own Ke of 0.62 and E/few
    // of 3.0 mm; 0.8 x 3.0 and that with Kcb ET0 do.
    double[] evaporation = {4.1, 4.5, 2.4, 1.5, 0.8, 1.7, 2.6, 0.9, 0.4, 0.2};
    double[] etc = {5.5, 6.1, 3.7, 2.9, 2.5, 2.7, 4.7, 2.8, 2.2, 2.3};
    double total = WettedSurface.totalEvaporableMm(0.23, 0.10, 0.1);
    assertThat(total).isCloseTo(18, within(1e-9));
    DualBalance balance = new DualBalance(8, total, 130, 0.6, false, 0);
    balance.start(total, 0);
    for (int i = 0; i < 10; i++) {
      double rain = i == 5 ? 6 : 0;
      double irrigation = i == 0 ? 40 : 0;
      double wetted = i < 5 ? 0.8 : 1;
      // A deep root zone, for the example has no stress.
      balance.day(ET0[i], rain, irrigation, kcb[i], kcb[i], GREATEST, wetted, exposed[i], 3);
      String day = "day " + (i + 1);
      assertThat(balance.surfaceStartMm()).as(day).isCloseTo(deStart[i], within(0.7));
      // The paper's steps are rounded; on day 6 its Kr of 0.75 is 0.70 by its own De of 11 mm.
      assertThat(balance.reduction()).as(day).isCloseTo(kr[i], within(0.05));
      assertThat(balance.evaporationCoefficient()).as(day).isCloseTo(ke[i], within(0.05));
      assertThat(balance.surfaceDrainageMm()).as(day).isCloseTo(drained[i], within(0.5));
      assertThat(balance.surfaceMissingMm()).as(day).isCloseTo(deEnd[i], within(0.7));
      assertThat(balance.evaporationMm()).as(day).isCloseTo(evaporation[i], within(0.13));
      assertThat(balance.evaporationMm() + balance.transpirationMm())
          .as(day)
          .isCloseTo(etc[i], within(0.15));
    }
  }

  @Test
  void readilyAvailableWaterOfExample36() {
    // Loamy sand, silt and silty clay of 90, 170 and 120 mm/m; onion, tomato and maize.
    double[] available = {90, 170, 120};
    double[] depth = {0.4, 0.8, 1.2};
    double[] p = {0.30, 0.40, 0.55};
    double[][] taw = {{36, 72, 108}, {68, 136, 204}, {48, 96, 144}};
    double[][] raw = {{11, 29, 59}, {20, 54, 112}, {14, 38, 79}};
    for (int soil = 0; soil < 3; soil++) {
      for (int crop = 0; crop < 3; crop++) {
        DualBalance balance = new DualBalance(8, 18, available[soil], p[crop], false, 0);
        balance.day(5, 0, 0, 0, 0, 1.2, 1, 1, depth[crop]);
        assertThat(balance.totalAvailableMm()).isCloseTo(taw[soil][crop], within(0.5));
        assertThat(balance.readilyAvailableMm()).isCloseTo(raw[soil][crop], within(0.5));
      }
    }
  }

  @Test
  void stressOfExample37() {
    // Tomato, Zr 0.8 m, p 0.40, 0.32 and 0.12, 55 mm missing, ET0 5 mm, Kc 1.2.
    double[] ks = {1.00, 1.00, 0.97, 0.91, 0.85, 0.80, 0.75, 0.70, 0.66, 0.62};
    double[] etc = {6.0, 6.0, 5.8, 5.4, 5.1, 4.8, 4.5, 4.2, 3.9, 3.7};
    double[] end = {61.0, 67.0, 72.8, 78.3, 83.4, 88.2, 92.6, 96.9, 100.8, 104.5};
    DualBalance balance = new DualBalance(8, 18, 200, 0.40, false, 0);
    // A dry surface and no evaporation: the example has a single coefficient.
    balance.start(18, 55);
    for (int i = 0; i < 10; i++) {
      balance.day(5, 0, 0, 1.2, 1.2, 1.25, 1, 1, 0.8);
      String day = "day " + (i + 1);
      assertThat(balance.totalAvailableMm()).isCloseTo(160, within(1e-9));
      assertThat(balance.readilyAvailableMm()).isCloseTo(64, within(1e-9));
      assertThat(balance.stress()).as(day).isCloseTo(ks[i], within(0.015));
      assertThat(balance.transpirationMm()).as(day).isCloseTo(etc[i], within(0.06));
      assertThat(balance.rootMissingMm()).as(day).isCloseTo(end[i], within(0.15));
    }
  }

  @Test
  void irrigationSchedulingOfExample38() {
    // Example 35 with p 0.6, Zr from 0.30 to 0.35 m and RAW missing at the start.
    double[] exposed = {0.80, 0.80, 0.80, 0.80, 0.80, 0.89, 0.88, 0.87, 0.87, 0.86};
    double[] kcb = {0.30, 0.31, 0.32, 0.33, 0.34, 0.36, 0.37, 0.38, 0.39, 0.40};
    double[] raw = {23, 24, 24, 25, 25, 26, 26, 26, 27, 27};
    double[] start = {0, 5, 12, 16, 18, 15, 18, 22, 25, 0};
    double[] etc = {5.5, 6.1, 3.7, 2.9, 2.5, 2.7, 4.7, 2.8, 2.2, 6.3};
    double[] end = {0, 12, 16, 18, 21, 18, 22, 25, 27, 6};
    DualBalance balance = new DualBalance(8, 18, 130, 0.6, false, 0);
    balance.start(18, 78 * 0.30);
    for (int i = 0; i < 10; i++) {
      double depth = 0.30 + 0.05 * i / 9;
      double rain = i == 5 ? 6 : 0;
      double irrigation = i == 0 ? 40 : i == 9 ? balance.rootMissingMm() : 0;
      double wetted = i < 5 || i == 9 ? 0.8 : 1;
      balance.day(ET0[i], rain, irrigation, kcb[i], kcb[i], GREATEST, wetted, exposed[i], depth);
      String day = "day " + (i + 1);
      assertThat(balance.readilyAvailableMm()).as(day).isCloseTo(raw[i], within(0.6));
      assertThat(balance.rootStartMm()).as(day).isCloseTo(start[i], within(0.7));
      assertThat(balance.stress()).as(day).isEqualTo(1);
      assertThat(balance.evaporationMm() + balance.transpirationMm())
          .as(day)
          .isCloseTo(etc[i], within(0.15));
      assertThat(balance.rootMissingMm()).as(day).isCloseTo(end[i], within(0.7));
      if (i == 0) {
        // Equation 88 lets the day's evapotranspiration come before the loss of what is too much:
        // 40 - 23.4 - 5.5 is lost and nothing is missing. The table of the example loses 17 at once
        // and has 5 missing; we go on from there.
        assertThat(balance.percolationMm()).isCloseTo(40 - 23.4 - 5.5, within(0.1));
        balance.start(balance.surfaceMissingMm(), 5.5);
      } else {
        assertThat(balance.percolationMm()).as(day).isZero();
      }
    }
  }

  /**
   * Example 39, page 182: beans, 110 mm in all and 44 mm with ease; stress without salt at eleven
   * dryings. The second column, under salt, is for a reduction of growth by salt that the program
   * does not compute; its ratio of soil to irrigation water is in {@link LeachingTest}.
   */
  @Test
  void stressOfExample39() {
    double[] missing = {0, 35, 40, 44, 50, 60, 70, 80, 90, 100, 110};
    double[] ks = {1, 1, 1, 1, 0.91, 0.76, 0.61, 0.45, 0.30, 0.15, 0};
    for (int i = 0; i < missing.length; i++) {
      DualBalance balance = new DualBalance(8, 18, 110, 0.4, false, 0);
      balance.start(18, missing[i]);
      balance.day(5, 0, 0, 1.15, 1.15, 1.2, 1, 0.01, 1);
      assertThat(balance.totalAvailableMm()).isCloseTo(110, within(1e-9));
      assertThat(balance.readilyAvailableMm()).isCloseTo(44, within(1e-9));
      assertThat(balance.stress()).as("%s mm", missing[i]).isCloseTo(ks[i], within(0.0051));
      double left = 110 - missing[i];
      assertThat(balance.transpirationMm())
          .isCloseTo(Math.min(left, balance.stress() * 1.15 * 5), within(1e-9));
    }
  }

  @Test
  void mulchReducesEvaporationByItsShare() {
    // FAO-56 chapter 10: 5 % for each 10 % of ground covered by organic mulch.
    DualBalance bare = new DualBalance(9, 20, 130, 0.5, true, 0);
    DualBalance mulched = new DualBalance(9, 20, 130, 0.5, true, 0.5);
    bare.day(5, 0, 0, 0.5, 0.5, 1.2, 1, 0.6, 1);
    mulched.day(5, 0, 0, 0.5, 0.5, 1.2, 1, 0.6, 1);
    assertThat(mulched.evaporationMm()).isCloseTo(0.5 * bare.evaporationMm(), within(1e-12));
    assertThat(mulched.transpirationMm()).isEqualTo(bare.transpirationMm());
  }

  @Property(tries = 300)
  void noWaterIsLostOrMade(
      @ForAll Random random,
      @ForAll @DoubleRange(min = 0.1, max = 4) double basal,
      @ForAll @DoubleRange(min = 0.05, max = 0.9) double exposed,
      @ForAll @DoubleRange(min = 0.2, max = 2) double depth) {
    DualBalance balance = new DualBalance(9, 20, 130, 0.5, true, 0.3);
    balance.start(5, 10);
    double missing = 10;
    double roots = depth;
    for (int i = 0; i < 400; i++) {
      double rain = random.nextInt(5) == 0 ? random.nextDouble() * 60 : 0;
      double irrigation = random.nextInt(4) == 0 ? random.nextDouble() * 20 : 0;
      balance.day(
          random.nextDouble() * 9, rain, irrigation, basal, 0.3, 1.2, exposed, exposed, roots);
      double used = balance.evaporationMm() + balance.transpirationMm();
      missing += used + balance.percolationMm() - rain - irrigation;
      assertThat(balance.rootMissingMm()).isCloseTo(missing, within(1e-6));
      assertThat(balance.rootMissingMm()).isBetween(-1e-9, balance.totalAvailableMm() + 1e-9);
      assertThat(balance.surfaceMissingMm()).isBetween(0.0, 20.0);
      assertThat(balance.stress()).isBetween(0.0, 1.0);
      roots += 0.001;
    }
  }
}
