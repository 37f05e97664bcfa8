package org.grovewright.ground;

import static org.assertj.core.api.Assertions.assertThat;

import org.grovewright.quantity.FigureBook;
import org.junit.jupiter.api.Test;

class GroundPlanTest {
  @Test
  void plansAWholeGrove() {
    FigureBook book = new FigureBook();
    GroundPlan plan = GroundPlan.of(SampleGrove.full().grove(), SampleGrove.CATALOGUE, book);
    assertThat(plan.plants()).hasSize(42);
  }
}
