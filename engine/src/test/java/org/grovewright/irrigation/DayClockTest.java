package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.grovewright.model.Supply.Hours;
import org.grovewright.model.WateringDays;
import org.junit.jupiter.api.Test;

class DayClockTest {
  private static final List<Hours> MORNING =
      List.of(new Hours(LocalTime.of(5, 0), LocalTime.of(6, 0)));

  private static DayClock.Run run(int cycles, int onS, int soakS, int gap, double volume) {
    List<Rhythm> rhythms =
        IntStream.range(0, gap).mapToObj(first -> Rhythm.every(gap, first)).toList();
    return new DayClock.Run(cycles, onS, soakS, rhythms, volume);
  }

  @Test
  void runsOfOneDayFollowEachOther() {
    DayClock clock = new DayClock(MORNING, Double.POSITIVE_INFINITY);

    assertThat(clock.place(run(1, 1800, 0, 1, 1)).orElseThrow().starts()).containsExactly(5 * 3600);
    assertThat(clock.place(run(1, 1800, 0, 1, 1)).orElseThrow().starts())
        .containsExactly(5 * 3600 + 1800);
    assertThat(clock.place(run(1, 60, 0, 1, 1))).isEmpty();
  }

  @Test
  void aRunThatDoesNotFitGoesToAnotherDay() {
    DayClock clock = new DayClock(MORNING, Double.POSITIVE_INFINITY);
    clock.place(run(1, 3000, 0, 2, 1));

    DayClock.Place second = clock.place(run(1, 3000, 0, 2, 1)).orElseThrow();

    assertThat(second.rhythm().firstDay()).isEqualTo(1);
    assertThat(second.starts()).containsExactly(5 * 3600);
  }

  @Test
  void theDailyVolumeIsKept() {
    DayClock clock = new DayClock(MORNING, 1.5);
    clock.place(run(1, 60, 0, 1, 1));

    assertThat(clock.place(run(1, 60, 0, 1, 1))).isEmpty();
    assertThat(clock.place(run(1, 60, 0, 3, 0.5))).isPresent();
  }

  @Test
  void anotherZoneRunsWhileTheFirstSoaks() {
    DayClock clock = new DayClock(MORNING, Double.POSITIVE_INFINITY);
    clock.place(run(2, 600, 900, 1, 1));

    assertThat(clock.place(run(1, 600, 0, 1, 1)).orElseThrow().starts())
        .containsExactly(5 * 3600 + 600);
  }

  @Test
  void aWindowOverMidnightIsOneSpan() {
    DayClock clock =
        new DayClock(
            List.of(new Hours(LocalTime.of(23, 0), LocalTime.of(1, 0))), Double.POSITIVE_INFINITY);

    assertThat(clock.place(run(1, 7200, 0, 1, 1))).isPresent();
  }

  /** Day by day over a long time, no two runs overlap and no day is over its volume. */
  @Property(tries = 300)
  void noDayIsOverfilled(
      @ForAll @Size(min = 1, max = 8) List<@IntRange(min = 1, max = 7) Integer> gaps,
      @ForAll @IntRange(min = 60, max = 2400) int length) {
    double limit = 2.5;
    DayClock clock = new DayClock(MORNING, limit);
    record Placed(int gap, int first, int start) {}
    List<Placed> placed = new ArrayList<>();
    for (int gap : gaps) {
      Optional<DayClock.Place> place = clock.place(run(1, length, 0, gap, 1));
      place.ifPresent(p -> placed.add(new Placed(gap, p.rhythm().firstDay(), p.starts().get(0))));
    }
    for (int day = 0; day < 420; day++) {
      int today = day;
      List<Placed> runs =
          placed.stream().filter(p -> Math.floorMod(today - p.first(), p.gap()) == 0).toList();
      assertThat((double) runs.size()).isLessThanOrEqualTo(limit);
      for (int i = 0; i < runs.size(); i++) {
        for (int j = i + 1; j < runs.size(); j++) {
          assertThat(Math.abs(runs.get(i).start() - runs.get(j).start()))
              .isGreaterThanOrEqualTo(length);
        }
      }
    }
  }

  @Test
  void waterOnceAWeekGoesToTheAllowedDayThatHasRoom() {
    DayClock clock = new DayClock(MORNING, Double.POSITIVE_INFINITY);
    WateringDays allowed = WateringDays.on(EnumSet.of(DayOfWeek.TUESDAY, DayOfWeek.SATURDAY));
    List<Rhythm> once = Rhythm.choices(allowed, 7).get(0);
    List<Rhythm> twice = Rhythm.choices(allowed, 7).get(1);
    DayClock.Run hour = new DayClock.Run(1, 3600, 0, once, 1);

    assertThat(days(clock.place(hour))).containsExactly(DayOfWeek.TUESDAY);
    assertThat(clock.place(new DayClock.Run(1, 60, 0, twice, 1))).isEmpty();
    assertThat(days(clock.place(hour))).containsExactly(DayOfWeek.SATURDAY);
    assertThat(clock.place(hour)).isEmpty();
  }

  private static Set<DayOfWeek> days(Optional<DayClock.Place> place) {
    return place.orElseThrow().rhythm().days().weekdays();
  }
}
