package org.grovewright.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.grovewright.work.Scheduler.Activity;
import org.grovewright.work.Scheduler.Placement;
import org.grovewright.work.Scheduler.Wait;
import org.junit.jupiter.api.Test;

/**
 * Schedules of small jobs against a search through every start and every number of people, which
 * shares no code with the scheduler. Hours are unbroken and the least session is longer than any
 * job, so that neither side breaks a job off.
 */
class SchedulerOptimumTest {
  private static final LocalDate START = LocalDate.of(2026, 3, 2);

  /** Seconds of a step, short enough that every case ends on the first day. */
  private static final int UNIT = 1800;

  private static final int CASES = 300;

  @Test
  void endsAsEarlyAsTheBestScheduleThereIs() {
    Random random = new Random(7);
    int worse = 0;
    for (int k = 0; k < CASES; k++) {
      int people = 1 + random.nextInt(3);
      List<Activity> activities = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        List<Wait> waits = new ArrayList<>();
        for (int before = 0; before < i; before++) {
          if (random.nextInt(4) == 0) {
            waits.add(new Wait(before, 1L * UNIT * random.nextInt(3)));
          }
        }
        int hours = 1 + random.nextInt(4);
        int most = 1 + random.nextInt(3);
        activities.add(new Activity(1.0 * UNIT * hours, most, START.atStartOfDay(), waits));
      }
      int found = end(activities, people);
      int best = new Exhaustive(activities, people, found).best();
      assertThat(found).isGreaterThanOrEqualTo(best);
      worse += found > best ? 1 : 0;
    }
    assertThat(worse).as("schedules of %d that end later than the best", CASES).isZero();
  }

  private static int end(List<Activity> activities, int people) {
    WorkingTime time = new WorkingTime(Samples.evenings(people, 0, 24), START, UNIT);
    int end = 0;
    for (Placement placement : new Scheduler(activities, people, time, 86_400 / UNIT).schedule()) {
      assertThat(placement.chunks()).hasSize(1);
      end = Math.max(end, placement.endSlot());
    }
    return end;
  }

  private static final class Exhaustive {
    private final List<Activity> activities;
    private final int people;
    private final int[] finish;
    private final int[] busy;
    private int best;

    Exhaustive(List<Activity> activities, int people, int upperBound) {
      this.activities = activities;
      this.people = people;
      this.finish = new int[activities.size()];
      this.busy = new int[upperBound + 1];
      this.best = upperBound;
    }

    int best() {
      search(0, 0);
      return best;
    }

    private void search(int i, int end) {
      if (i == activities.size()) {
        best = Math.min(best, end);
        return;
      }
      Activity activity = activities.get(i);
      int ready = 0;
      for (Wait wait : activity.waits()) {
        ready = Math.max(ready, finish[wait.before()] + (int) (wait.seconds() / UNIT));
      }
      for (int hands = 1; hands <= Math.min(people, activity.maxPeople()); hands++) {
        int hours = (int) Math.ceil(activity.personSeconds() / UNIT / hands);
        // Only a schedule that ends before the best so far is of interest.
        for (int start = ready; start + hours < best; start++) {
          if (isFree(start, hours, hands)) {
            occupy(start, hours, hands);
            finish[i] = start + hours;
            search(i + 1, Math.max(end, finish[i]));
            occupy(start, hours, -hands);
          }
        }
      }
    }

    private boolean isFree(int start, int hours, int hands) {
      for (int t = start; t < start + hours; t++) {
        if (busy[t] + hands > people) {
          return false;
        }
      }
      return true;
    }

    private void occupy(int start, int hours, int hands) {
      for (int t = start; t < start + hours; t++) {
        busy[t] += hands;
      }
    }
  }
}
