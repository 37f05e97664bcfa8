package org.grovewright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TimeZone;
import org.grovewright.catalogue.Species;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.model.Crew;
import org.grovewright.quantity.FigureBook;
import org.junit.jupiter.api.Test;

class WorkPlanTest {
  private final Samples samples = new Samples();
  private final FigureBook figures = new FigureBook();

  private WorkPlan plan(WorkAmount... work) {
    return WorkPlan.of(List.of(work), samples.grove(), samples.catalogue(), figures);
  }

  private static WorkAmount work(String task, String subject, double amount) {
    return new WorkAmount(task, subject, amount, "test.amount");
  }

  /** (set-up + amount x rate) / people, worked by hand: (10 + 6 x 15) / 2 = 50 minutes. */
  @Test
  void addsAmountsAndSharesTheWork() {
    samples.tasks.add(Samples.task("dig", 15, 10, 0));
    WorkPlan plan = plan(work("dig", "A", 2), work("dig", "A", 4));

    assertThat(plan.tasks()).hasSize(1);
    WorkTask dig = plan.tasks().get(0);
    assertThat(dig.personSeconds()).isEqualTo(6000);
    assertThat(dig.people()).isEqualTo(2);
    assertThat(dig.sessions())
        .containsExactly(
            new WorkSession(
                "dig.a",
                1,
                1,
                LocalDateTime.of(2026, 3, 2, 18, 0),
                LocalDateTime.of(2026, 3, 2, 18, 50),
                2));
    assertThat(figures.get("work.dig.a.person-time").value()).isEqualTo(6000);
    assertThat(figures.get("work.dig.a.clock-time").value()).isEqualTo(3000);
    assertThat(figures.get("work.total.person-time").value()).isEqualTo(6000);
    assertThat(figures.get("work.total.days").value()).isEqualTo(1);
    assertThat(figures.get("work.total.finish").value()).isEqualTo(86_400);
    assertThat(plan.findings()).isEmpty();
  }

  @Test
  void gathersPlantsByRowAndWaitsRowByRow() {
    samples.species.add(Samples.species("pear", Species.Role.MAIN, -20));
    samples.plantings.add(Samples.plant("p1", "pear", "A", Samples.START));
    samples.plantings.add(Samples.plant("p2", "pear", "A", Samples.START));
    samples.plantings.add(Samples.plant("p3", "pear", "B", Samples.START));
    samples.tasks.add(Samples.task("dig", 10, 0, 0));
    samples.tasks.add(Samples.task("fill", 10, 0, 0, "dig"));
    samples.tasks.add(Samples.task("rake", 10, 0, 0, "fill"));
    WorkPlan plan =
        plan(
            work("dig", "p1", 1),
            work("dig", "p2", 1),
            work("dig", "p3", 1),
            work("fill", "p1", 2),
            work("rake", "", 1));

    assertThat(plan.tasks())
        .extracting(WorkTask::id)
        .containsExactlyInAnyOrder("dig.a", "dig.b", "fill.a", "rake");
    assertThat(plan.find("fill.a").orElseThrow().after()).containsExactly("dig.a");
    assertThat(plan.find("rake").orElseThrow().after()).containsExactly("fill.a");
    assertThat(plan.find("dig.a").orElseThrow().amount()).isEqualTo(2);
  }

  @Test
  void looksThroughWorkThatIsNotPartOfThePlan() {
    samples.tasks.add(Samples.task("dig", 10, 0, 0));
    samples.tasks.add(Samples.task("cement", 10, 0, 24, "dig"));
    samples.tasks.add(Samples.task("cover", 10, 0, 0, "cement"));
    WorkPlan plan = plan(work("cover", "", 1), work("dig", "", 1));

    assertThat(plan.find("cover").orElseThrow().after()).containsExactly("dig");
  }

  /** Cement joined on Monday evening and left for 24 hours is not under pressure on Monday. */
  @Test
  void waitsOnTheClock() {
    samples.tasks.add(Samples.task("cement", 30, 0, 24));
    samples.tasks.add(Samples.task("test", 30, 0, 0, "cement"));
    WorkPlan plan = plan(work("cement", "", 2), work("test", "", 1));

    assertThat(plan.find("cement").orElseThrow().finish())
        .contains(LocalDateTime.of(2026, 3, 2, 18, 30));
    assertThat(plan.find("test").orElseThrow().start())
        .contains(LocalDateTime.of(2026, 3, 3, 18, 30));
  }

  /** 300 minutes for two on evenings of two hours: 120 and the 30 that are left, in two parts. */
  @Test
  void breaksLongWorkOffAtTheEndOfAnEvening() {
    samples.tasks.add(Samples.task("dig", 300, 0, 0));
    WorkPlan plan = plan(work("dig", "", 1));

    assertThat(plan.tasks().get(0).sessions())
        .extracting(WorkSession::minutes)
        .containsExactly(120L, 30L);
    assertThat(plan.days()).hasSize(2);
    assertThat(plan.finish()).contains(LocalDateTime.of(2026, 3, 3, 18, 30));
  }

  /** 130 minutes on an evening of 120: the rest would be 10, so the evening ends 20 early. */
  @Test
  void leavesNoPartTooShortToBeWorthIt() {
    samples.tasks.add(Samples.task("dig", 260, 0, 0));
    WorkPlan plan = plan(work("dig", "", 1));

    assertThat(plan.tasks().get(0).sessions())
        .extracting(WorkSession::minutes)
        .containsExactly(100L, 30L);
  }

  @Test
  void marksTheCriticalPath() {
    samples.crew = Samples.evenings(4, 18, 20);
    samples.tasks.add(Samples.task("long", 60, 0, 0));
    samples.tasks.add(Samples.task("short", 20, 0, 0));
    samples.tasks.add(Samples.task("last", 10, 0, 0, "long", "short"));
    WorkPlan plan = plan(work("long", "", 1), work("short", "", 1), work("last", "", 1));

    assertThat(plan.find("long").orElseThrow().critical()).isTrue();
    assertThat(plan.find("last").orElseThrow().critical()).isTrue();
    WorkTask brief = plan.find("short").orElseThrow();
    assertThat(brief.critical()).isFalse();
    assertThat(brief.slackSeconds()).isCloseTo(1200, within(1e-9));
  }

  @Test
  void saysThatACrewHasNoHours() {
    samples.crew = new Crew(2, Map.of(), Set.of());
    samples.tasks.add(Samples.task("dig", 15, 10, 0));
    WorkPlan plan = plan(work("dig", "", 2));

    assertThat(plan.findings()).extracting(Finding::code).containsExactly("work.no-hours");
    assertThat(plan.days()).isEmpty();
    assertThat(plan.finish()).isEmpty();
    assertThat(figures.get("work.dig.person-time").value()).isEqualTo(2400);
    assertThat(figures.find("work.total.finish")).isEmpty();
  }

  @Test
  void plantsNotBeforeTheirDayAndSaysWhenItIsTooLate() {
    samples.species.add(Samples.species("pear", Species.Role.MAIN, -20));
    samples.plantings.add(Samples.plant("p1", "pear", "A", Samples.START.plusDays(9)));
    samples.plantings.add(Samples.plant("p2", "pear", "B", Samples.START));
    samples.tasks.add(Samples.task("dig", 500, 0, 0));
    samples.tasks.add(Samples.task("plant-tree", 20, 0, 0, "dig"));
    WorkPlan plan =
        plan(work("dig", "B", 1), work("plant-tree", "p1", 1), work("plant-tree", "p2", 1));

    assertThat(plan.find("plant-tree.a").orElseThrow().start())
        .contains(Samples.START.plusDays(9).atTime(18, 0));
    assertThat(plan.findings()).extracting(Finding::code).containsExactly("work.planting-late");
    Finding late = plan.findings().get(0);
    assertThat(late.subject()).isEqualTo("B");
    assertThat(late.quantities().get(0).value()).isEqualTo(2 * 86_400);
  }

  /**
   * Three trees at 20 minutes: one in spring, two half a year later; tubing waits for the first.
   */
  @Test
  void partsPlantingByDayAndDoesNotWaitForThoseWantedLater() {
    samples.species.add(Samples.species("pear", Species.Role.MAIN, -20));
    samples.plantings.add(Samples.plant("p1", "pear", "A", Samples.START.plusDays(5)));
    samples.plantings.add(Samples.plant("p2", "pear", "B", Samples.START.plusDays(200)));
    samples.plantings.add(Samples.plant("p3", "pear", "B", Samples.START.plusDays(200)));
    samples.tasks.add(Samples.task("plant-tree", 20, 0, 0));
    samples.tasks.add(Samples.task("lay-lateral", 20, 0, 0, "plant-tree"));
    WorkPlan plan = plan(work("plant-tree", "", 3), work("lay-lateral", "A", 1));

    WorkTask first = plan.find("plant-tree").orElseThrow();
    WorkTask second = plan.find("plant-tree-2").orElseThrow();
    assertThat(first.amount()).isCloseTo(1, within(1e-12));
    assertThat(first.start()).contains(Samples.START.plusDays(5).atTime(18, 0));
    assertThat(second.amount()).isCloseTo(2, within(1e-12));
    assertThat(second.start()).contains(Samples.START.plusDays(200).atTime(18, 0));
    WorkTask tubing = plan.find("lay-lateral.a").orElseThrow();
    assertThat(tubing.after()).containsExactly("plant-tree");
    assertThat(tubing.start().orElseThrow().toLocalDate()).isEqualTo(Samples.START.plusDays(5));
    assertThat(plan.findings()).isEmpty();
  }

  /** Mean minimum 2, less 6 is -4; a plant that stands -3 when grown stands 0 when young. */
  @Test
  void warnsOfPlantingInACold() {
    samples.species.add(Samples.species("lime", Species.Role.MAIN, -3));
    samples.latitude = -40;
    samples.coldestMonthMinimum = 2;
    samples.plantings.add(Samples.plant("p1", "lime", "A", Samples.START.plusDays(130)));
    samples.tasks.add(Samples.task("plant-tree", 20, 0, 0));
    WorkPlan plan = plan(work("plant-tree", "p1", 1));

    assertThat(plan.findings()).extracting(Finding::code).containsExactly("work.planting-cold");
    assertThat(plan.findings().get(0).quantities().get(0).value()).isEqualTo(0);
    assertThat(plan.findings().get(0).quantities().get(1).value()).isEqualTo(-4);
  }

  @Test
  void namesTheCircleOfTasks() {
    samples.tasks.add(Samples.task("a", 1, 0, 0, "c"));
    samples.tasks.add(Samples.task("b", 1, 0, 0, "a"));
    samples.tasks.add(Samples.task("c", 1, 0, 0, "b"));
    assertThatThrownBy(() -> plan(work("a", "", 1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("circle")
        .hasMessageContaining("a, which comes before b, which comes before c");
  }

  @Test
  void namesAnUnknownTask() {
    assertThatThrownBy(() -> plan(work("juggle", "", 1)))
        .hasMessage("the catalogue has no task juggle");
  }

  @Test
  void refusesANegativeAmount() {
    samples.tasks.add(Samples.task("dig", 1, 0, 0));
    assertThatThrownBy(() -> plan(work("dig", "", -1))).hasMessageContaining("zero or more");
  }

  /** Europe changes its clocks on 29 March 2026, the United States on 8 March. */
  @Test
  void doesNotHeedChangesOfTheClocks() {
    samples.crew = Samples.evenings(1, 1, 4);
    samples.tasks.add(Samples.task("dig", 6000, 0, 0));
    TimeZone before = TimeZone.getDefault();
    try {
      TimeZone.setDefault(TimeZone.getTimeZone("Europe/Berlin"));
      WorkPlan berlin = plan(work("dig", "", 1));
      TimeZone.setDefault(TimeZone.getTimeZone("America/New_York"));
      WorkPlan newYork =
          WorkPlan.of(
              List.of(work("dig", "", 1)), samples.grove(), samples.catalogue(), new FigureBook());
      assertThat(newYork).isEqualTo(berlin);
      assertThat(berlin.days()).hasSize(34);
      assertThat(berlin.tasks().get(0).sessions().subList(0, 33))
          .allMatch(s -> s.minutes() == 180 && s.start().getHour() == 1);
    } finally {
      TimeZone.setDefault(before);
    }
  }
}
