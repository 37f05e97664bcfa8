package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class EffectiveRainTest {
  @Test
  void followsTheTable() {
    // FAO Irrigation and Drainage Paper 24 (1977) table 34, the USDA-SCS table in millimetres at a
    // store of 75 mm, from memory.
    assertThat(EffectiveRain.monthlyMm(100, 150, 75)).isCloseTo(74, within(1.0));
    assertThat(EffectiveRain.monthlyMm(50, 100, 75)).isCloseTo(35, within(1.5));
    assertThat(EffectiveRain.monthlyMm(25, 200, 75)).isCloseTo(24, within(2.5));
    assertThat(EffectiveRain.monthlyMm(150, 200, 75)).isCloseTo(117, within(3.0));
  }

  @Test
  void followsTheFactorOfStorage() {
    // The same table's correction: 20, 25, 37.5, 50, 100, 150 and 175 mm, from memory.
    double[] store = {20, 25, 37.5, 50, 75, 100, 150, 175};
    double[] factor = {0.73, 0.77, 0.86, 0.93, 1.00, 1.02, 1.06, 1.07};
    for (int i = 0; i < store.length; i++) {
      assertThat(EffectiveRain.storageFactor(store[i])).isCloseTo(factor[i], within(0.015));
    }
  }

  @Test
  void isNeverMoreThanFellOrWasUsed() {
    assertThat(EffectiveRain.monthlyMm(0, 150, 75)).isZero();
    assertThat(EffectiveRain.monthlyMm(3, 600, 150)).isBetween(0.0, 3.0);
    assertThat(EffectiveRain.monthlyMm(300, 20, 75)).isEqualTo(20);
  }
}
