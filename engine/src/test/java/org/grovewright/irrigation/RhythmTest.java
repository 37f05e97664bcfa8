package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.grovewright.model.WateringDays;
import org.junit.jupiter.api.Test;

class RhythmTest {
  private static final LocalDate START = LocalDate.of(2027, 3, 1);

  /** Against the calendar of the JDK, day by day through a cycle of leap years. */
  @Property(tries = 60)
  void theCalendarIsKept(
      @ForAll @Size(min = 1, max = 7) List<@IntRange(min = 1, max = 7) Integer> weekdays,
      @ForAll @IntRange(min = 0, max = 2) int dates,
      @ForAll @IntRange(min = 1, max = 14) int window) {
    EnumSet<DayOfWeek> some = EnumSet.noneOf(DayOfWeek.class);
    weekdays.forEach(day -> some.add(DayOfWeek.of(day)));
    WateringDays allowed =
        dates == 0 ? WateringDays.on(some) : WateringDays.on(WateringDays.Dates.values()[dates]);
    Rhythm rhythm = Rhythm.on(allowed);
    int days = 1461;
    boolean[] waters = new boolean[days];
    int longest = 0;
    int last = -1;
    for (int i = 0; i < days; i++) {
      LocalDate date = START.plusDays(i);
      waters[i] = rhythm.waters(date, START);
      boolean named =
          dates == 0
              ? some.contains(date.getDayOfWeek())
              : date.getDayOfMonth() % 2 == (dates == 1 ? 1 : 0);
      assertThat(waters[i]).isEqualTo(named);
      if (waters[i]) {
        longest = last < 0 ? longest : Math.max(longest, i - last);
        last = i;
      }
    }
    assertThat(rhythm.everyDays()).isEqualTo(longest);
    int most = 0;
    for (int from = 0; from + window <= days; from++) {
      int times = 0;
      for (int i = from; i < from + window; i++) {
        times += waters[i] ? 1 : 0;
      }
      most = Math.max(most, times);
    }
    assertThat(rhythm.mostIn(window)).isEqualTo(most);
  }

  @Test
  void theRarestDaysComeFirstAndAreSpreadEvenly() {
    WateringDays allowed =
        WateringDays.on(
            EnumSet.of(
                DayOfWeek.MONDAY, DayOfWeek.TUESDAY, DayOfWeek.THURSDAY, DayOfWeek.SATURDAY));

    List<List<Rhythm>> choices = Rhythm.choices(allowed, 7);

    assertThat(choices).extracting(c -> c.get(0).everyDays()).containsExactly(7, 4, 3, 2);
    assertThat(choices.get(0)).hasSize(4);
    // Monday and Thursday, and Tuesday and Saturday, are as even as two days of a week can be.
    assertThat(choices.get(1))
        .extracting(r -> List.copyOf(r.days().weekdays()))
        .contains(
            List.of(DayOfWeek.MONDAY, DayOfWeek.THURSDAY),
            List.of(DayOfWeek.TUESDAY, DayOfWeek.SATURDAY))
        .doesNotContain(List.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY));
    assertThat(choices.get(3).get(0).perDay(6)).isCloseTo(4 / 7.0, within(1e-12));
  }

  @Test
  void oddDatesAreCountedByTheMonth() {
    Rhythm odd = Rhythm.on(WateringDays.on(WateringDays.Dates.ODD));
    assertThat(odd.perDay(1)).isCloseTo(16 / 31.0, within(1e-12));
    assertThat(odd.perDay(2)).isCloseTo(14 / 28.0, within(1e-12));
    assertThat(odd.perDay(4)).isCloseTo(15 / 30.0, within(1e-12));
  }

  @Test
  void withoutARuleTheDaysAreCounted() {
    List<List<Rhythm>> choices = Rhythm.choices(WateringDays.ANY, 3);
    assertThat(choices).extracting(List::size).containsExactly(3, 2, 1);
    assertThat(choices.get(0).get(1).waters(START.plusDays(4), START)).isTrue();
    assertThat(choices.get(0).get(1).waters(START.plusDays(3), START)).isFalse();
  }
}
