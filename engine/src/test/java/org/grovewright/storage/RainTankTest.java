package org.grovewright.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class RainTankTest {
  /**
   * A roof of 11 m by 4.55 m, twice over, with 80 % runoff under 600 mm brings 48,048 L; worked
   * example of a permaculture page on roof water (which rounds the roof to 100.1 m2), read.
   */
  @Test
  void aYearOfRainOnARoof() {
    RainTank tank = new RainTank(10, 2 * 11 * 4.55, 0.80, 0, 1);
    double[] caught = tank.caught(new double[] {0.2, 0, 0.3, 0.1});
    double sum = 0;
    for (double day : caught) {
      sum += day;
    }
    assertThat(sum).isCloseTo(48.048, within(1e-9));
  }

  /** By hand: 50 m2, all of it runs off, 20 L of first flush, a tank of 1 m3, 400 L a day. */
  @Test
  void fiveDaysByHand() {
    RainTank tank = new RainTank(1, 50, 1, 0.02, 1);
    double[] rain = {0.010, 0.012, 0, 0.0002, 0};
    double[] wanted = {0, 0, 0.4, 0.4, 0.4};
    RainTank.Days days = tank.through(rain, wanted, 0.1);
    // 500 - 20; the flush of the second day is still out; 10 L are all flush.
    assertThat(days.caught()).containsExactly(new double[] {0.48, 0.6, 0, 0, 0}, within(1e-12));
    assertThat(days.spilled()).containsExactly(new double[] {0, 0.18, 0, 0, 0}, within(1e-12));
    assertThat(days.drawn()).containsExactly(new double[] {0, 0, 0.4, 0.4, 0.2}, within(1e-12));
    assertThat(days.missing()).containsExactly(new double[] {0, 0, 0, 0, 0.2}, within(1e-12));
    assertThat(days.level()).containsExactly(new double[] {0.58, 1, 0.6, 0.2, 0}, within(1e-12));
  }

  @Property(tries = 200)
  void noWaterIsLostAndALargerTankNeverLacksMore(
      @ForAll Random random,
      @ForAll @DoubleRange(min = 0.1, max = 20) double volume,
      @ForAll @DoubleRange(min = 0, max = 0.2) double flush) {
    double[] rain = new double[400];
    double[] wanted = new double[400];
    for (int i = 0; i < rain.length; i++) {
      rain[i] = random.nextInt(4) == 0 ? random.nextDouble() * 0.03 : 0;
      wanted[i] = random.nextDouble() * 0.5;
    }
    RainTank tank = new RainTank(volume, 40, 0.8, flush, 2);
    RainTank.Days days = tank.through(rain, wanted, volume / 2);
    RainTank.Days larger = tank.holding(1.5 * volume).through(rain, wanted, volume / 2);
    double level = volume / 2;
    double missing = 0;
    double missingFromLarger = 0;
    for (int i = 0; i < rain.length; i++) {
      level += days.caught()[i] - days.drawn()[i] - days.spilled()[i];
      assertThat(days.level()[i]).isCloseTo(level, within(1e-9)).isBetween(0.0, volume);
      assertThat(days.drawn()[i] + days.missing()[i]).isCloseTo(wanted[i], within(1e-12));
      missing += days.missing()[i];
      missingFromLarger += larger.missing()[i];
    }
    assertThat(missingFromLarger).isLessThanOrEqualTo(missing + 1e-9);
  }
}
