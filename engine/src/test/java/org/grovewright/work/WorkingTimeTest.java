package org.grovewright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Map;
import java.util.Set;
import org.grovewright.model.Crew;
import org.grovewright.model.Supply.Hours;
import org.junit.jupiter.api.Test;

class WorkingTimeTest {
  private static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);

  private static Hours hours(int from, int until) {
    return new Hours(LocalTime.of(from, 0), LocalTime.of(until, 0));
  }

  @Test
  void countsSlotsAcrossDaysAndSkipsDaysOff() {
    Crew crew =
        new Crew(
            1,
            Map.of(
                DayOfWeek.MONDAY, hours(18, 20),
                DayOfWeek.TUESDAY, hours(18, 19),
                DayOfWeek.SATURDAY, hours(9, 12)),
            Set.of(MONDAY.plusDays(1)));
    WorkingTime time = new WorkingTime(crew, MONDAY, 3600);

    assertThat(time.startOf(0)).isEqualTo(LocalDateTime.of(2026, 3, 2, 18, 0));
    assertThat(time.endOf(1)).isEqualTo(LocalDateTime.of(2026, 3, 2, 20, 0));
    assertThat(time.startOf(2)).isEqualTo(LocalDateTime.of(2026, 3, 7, 9, 0));
    assertThat(time.startOf(7)).isEqualTo(LocalDateTime.of(2026, 3, 10, 18, 0));
    assertThat(time.longestWindow()).isEqualTo(3);
  }

  @Test
  void findsTheSlotAfterATime() {
    WorkingTime time = new WorkingTime(Samples.evenings(1, 18, 20), MONDAY, 3600);

    assertThat(time.slotAtOrAfter(MONDAY.atTime(0, 0))).isZero();
    assertThat(time.slotAtOrAfter(MONDAY.atTime(18, 0))).isZero();
    assertThat(time.slotAtOrAfter(MONDAY.atTime(18, 1))).isEqualTo(1);
    assertThat(time.slotAtOrAfter(MONDAY.atTime(19, 30))).isEqualTo(2);
    assertThat(time.slotAtOrAfter(MONDAY.atTime(20, 0))).isEqualTo(2);
    assertThat(time.slotAtOrAfter(MONDAY.plusDays(100).atTime(7, 0))).isEqualTo(200);
  }

  @Test
  void worksOverMidnight() {
    Crew crew = new Crew(1, Map.of(DayOfWeek.FRIDAY, hours(22, 2)), Set.of());
    WorkingTime time = new WorkingTime(crew, MONDAY, 3600);

    assertThat(time.startOf(3)).isEqualTo(LocalDateTime.of(2026, 3, 7, 1, 0));
    assertThat(time.startOf(4)).isEqualTo(LocalDateTime.of(2026, 3, 13, 22, 0));
  }

  @Test
  void hoursThatOverlapCountOnce() {
    Crew crew =
        new Crew(
            1, Map.of(DayOfWeek.MONDAY, hours(20, 4), DayOfWeek.TUESDAY, hours(2, 6)), Set.of());
    WorkingTime time = new WorkingTime(crew, MONDAY, 3600);

    assertThat(time.startOf(7)).isEqualTo(LocalDateTime.of(2026, 3, 3, 3, 0));
    assertThat(time.startOf(8)).isEqualTo(LocalDateTime.of(2026, 3, 3, 4, 0));
    assertThat(time.endOf(9)).isEqualTo(LocalDateTime.of(2026, 3, 3, 6, 0));
  }

  @Test
  void refusesACrewWithoutHours() {
    Crew crew = new Crew(1, Map.of(), Set.of());
    assertThatThrownBy(() -> new WorkingTime(crew, MONDAY, 3600))
        .hasMessageContaining("no working");
  }
}
