package org.grovewright.calendar;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import org.grovewright.ground.Feeding;
import org.grovewright.ground.SampleGrove;
import org.grovewright.work.CareEvent;
import org.junit.jupiter.api.Test;

class CareCalendarTest {
  private static CareEvent find(SetUpGrove job, String id) {
    return job.care.events().stream().filter(e -> e.id().equals(id)).findFirst().orElseThrow();
  }

  @Test
  void everyFeedingOfTheThreeYearsIsThere() {
    SetUpGrove job = new SetUpGrove(SampleGrove.full());
    double fed =
        job.care.events().stream()
            .filter(e -> e.kind() == CareEvent.Kind.FEEDING)
            .mapToDouble(e -> e.quantities().get(0).value())
            .sum();
    double planned =
        job.ground.feedings().stream()
            .filter(f -> !f.when().atDay(15).isAfter(job.care.until()))
            .mapToDouble(Feeding::fertiliserKg)
            .sum();
    assertThat(planned).isPositive();
    assertThat(fed).isCloseTo(planned, within(1e-9));
    assertThat(job.figures.under("care.feeding.").stream().mapToDouble(f -> f.value()).sum())
        .isCloseTo(planned, within(1e-9));
  }

  @Test
  void liesWithinTheThreeYears() {
    SetUpGrove job = new SetUpGrove(SampleGrove.full());
    assertThat(job.care.until()).isEqualTo(LocalDate.of(2029, 2, 28));
    assertThat(job.care.events())
        .flatExtracting(CareEvent::dates)
        .allMatch(d -> !d.isBefore(job.grove.start()) && !d.isAfter(job.care.until()));
    assertThat(job.care.events()).allMatch(e -> !e.dates().isEmpty());
    assertThat(job.care.events()).allMatch(e -> e.dates().get(0).equals(e.date()));
  }

  /** Every two weeks for a year, then every four weeks: 26 and then 2 years less the setting up. */
  @Test
  void rowsAreWalkedMoreOftenAtFirst() {
    SetUpGrove job = new SetUpGrove(SampleGrove.full());
    CareEvent first = find(job, "care.inspect-first");
    CareEvent later = find(job, "care.inspect-later");
    assertThat(first.dates()).hasSize(26);
    assertThat(first.date()).isEqualTo(job.care.from().plusWeeks(2));
    assertThat(later.date()).isEqualTo(job.care.from().plusDays(365).plusWeeks(4));
  }

  @Test
  void stakesComeOffAYearAfterTheyAreDriven() {
    SetUpGrove job = new SetUpGrove(SampleGrove.full());
    LocalDate driven =
        job.work.find("stake-tree").orElseThrow().finish().orElseThrow().toLocalDate();
    assertThat(find(job, "care.stakes-off").date()).isEqualTo(driven.plusDays(365));
    assertThat(find(job, "care.ties").dates()).hasSize(11);
  }

  /** A mean minimum of 2 in January gives nights of -4: drained by January, opened after. */
  @Test
  void wateringIsDrainedWhereItFreezes() {
    SampleGrove sample = SampleGrove.full();
    sample.coldestNight = 2;
    SetUpGrove job = new SetUpGrove(sample);
    List<CareEvent> drains =
        job.care.events().stream().filter(e -> e.id().startsWith("care.drain")).toList();
    assertThat(drains).hasSize(1);
    assertThat(find(job, "care.filter").dates()).noneMatch(d -> d.getMonth() == Month.JANUARY);
    assertThat(job.care.events()).anyMatch(e -> e.id().startsWith("care.cold."));

    SampleGrove mild = SampleGrove.full();
    mild.coldestNight = 10;
    assertThat(new SetUpGrove(mild).care.events()).noneMatch(e -> e.kind() == CareEvent.Kind.COLD);
  }

  /** Feeding in the southern half of the world falls half a year from the northern. */
  @Test
  void seasonsTurnRoundInTheSouth() {
    SampleGrove south = SampleGrove.full();
    south.latitude = -34;
    List<Integer> north = months(new SetUpGrove(SampleGrove.full()));
    List<Integer> turned =
        months(new SetUpGrove(south)).stream().map(m -> (m + 5) % 12 + 1).sorted().toList();
    assertThat(turned).isEqualTo(north);
  }

  private static List<Integer> months(SetUpGrove job) {
    return job.care.events().stream()
        .filter(e -> e.kind() == CareEvent.Kind.FEEDING && e.date().getYear() == 2027)
        .map(e -> e.date().getMonthValue())
        .sorted()
        .toList();
  }
}
