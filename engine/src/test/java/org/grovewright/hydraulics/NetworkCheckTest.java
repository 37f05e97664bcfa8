package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.grovewright.hydraulics.HydraulicProblem.Kind;
import org.junit.jupiter.api.Test;

class NetworkCheckTest {
  private static final Roughness PLASTIC = Roughness.hazenWilliams(150);

  private static Network.Builder builder() {
    return Network.builder(FrictionFormula.HAZEN_WILLIAMS);
  }

  @Test
  void everyProblemIsReportedAtOnce() {
    Network network =
        builder()
            .reservoir("tank", 10)
            .junction("a", 0)
            .junction("a", 1)
            .junction("b", Double.NaN)
            .junction("lonely", 0)
            .junction("alone", 0)
            .pipe("p1", "tank", "a", -5, 0.02, PLASTIC)
            .pipe("p2", "a", "b", 5, 0, PLASTIC)
            .pipe("p2", "a", "b", 5, 0.02, Roughness.darcyWeisbach(1e-5))
            .pipe("p3", "a", "nowhere", 5, 0.02, PLASTIC)
            .pipe("p4", "b", "b", 5, 0.02, PLASTIC)
            .pipe("p5", "lonely", "alone", 5, 0.02, PLASTIC)
            .emitter("ghost", EmitterCurve.power(1e-6, 0.5))
            .emitter("b", EmitterCurve.power(1e-6, 1.5))
            .demand("b", Double.POSITIVE_INFINITY)
            .build();
    assertThat(network.problems())
        .extracting(HydraulicProblem::kind, HydraulicProblem::partId)
        .contains(
            org.assertj.core.groups.Tuple.tuple(Kind.DUPLICATE_ID, "a"),
            org.assertj.core.groups.Tuple.tuple(Kind.BAD_NUMBER, "b"),
            org.assertj.core.groups.Tuple.tuple(Kind.BAD_NUMBER, "p1"),
            org.assertj.core.groups.Tuple.tuple(Kind.BAD_NUMBER, "p2"),
            org.assertj.core.groups.Tuple.tuple(Kind.DUPLICATE_ID, "p2"),
            org.assertj.core.groups.Tuple.tuple(Kind.WRONG_FRICTION_FORMULA, "p2"),
            org.assertj.core.groups.Tuple.tuple(Kind.UNKNOWN_NODE, "p3"),
            org.assertj.core.groups.Tuple.tuple(Kind.SELF_LOOP, "p4"),
            org.assertj.core.groups.Tuple.tuple(Kind.UNKNOWN_NODE, "ghost#1"),
            org.assertj.core.groups.Tuple.tuple(Kind.BAD_NUMBER, "b#1"),
            org.assertj.core.groups.Tuple.tuple(Kind.ISLAND, "lonely"));
    assertThatThrownBy(() -> Solver.solve(network))
        .isInstanceOf(HydraulicException.class)
        .hasMessageContaining("no pipe leads from any source to node lonely and 1 node joined")
        .hasMessageContaining("pipe p1: length in m must be above 0, but is -5.0");
  }

  @Test
  void missingSourceIsReported() {
    Network network =
        builder().junction("a", 0).junction("b", 0).pipe("p", "a", "b", 1, 0.02, PLASTIC).build();
    assertThat(network.problems())
        .extracting(HydraulicProblem::kind)
        .containsExactly(Kind.NO_SOURCE);
  }

  @Test
  void regulatorsThatContradictAreReported() {
    Network network =
        builder()
            .reservoir("tank", 30)
            .junction("a", 0)
            .junction("b", 0)
            .junction("c", 0)
            .pipe("p", "tank", "a", 1, 0.02, PLASTIC)
            .valve("v1", "a", "b", 0.02, 10, 1)
            .valve("v2", "a", "b", 0.02, 12, 1)
            .valve("v3", "b", "c", 0.02, 8, 1)
            .valve("v4", "a", "tank", 0.02, 8, 1)
            .build();
    assertThat(network.problems())
        .extracting(HydraulicProblem::message)
        .containsExactly(
            "regulators v1 and v2 both set the pressure at b",
            "regulator v4 sets the pressure at tank, which is a source",
            "regulator v3 starts where regulator v1 ends; put a length of pipe between them or"
                + " leave one out");
  }

  @Test
  void aDemandCutOffByAClosedValveIsNamed() {
    Network network =
        builder()
            .reservoir("tank", 30)
            .junction("a", 0)
            .link(Link.Pipe.of("p", "tank", "a", 1, 0.02, PLASTIC).shut())
            .demand("a", 1e-4)
            .build();
    assertThatThrownBy(() -> Solver.solve(network))
        .hasMessage("node a has a fixed demand but is cut off by closed valves");
  }
}
