package org.grovewright.formats.description;

import static org.assertj.core.api.Assertions.assertThat;

import org.grovewright.model.Grove;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StarterPlansTest {
  /** What the reader accepts, the engine plans: nothing in between is left to fail. */
  @ParameterizedTest
  @ValueSource(longs = {1, 14, 32, 51, 77, 1234})
  void whatCanBeReadCanBePlanned(long seed) {
    Grove grove = Groves.of(seed, Descriptions.CATALOGUE);
    assertThat(Planner.plan(grove, Descriptions.CATALOGUE).figures()).isNotEmpty();
  }

  @Test
  void theStarterCanBePlannedAsItStands() {
    Grove grove = Descriptions.read(Descriptions.starter());
    Plan plan = Planner.plan(grove, Descriptions.CATALOGUE);
    assertThat(plan.findings())
        .filteredOn(f -> f.severity() == org.grovewright.finding.Finding.Severity.SHORTFALL)
        .isEmpty();
  }
}
