package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Set;
import org.junit.jupiter.api.Test;

class WhatIfTest {
  private static final double LPH = 1e-3 / 3600;
  private static final Roughness PLASTIC = Roughness.hazenWilliams(150);

  /** A loop of ten emitters behind a regulator, fed from a tank. */
  private static Network loop() {
    Network.Builder builder =
        Network.builder(FrictionFormula.HAZEN_WILLIAMS)
            .reservoir("tank", 14)
            .junction("a", 0)
            .junction("n0", 0)
            .pipe("feed", "tank", "a", 20, 0.02, PLASTIC)
            .valve("reg", "a", "n0", 0.02, 10, 2);
    for (int i = 1; i < 11; i++) {
      builder.junction("n" + i, 0);
      builder.emitter("n" + i, EmitterCurve.through(4 * LPH, 10, 0.5));
    }
    for (int i = 0; i < 11; i++) {
      builder.pipe("p" + i, "n" + i, "n" + (i + 1) % 11, 2, 0.0138, PLASTIC);
    }
    return builder.build();
  }

  @Test
  void holeTakesWaterFromAllOthers() {
    WhatIf leak = WhatIf.of(loop(), new Fault.Leak("n4", 0.003));
    double lost = leak.after().emitterFlow("leak at n4");
    double pressure = leak.after().pressure("n4");
    // Torricelli at the pressure that is left
    double hole = 0.6 * Math.PI / 4 * 9e-6 * Math.sqrt(2 * 9.80665 * pressure);
    assertThat(lost).isCloseTo(hole, within(1e-12));
    assertThat(leak.changes()).hasSize(10).allMatch(change -> change.share() < 1);
    assertThat(leak.fault().description()).isEqualTo("hole of 3.0 mm at n4");
  }

  @Test
  void cutLoopStillFeedsAllFromOneSide() {
    for (int i = 0; i < 11; i++) {
      WhatIf cut = WhatIf.of(loop(), new Fault.Stuck("p" + i, true));
      assertThat(cut.after().flow("p" + i)).isZero();
      assertThat(cut.changes()).allMatch(change -> change.share() > 0.9);
      Balances.check(cut.after());
    }
  }

  @Test
  void shutMainGivesNothing() {
    WhatIf shut = WhatIf.of(loop(), new Fault.Stuck("feed", true));
    assertThat(shut.changes()).allMatch(change -> change.after() == 0);
    assertThat(shut.after().notices()).isNotEmpty();
  }

  @Test
  void regulatorStuckOpenLetsTheTankThrough() {
    WhatIf open = WhatIf.of(loop(), new Fault.Stuck("reg", false));
    assertThat(open.before().pressure("n0")).isCloseTo(10, within(1e-6));
    assertThat(open.after().pressure("n0")).isGreaterThan(13);
  }

  @Test
  void cloggedHalfGivesHalfAndTheRestABitMore() {
    Network network = loop();
    WhatIf clogged = WhatIf.of(network, Fault.Clogging.ofHalf(network, 0.5));
    for (int g = 0; g < 10; g++) {
      double share = clogged.changes().get(g).share();
      if (g % 2 == 0) {
        assertThat(share).isBetween(0.5, 0.51);
      } else {
        assertThat(share).isBetween(1.0, 1.02);
      }
    }
    WhatIf one = WhatIf.of(network, new Fault.Clogging(Set.of("n3#1"), 0));
    assertThat(one.after().emitterFlow("n3#1")).isZero();
  }

  @Test
  void lowTankAndMoreTrees() {
    WhatIf low = WhatIf.of(loop(), new Fault.Level("tank", 7));
    assertThat(low.after().isRegulating("reg")).isFalse();
    assertThat(low.changes()).allMatch(change -> change.share() < 0.9);
    EmitterCurve curve = EmitterCurve.through(4 * LPH, 10, 0.5);
    WhatIf more = WhatIf.of(loop(), new Fault.Addition("n5", curve, 20));
    assertThat(more.after().emitterFlow("added at n5")).isGreaterThan(2 * LPH);
    assertThat(more.changes()).allMatch(change -> change.share() < 1);
  }
}
