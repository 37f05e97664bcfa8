package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class ValueStepsTest {
  @Test
  void stepsAreRoundAndNotFinerThanMatters() {
    ValueSteps steps = ValueSteps.over(1.305, 1.465, 0.02);
    assertThat(steps.label(0, 2, "bar")).isEqualTo("1.30 to 1.35 bar");
    assertThat(steps.count()).isEqualTo(4);
    assertThat(steps.of(1.36)).isEqualTo(1);
    ValueSteps same = ValueSteps.over(1.3, 1.3, 0.02);
    assertThat(same.count()).isEqualTo(1);
    assertThat(same.step()).isEqualTo(0.02);
  }

  @Property
  void everyValueLiesInItsStep(
      @ForAll @DoubleRange(min = 0, max = 500) double a,
      @ForAll @DoubleRange(min = 0, max = 500) double b,
      @ForAll @DoubleRange(min = 0, max = 1) double share) {
    double least = Math.min(a, b);
    double most = Math.max(a, b);
    ValueSteps steps = ValueSteps.over(least, most, 0.02);
    assertThat(steps.count()).isBetween(1, 5);
    double value = least + share * (most - least);
    double from = steps.from() + steps.of(value) * steps.step();
    assertThat(value).isBetween(from - 1e-6, from + steps.step() + 1e-6);
    assertThat(steps.colour(steps.of(value))).isBetween(0, 4);
  }
}
