package org.grovewright.formats.description;

import static org.assertj.core.api.Assertions.assertThat;

import org.grovewright.model.Grove;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.junit.jupiter.api.Test;

class StarterPlansTest {
  @Test
  void theStarterCanBePlannedAsItStands() {
    Grove grove = Descriptions.read(Descriptions.starter());
    Plan plan = Planner.plan(grove, Descriptions.CATALOGUE);
    assertThat(plan.findings())
        .filteredOn(f -> f.severity() == org.grovewright.finding.Finding.Severity.SHORTFALL)
        .isEmpty();
  }
}
