package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class UniformityTest {
  private static final double[] FLOWS = {4, 4.2, 3.8, 4.1, 3.6, 4.3, 4.0, 4.0};

  @Test
  void lowQuarterIsMeanOfLowestQuarterOverMean() {
    assertThat(Uniformity.lowQuarter(FLOWS)).isCloseTo(3.7 / 4.0, within(1e-12));
    // 6 flows: the low quarter is one flow and half of the next
    double[] six = {1, 2, 3, 4, 5, 6};
    assertThat(Uniformity.lowQuarter(six)).isCloseTo((1 + 0.5 * 2) / 1.5 / 3.5, within(1e-12));
  }

  /** 1 - (sum of deviations = 0+.2+.2+.1+.4+.3+0+0 = 1.2) / (8 * 4). */
  @Test
  void christiansenIsMeanDeviation() {
    assertThat(Uniformity.christiansen(FLOWS)).isCloseTo(1 - 1.2 / 32, within(1e-12));
  }

  /** EU = (1 - 1.27 * 0.05 / sqrt 2) * 3.6 / 4.0, Keller and Karmeli (1974). */
  @Test
  void emissionUniformity() {
    assertThat(Uniformity.emissionUniformity(0.05, 2, FLOWS))
        .isCloseTo((1 - 1.27 * 0.05 / Math.sqrt(2)) * 0.9, within(1e-12));
  }

  /** Squares of deviations: 0+.04+.04+.01+.16+.09 = .34; s = sqrt(.34 / 7). */
  @Test
  void statistical() {
    assertThat(Uniformity.statistical(FLOWS)).isCloseTo(1 - Math.sqrt(0.34 / 7) / 4, within(1e-12));
    assertThat(Uniformity.statisticalFromCauses(0.03, 0.04)).isCloseTo(0.95, within(1e-12));
  }

  @Test
  void equalFlowsAreFullyUniform() {
    double[] equal = {2, 2, 2};
    assertThat(Uniformity.lowQuarter(equal)).isCloseTo(1, within(1e-12));
    assertThat(Uniformity.christiansen(equal)).isEqualTo(1);
    assertThat(Uniformity.statistical(equal)).isEqualTo(1);
  }

  @Test
  void nothingFlowingIsRefused() {
    assertThatThrownBy(() -> Uniformity.lowQuarter(new double[] {0, 0}))
        .hasMessageContaining("at least one flow above zero");
    assertThatThrownBy(() -> Uniformity.christiansen(new double[] {1, -1}))
        .hasMessageContaining("zero or more");
  }
}
