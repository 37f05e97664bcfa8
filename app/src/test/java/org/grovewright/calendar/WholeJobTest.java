package org.grovewright.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.ground.SampleGrove;
import org.grovewright.model.Grove;
import org.grovewright.plan.Planner;
import org.grovewright.work.WorkPlan;
import org.grovewright.work.WorkTask;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The order of the whole job with the bundled catalogue. That pipe is tested before the trench is
 * filled, cement cures before water stands on it, and mulch comes last is common practice, no
 * source.
 */
class WholeJobTest {
  private final SetUpGrove job = new SetUpGrove(SampleGrove.full());

  private List<WorkTask> of(String key) {
    List<WorkTask> tasks =
        job.work.tasks().stream().filter(t -> t.kind().key().equals(key)).toList();
    assertThat(tasks).as(key).isNotEmpty();
    return tasks;
  }

  private LocalDateTime first(String key) {
    return of(key).stream()
        .map(t -> t.start().orElseThrow())
        .min(Comparator.naturalOrder())
        .orElseThrow();
  }

  private LocalDateTime last(String key) {
    return of(key).stream()
        .map(t -> t.finish().orElseThrow())
        .max(Comparator.naturalOrder())
        .orElseThrow();
  }

  private void inOrder(String... keys) {
    for (int i = 1; i < keys.length; i++) {
      assertThat(first(keys[i]))
          .as("%s after %s", keys[i], keys[i - 1])
          .isAfterOrEqualTo(last(keys[i - 1]));
    }
  }

  @Test
  void servicesAreMarkedBeforeAnyDigging() {
    for (String dig : List.of("dig-trench", "dig-hole")) {
      assertThat(Duration.between(last("call-services"), first(dig)).toHours())
          .isGreaterThanOrEqualTo(72);
    }
    inOrder("call-services", "mark-out", "clear-ground", "dig-trench");
  }

  @Test
  void pipeIsLaidTestedAndOnlyThenCovered() {
    inOrder("dig-trench", "lay-main", "cement-joint", "flush", "leak-test", "backfill-trench");
    assertThat(Duration.between(last("cement-joint"), first("flush")).toHours())
        .isGreaterThanOrEqualTo(24);
  }

  @Test
  void plantsComeBeforeEmittersAndTheTimerAfterTheCheck() {
    inOrder("dig-hole", "plant-tree", "plant-companion", "lay-lateral", "flush-lateral");
    for (String zone : List.of("zone-1", "zone-2")) {
      String before = "flush-lateral." + zone;
      for (String task : List.of("fit-emitter.", "catch-can-check.", "set-timer.")) {
        assertThat(job.work.find(task + zone).orElseThrow().start().orElseThrow())
            .isAfterOrEqualTo(job.work.find(before).orElseThrow().finish().orElseThrow());
        before = task + zone;
      }
    }
    inOrder("plant-tree", "stake-tree", "spread-mulch");
  }

  /** A tree is staked on the day on which it is planted: common practice, no source. */
  @ParameterizedTest
  @ValueSource(strings = {"demo", "us-gravity"})
  void everyTreeIsStakedOnTheDayItIsPlanted(String example) {
    Grove grove =
        new DescriptionReader(SetUpGrove.CATALOGUE, null)
            .read(Path.of("../examples", example + ".yaml"));
    WorkPlan work = Planner.plan(grove, SetUpGrove.CATALOGUE).work();
    List<LocalDate> planted = daysOf(work, "plant-tree");
    assertThat(planted).hasSizeGreaterThan(1);
    assertThat(daysOf(work, "stake-tree")).isEqualTo(planted);
    assertThat(work.findings()).noneMatch(finding -> finding.message().contains("stake"));
  }

  private static List<LocalDate> daysOf(WorkPlan work, String task) {
    return work.tasks().stream()
        .filter(t -> t.kind().key().equals(task))
        .map(t -> t.finish().orElseThrow().toLocalDate())
        .sorted()
        .toList();
  }

  @Test
  void mulchComesLast() {
    inOrder("fit-emitter", "spread-mulch");
    inOrder("pin-tubing", "spread-mulch");
    inOrder("catch-can-check", "spread-mulch");
  }

  @Test
  void everyJobIsScheduledAndCautionsAreKnown() {
    assertThat(job.work.tasks()).allMatch(t -> t.finish().isPresent());
    assertThat(job.work.tasks())
        .flatExtracting(t -> t.kind().cautions())
        .allMatch(key -> SetUpGrove.CATALOGUE.cautions().containsKey(key));
    assertThat(job.care.events())
        .flatExtracting(e -> e.cautions())
        .allMatch(key -> SetUpGrove.CATALOGUE.cautions().containsKey(key));
  }
}
