package org.grovewright.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.model.WateringDays;
import org.junit.jupiter.api.Test;

/** The heaviest seven days against the calendar of the JDK, day by day. */
class WeekDrawTest {
  private static final int DAYS = 28 * 366;

  private static double heaviest(List<WeekDraw.Load> loads, int[] begins) {
    LocalDate first = LocalDate.of(2000, 1, 1);
    double[] drawn = new double[DAYS];
    for (int l = 0; l < begins.length; l++) {
      int since = begins[l];
      for (int day = 0; day < DAYS; day++) {
        LocalDate date = first.plusDays(day);
        int month = date.getMonthValue() - 1;
        Rhythm rhythm = loads.get(l).rhythms()[month];
        since++;
        boolean due =
            rhythm.byCalendar() ? rhythm.days().allows(date) : since >= rhythm.everyDays();
        if (loads.get(l).m3()[month] > 0 && due) {
          drawn[day] += loads.get(l).m3()[month];
          since = 0;
        }
      }
    }
    double most = 0;
    for (int day = 0; day + 7 <= DAYS; day++) {
      double sum = 0;
      for (int i = day; i < day + 7; i++) {
        sum += drawn[i];
      }
      most = Math.max(most, sum);
    }
    return most;
  }

  private static WeekDraw.Load load(Random random, WateringDays allowed) {
    double[] m3 = new double[12];
    Rhythm[] rhythms = new Rhythm[12];
    List<List<Rhythm>> choices = Rhythm.choices(allowed, 7);
    for (int month = 0; month < 12; month++) {
      m3[month] = random.nextInt(4) == 0 ? 0 : random.nextInt(1, 9);
      rhythms[month] = choices.get(random.nextInt(choices.size())).get(0);
    }
    return new WeekDraw.Load(m3, rhythms);
  }

  /** One load alone reaches the bound in some year whenever its count may begin on any day. */
  @Test
  void oneLoadOfCountedDaysIsBoundedTightly() {
    for (int seed = 0; seed < 40; seed++) {
      WeekDraw.Load load = load(new Random(seed), WateringDays.ANY);
      double bound = WeekDraw.most(List.of(load));
      double found = 0;
      for (int begin = 0; begin < 7; begin++) {
        found = Math.max(found, heaviest(List.of(load), new int[] {begin}));
      }
      assertThat(found).as("seed %s", seed).isLessThanOrEqualTo(bound + 1e-9);
      assertThat(bound).as("seed %s", seed).isLessThanOrEqualTo(found * 1.35 + 1e-9);
    }
  }

  @Test
  void daysOfTheCalendarAreCountedExactly() {
    for (int seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      EnumSet<DayOfWeek> some = EnumSet.of(DayOfWeek.of(random.nextInt(1, 8)));
      some.add(DayOfWeek.of(random.nextInt(1, 8)));
      WateringDays allowed =
          seed % 3 == 0
              ? WateringDays.on(seed % 2 == 0 ? WateringDays.Dates.ODD : WateringDays.Dates.EVEN)
              : WateringDays.on(some);
      List<WeekDraw.Load> loads = new ArrayList<>();
      loads.add(load(random, allowed));
      loads.add(load(random, allowed));
      assertThat(WeekDraw.most(loads))
          .as("seed %s", seed)
          .isCloseTo(heaviest(loads, new int[] {9, 9}), within(1e-9));
    }
  }

  @Test
  void aWeekAtTheTurnOfAMonthMayBeTheHeaviest() {
    double[] m3 = new double[12];
    Rhythm[] rhythms = new Rhythm[12];
    java.util.Arrays.fill(rhythms, Rhythm.every(1, 0));
    m3[4] = 7;
    rhythms[4] = Rhythm.every(7, 0);
    m3[5] = 1;
    // The last day of May draws a week's water, and six days of June follow it.
    assertThat(WeekDraw.most(List.of(new WeekDraw.Load(m3, rhythms)))).isEqualTo(13);
  }
}
