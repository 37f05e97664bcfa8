package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class CycleRuleTest {
  private static final double MM_PER_H = 1e-3 / 3600;

  @Test
  void aSoilThatDrinksFasterThanTheEmittersGiveNeedsNoPause() {
    CycleRule rule = new CycleRule(6 * MM_PER_H, 13 * MM_PER_H, 0.005);

    assertThat(rule.limits()).isFalse();
    assertThat(rule.soakS()).isZero();
  }

  /**
   * 15 mm/h on a soil that takes 5 mm/h fills hollows of 5 mm in half an hour, drunk in an hour.
   */
  @Test
  void aSlowSoilFillsItsHollowsAndThenRests() {
    CycleRule rule = new CycleRule(15 * MM_PER_H, 5 * MM_PER_H, 0.005);

    assertThat(rule.longestRunMinutes()).isEqualTo(30);
    assertThat(rule.soakS()).isEqualTo(3600);
  }
}
