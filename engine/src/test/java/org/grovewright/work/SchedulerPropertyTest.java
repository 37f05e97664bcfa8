package org.grovewright.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.grovewright.model.Crew;
import org.grovewright.model.Supply.Hours;
import org.grovewright.work.Scheduler.Activity;
import org.grovewright.work.Scheduler.Chunk;
import org.grovewright.work.Scheduler.Placement;
import org.grovewright.work.Scheduler.Wait;

class SchedulerPropertyTest {
  private static final LocalDate START = LocalDate.of(2026, 3, 20);
  private static final int SLOT = 300;
  private static final int LEAST_CHUNK = 6;

  private static Crew randomCrew(Random random) {
    EnumMap<DayOfWeek, Hours> hours = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      if (random.nextInt(3) > 0 || day == DayOfWeek.SUNDAY) {
        int from = random.nextInt(20);
        int length = 20 + random.nextInt(200);
        LocalTime start = LocalTime.of(from, random.nextInt(60));
        hours.put(day, new Hours(start, start.plusMinutes(length)));
      }
    }
    TreeSet<LocalDate> off = new TreeSet<>();
    for (int k = 0; k < 5; k++) {
      off.add(START.plusDays(random.nextInt(30)));
    }
    return new Crew(1 + random.nextInt(4), hours, off);
  }

  private static List<Activity> randomActivities(Random random, int n) {
    List<Activity> activities = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      List<Wait> waits = new ArrayList<>();
      for (int before = 0; before < i; before++) {
        if (random.nextInt(5) == 0) {
          waits.add(new Wait(before, random.nextBoolean() ? 0 : random.nextInt(200_000)));
        }
      }
      activities.add(
          new Activity(
              60 + random.nextInt(40_000),
              1 + random.nextInt(4),
              START.plusDays(random.nextInt(6)).atStartOfDay(),
              waits));
    }
    return activities;
  }

  /** Checks a schedule against the crew's own hours, not against the slots it was made of. */
  @Property(tries = 60)
  void neverBreaksARule(@ForAll long seed, @ForAll @IntRange(min = 1, max = 14) int n) {
    Random random = new Random(seed);
    Crew crew = randomCrew(random);
    List<Activity> activities = randomActivities(random, n);
    WorkingTime time = new WorkingTime(crew, START, SLOT);
    List<Placement> placements =
        new Scheduler(activities, crew.people(), time, LEAST_CHUNK).schedule();

    Map<LocalDateTime, Integer> atWork = new HashMap<>();
    for (int i = 0; i < n; i++) {
      Activity activity = activities.get(i);
      Placement placement = placements.get(i);
      LocalDateTime start = time.startOf(placement.startSlot());
      assertThat(placement.people()).isBetween(1, Math.min(crew.people(), activity.maxPeople()));
      assertThat(start).isAfterOrEqualTo(activity.notBefore());
      for (Wait wait : activity.waits()) {
        LocalDateTime finish = time.endOf(placements.get(wait.before()).endSlot() - 1);
        assertThat(start).isAfterOrEqualTo(finish.plusSeconds(wait.seconds()));
      }
      int slots = 0;
      for (Chunk chunk : placement.chunks()) {
        for (int slot = chunk.from(); slot < chunk.until(); slot++) {
          slots++;
          LocalDateTime at = time.startOf(slot);
          assertThat(isInHours(crew, at)).as("%s", at).isTrue();
          assertThat(atWork.merge(at, placement.people(), Integer::sum))
              .isLessThanOrEqualTo(crew.people());
        }
      }
      double done = (double) slots * placement.people() * SLOT;
      assertThat(done).isGreaterThanOrEqualTo(activity.personSeconds() - 1e-6);
      assertThat((double) (slots - 1) * placement.people() * SLOT)
          .isLessThan(activity.personSeconds());
    }
  }

  private static boolean isInHours(Crew crew, LocalDateTime at) {
    for (int back = 0; back <= 1; back++) {
      LocalDate day = at.toLocalDate().minusDays(back);
      Hours hours = crew.hours().get(day.getDayOfWeek());
      if (hours != null && !crew.daysOff().contains(day)) {
        LocalDateTime from = day.atTime(hours.from());
        LocalDateTime until = from.plusSeconds(hours.seconds());
        if (!at.isBefore(from) && !at.plusSeconds(SLOT).isAfter(until)) {
          return true;
        }
      }
    }
    return false;
  }

  @Property(tries = 20)
  void isTheSameEveryTime(@ForAll long seed) {
    Random random = new Random(seed);
    Crew crew = randomCrew(random);
    List<Activity> activities = randomActivities(random, 8);
    List<Placement> once =
        new Scheduler(activities, crew.people(), new WorkingTime(crew, START, SLOT), 6).schedule();
    List<Placement> twice =
        new Scheduler(activities, crew.people(), new WorkingTime(crew, START, SLOT), 6).schedule();
    assertThat(twice).isEqualTo(once);
  }
}
