package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.grovewright.hydraulics.SupplyCurve.FlowTest;
import org.junit.jupiter.api.Test;

class SupplyCurveTest {
  @Test
  void oneTestLiesOnTheCurve() {
    // 10 l in 40 s while the gauge shows 20 m, 35 m static
    SupplyCurve curve = SupplyCurve.fromTests(35, List.of(new FlowTest(0.010, 40, 20)), 1.85);
    assertThat(curve.headAt(0.00025)).isCloseTo(20, within(1e-9));
    assertThat(curve.flowAt(20)).isCloseTo(0.00025, within(1e-12));
    assertThat(curve.flowAt(35)).isZero();
    assertThat(curve.flowAt(40)).isZero();
  }

  @Test
  void severalTestsGiveBackTheCurveTheyCameFrom() {
    SupplyCurve truth = new SupplyCurve(42, 3.1e7, 2);
    List<FlowTest> tests =
        List.of(
            new FlowTest(2e-4, 1, truth.headAt(2e-4)),
            new FlowTest(5e-4, 1, truth.headAt(5e-4)),
            new FlowTest(9e-4, 1, truth.headAt(9e-4)));
    assertThat(SupplyCurve.fromTests(42, tests, 2).a()).isCloseTo(3.1e7, within(1e-3));
  }

  @Test
  void severalTestsFitInLeastSquares() {
    // from ps - p = a Q^2 with (Q, fall) = (1, 1), (2, 5): a = (1*1 + 5*4) / (1 + 16)
    List<FlowTest> tests = List.of(new FlowTest(1, 1, 9), new FlowTest(2, 1, 5));
    assertThat(SupplyCurve.fromTests(10, tests, 2).a()).isCloseTo(21.0 / 17, within(1e-12));
  }

  @Test
  void constantSupplyNeverFalls() {
    SupplyCurve tank = SupplyCurve.constant(6);
    assertThat(tank.headAt(1)).isEqualTo(6);
    assertThat(tank.flowAt(5)).isInfinite();
  }

  @Test
  void testsThatShowNoFallAreRefused() {
    assertThatThrownBy(() -> SupplyCurve.fromTests(20, List.of(new FlowTest(1, 1, 25)), 2))
        .hasMessageContaining("below the static pressure");
    assertThatThrownBy(() -> SupplyCurve.fromTests(20, List.of(), 2))
        .hasMessageContaining("at least one");
    assertThatThrownBy(() -> SupplyCurve.fromTests(20, List.of(new FlowTest(0, 1, 5)), 2))
        .hasMessageContaining("above zero");
  }

  /** The one-point convention: 4/3 of the head at no flow, no head at twice the flow. */
  @Test
  void pumpFromOnePoint() {
    PumpCurve pump = PumpCurve.ofPoint(0.002, 30);
    assertThat(pump.headAt(0)).isCloseTo(40, within(1e-9));
    assertThat(pump.headAt(0.002)).isCloseTo(30, within(1e-9));
    assertThat(pump.headAt(0.004)).isCloseTo(0, within(1e-9));
  }

  @Test
  void pumpFromThreePointsPassesThroughThem() {
    PumpCurve pump = PumpCurve.ofPoints(40, 0.001, 35, 0.002, 22);
    assertThat(pump.headAt(0.001)).isCloseTo(35, within(1e-9));
    assertThat(pump.headAt(0.002)).isCloseTo(22, within(1e-9));
    assertThatThrownBy(() -> PumpCurve.ofPoints(30, 0.001, 35, 0.002, 22))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
