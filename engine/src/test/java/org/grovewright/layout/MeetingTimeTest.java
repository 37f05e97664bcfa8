package org.grovewright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class MeetingTimeTest {
  @Test
  void knowsTheEnds() {
    assertThat(MeetingTime.of(t -> 3 + t, 3, 10)).hasValue(0);
    assertThat(MeetingTime.of(t -> Math.min(t, 2), 3, 10)).isEmpty();
    // A plant set in year four has no crown before.
    assertThat(MeetingTime.of(t -> t < 4 ? 0 : 1, 0.5, 10).orElseThrow())
        .isCloseTo(4, within(2e-6));
  }

  @Property(tries = 100)
  void agreesWithAScan(
      @ForAll @DoubleRange(min = 0.05, max = 1.5) double rate,
      @ForAll @DoubleRange(min = 1, max = 8) double full,
      @ForAll @DoubleRange(min = 0.1, max = 7) double gap) {
    DoubleUnaryOperator width = t -> full * Math.exp(-3 * Math.exp(-rate * t));
    double step = 1e-3;
    double scanned = Double.NaN;
    for (int i = 0; i <= 60_000 && Double.isNaN(scanned); i++) {
      scanned = width.applyAsDouble(i * step) >= gap ? i * step : Double.NaN;
    }
    if (Double.isNaN(scanned)) {
      assertThat(MeetingTime.of(width, gap, 60)).isEmpty();
    } else {
      assertThat(MeetingTime.of(width, gap, 60).orElseThrow())
          .isBetween(scanned - step - 1e-6, scanned + 1e-6);
    }
  }
}
