package org.grovewright.buying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.grovewright.demand.Requirement.Cut;
import org.junit.jupiter.api.Test;

class PipeCuttingTest {
  private static List<Cut> pieces(double... lengths) {
    List<Cut> pieces = new ArrayList<>();
    for (double length : lengths) {
      pieces.add(new Cut("piece " + (pieces.size() + 1), length));
    }
    return pieces;
  }

  /** Ten runs of 3.5 m from 6 m lengths: ten lengths whole, six with four joints at most. */
  @Test
  void joinsSaveLengths() {
    double[] runs = new double[10];
    java.util.Arrays.fill(runs, 3.5);
    PipeCutting cutting = new PipeCutting(pieces(runs), 0, 6, 0.5);

    assertThat(cutting.whole().bought()).isEqualTo(10);
    assertThat(cutting.whole().joints()).isZero();
    assertThat(cutting.joined().bought()).isEqualTo(6);
    assertThat(cutting.joined().joints()).isBetween(4, 5);
  }

  @Test
  void joinsARunLongerThanALength() {
    CuttingPlan plan = new PipeCutting(pieces(13), 0, 6, 0.5).whole();
    assertThat(plan.bought()).isEqualTo(3);
    assertThat(plan.joints()).isEqualTo(2);
    assertThat(plan.lengths().get(2).cuts())
        .containsExactly(new CuttingPlan.Cut("piece 1", 1, 3, 3));
    assertThat(plan.offCutsM()).isCloseTo(5, within(1e-9));
  }

  /** 12.2 m would leave a stub of 0.2 m, so one length is cut shorter. */
  @Test
  void leavesNoStub() {
    CuttingPlan plan = new PipeCutting(pieces(12.2), 0, 6, 0.5).whole();
    assertThat(plan.bought()).isEqualTo(3);
    assertThat(plan.lengths())
        .flatExtracting(CuttingPlan.Length::cuts)
        .allMatch(c -> c.lengthM() >= 0.5);
  }

  @Property(tries = 200)
  void everyPieceIsCutOnceAndNoLengthTwice(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 12) int n) {
    Random random = new Random(seed);
    double[] lengths = random.doubles(n, 0.2, 15).toArray();
    double onHand = random.nextInt(3) * 3.3;
    List<Cut> pieces = pieces(lengths);
    PipeCutting cutting = new PipeCutting(pieces, onHand, 6, 0.5);
    for (CuttingPlan plan : List.of(cutting.whole(), cutting.joined())) {
      Map<String, Double> sum = new HashMap<>();
      Map<String, Integer> parts = new HashMap<>();
      for (CuttingPlan.Length length : plan.lengths()) {
        double used = 0;
        for (CuttingPlan.Cut cut : length.cuts()) {
          sum.merge(cut.label(), cut.lengthM(), Double::sum);
          parts.merge(cut.label(), 1, Integer::sum);
          used += cut.lengthM();
          assertThat(cut.lengthM() >= 0.5 || cut.parts() == 1).isTrue();
        }
        assertThat(used).isLessThanOrEqualTo(length.lengthM() + 1e-9);
      }
      int joints = 0;
      for (Cut piece : pieces) {
        assertThat(sum.get(piece.label())).isCloseTo(piece.lengthM(), within(0.001 + 1e-9));
        joints += parts.get(piece.label()) - 1;
      }
      assertThat(plan.joints()).isEqualTo(joints);
      assertThat(plan.lengths().stream().filter(l -> !l.onHand())).hasSize(plan.bought());
    }
    assertThat(cutting.joined().bought()).isLessThanOrEqualTo(cutting.whole().bought());
  }
}
