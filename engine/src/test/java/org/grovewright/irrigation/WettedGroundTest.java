package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Market;
import org.grovewright.model.Point;
import org.junit.jupiter.api.Test;

/** Areas of discs that overlap, against the geometry of the circle. */
class WettedGroundTest {
  private static final Point STEM = new Point(3, 4);

  private static Outlet outlet(double x, double y, double diameter) {
    EmitterType type =
        new EmitterType(
            "emitter.test",
            "test emitter",
            4 / 3.6e6,
            100_000,
            0.5,
            false,
            50_000,
            300_000,
            0.05,
            OptionalDouble.empty(),
            diameter,
            130e-6,
            0.1,
            EmitterType.Pattern.DRIPPER,
            Market.ANY,
            "made up for this test");
    return new Outlet("o", 0, type, new Point(STEM.x() + x, STEM.y() + y), 0, 0);
  }

  /** Area that two discs of equal radius share, by the formula of the circular segment. */
  private static double lens(double radius, double apart) {
    return 2 * radius * radius * Math.acos(apart / (2 * radius))
        - apart / 2 * Math.sqrt(4 * radius * radius - apart * apart);
  }

  @Test
  void oneDiscWithinTheCrownWetsItsAreaOverThatOfTheCrown() {
    assertThat(WettedGround.share(STEM, 1.5, List.of(outlet(0.3, 0.2, 1.2))))
        .isCloseTo(0.6 * 0.6 / (1.5 * 1.5), within(0.01));
  }

  @Test
  void discsThatOverlapCountTheirSharedGroundOnce() {
    double two = (2 * Math.PI * 0.25 - lens(0.5, 0.4)) / Math.PI;
    assertThat(WettedGround.share(STEM, 1, List.of(outlet(-0.2, 0.3, 1), outlet(0.2, 0.3, 1))))
        .isCloseTo(two, within(0.01));
  }

  @Test
  void groundBeyondTheCrownDoesNotCount() {
    assertThat(WettedGround.share(STEM, 1, List.of(outlet(0.8, 0, 2))))
        .isCloseTo(lens(1, 0.8) / Math.PI, within(0.01));
    assertThat(WettedGround.share(STEM, 1, List.of(outlet(3, 0, 2)))).isZero();
  }
}
