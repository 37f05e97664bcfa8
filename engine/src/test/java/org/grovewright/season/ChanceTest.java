package org.grovewright.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ChanceTest {
  /** Output of binom.test of the R language, as printed in a public account of that function. */
  @Test
  void boundsAreThoseOfTheExactBinomialTest() {
    Chance some = new Chance(9, 24);
    assertThat(some.low(0.95)).isCloseTo(0.1879929, within(5e-8));
    assertThat(some.high(0.95)).isCloseTo(0.5940636, within(5e-8));
    Chance rare = new Chance(1, 1497);
    assertThat(rare.low(0.9)).isCloseTo(3.426347e-5, within(5e-12));
    assertThat(rare.high(0.9)).isCloseTo(3.164954e-3, within(5e-10));
  }

  /**
   * Where it never or always happened, the bound has a closed form: p^n is half of what is left.
   */
  @Test
  void neverAndAlwaysAreOpenOnOneSide() {
    Chance never = new Chance(0, 30);
    assertThat(never.low()).isZero();
    assertThat(never.high()).isCloseTo(1 - Math.pow(0.05, 1 / 30.0), within(1e-12));
    Chance always = new Chance(30, 30);
    assertThat(always.low()).isCloseTo(Math.pow(0.05, 1 / 30.0), within(1e-12));
    assertThat(always.high()).isEqualTo(1);
  }

  @Test
  void theBoundsHoldTheShareAndCloseInWithMoreYears() {
    for (int times = 0; times <= 20; times++) {
      Chance few = new Chance(times, 20);
      Chance many = new Chance(10 * times, 200);
      assertThat(few.share()).isBetween(few.low(), few.high());
      assertThat(many.high() - many.low()).isLessThan(few.high() - few.low());
    }
  }

  @Test
  void onceInTenYears() {
    // One in ten each year: 0.9^10 of all tens of years have none.
    assertThat(Chance.atLeastOnce(0.1, 10)).isCloseTo(0.6513215599, within(1e-10));
    assertThat(Chance.atLeastOnce(0, 10)).isZero();
    assertThat(Chance.atLeastOnce(1, 10)).isEqualTo(1);
  }

  @Test
  void impossibleCountsAreRefused() {
    assertThatThrownBy(() -> new Chance(3, 2)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Chance(0, 0)).isInstanceOf(IllegalArgumentException.class);
  }
}
