package org.grovewright.work;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Puts activities into the crew's hours: a project schedule with one limited resource (people),
 * where an activity is done faster by more people up to its own limit, may be broken off at the end
 * of a working window and goes on in a later one.
 *
 * <p>Each try is a serial schedule generation: activities are taken one by one in an order of
 * priority that respects what comes first, and each is put where it finishes earliest in the time
 * still free. Tries differ in their order (least latest start first, longest chain first, and a
 * fixed number of shuffled orders from a fixed seed); the schedule that ends first is kept, and of
 * those the one whose activities end earlier altogether. Every other shuffled try also fixes how
 * many people each activity gets, because the most that can help is not always best for the whole.
 * Source of the scheme: Kelley, The Critical-Path Method: Resources Planning and Scheduling (1963);
 * Kolisch, Serial and parallel resource-constrained project scheduling methods revisited (1996),
 * both from memory.
 */
final class Scheduler {
  private static final int SHUFFLED_TRIES = 300;
  private static final long SEED = 20_260_101L;

  private final List<Activity> activities;
  private final int people;
  private final WorkingTime time;
  private final int leastChunk;
  private final List<List<CriticalPath.Link>> links;

  /** By activity: the first slot in which it may begin, whatever it waits for. */
  private final int[] earliest;

  /**
   * Prepares a schedule.
   *
   * @param activities what is to be done
   * @param people size of the crew
   * @param time the crew's hours
   * @param leastChunkSlots an activity is not broken into parts shorter than this
   */
  Scheduler(List<Activity> activities, int people, WorkingTime time, int leastChunkSlots) {
    this.activities = List.copyOf(activities);
    this.people = people;
    this.time = time;
    this.leastChunk = Math.min(leastChunkSlots, time.longestWindow());
    this.links = new ArrayList<>();
    this.earliest = activities.stream().mapToInt(a -> time.slotAtOrAfter(a.notBefore())).toArray();
    for (Activity activity : activities) {
      List<CriticalPath.Link> row = new ArrayList<>();
      for (Wait wait : activity.waits()) {
        double lag = wait.seconds() * time.workedShare() / time.slotSeconds();
        row.add(new CriticalPath.Link(wait.before(), lag));
      }
      links.add(row);
    }
  }

  /** The best schedule of all tries; one placement for each activity, in their order. */
  List<Placement> schedule() {
    int n = activities.size();
    if (n == 0) {
      return List.of();
    }
    double[] duration = new double[n];
    for (int i = 0; i < n; i++) {
      duration[i] = slotsOf(activities.get(i), mostPeople(activities.get(i)));
    }
    CriticalPath path = new CriticalPath(duration, links);
    double[] latestStart = new double[n];
    double[] latestFinish = new double[n];
    for (int i = 0; i < n; i++) {
      latestStart[i] = path.latestStart(i);
      latestFinish[i] = path.latestFinish(i);
    }
    int[] all = new int[n];
    for (int i = 0; i < n; i++) {
      all[i] = mostPeople(activities.get(i));
    }
    Try best = attempt(latestStart, all, false, Integer.MAX_VALUE);
    best = better(best, attempt(latestFinish, all, false, best.end()));
    SplittableRandom random = new SplittableRandom(SEED);
    for (int k = 0; k < SHUFFLED_TRIES; k++) {
      boolean exactly = k % 2 == 0;
      double[] priority = new double[n];
      int[] limit = all.clone();
      // The later the try, the further its order strays from the critical path's.
      double spread = path.length() * (0.1 + 2.4 * k / SHUFFLED_TRIES);
      for (int i = 0; i < n; i++) {
        priority[i] = latestStart[i] + spread * (random.nextDouble() - 0.5);
        if (exactly || random.nextInt(4) == 0) {
          limit[i] = 1 + random.nextInt(all[i]);
        }
      }
      best = better(best, attempt(priority, limit, exactly, best.end()));
    }
    return Arrays.asList(best.placements());
  }

  private static Try better(Try a, Try b) {
    if (b.end() != a.end()) {
      return b.end() < a.end() ? b : a;
    }
    return b.sumOfEnds() < a.sumOfEnds() ? b : a;
  }

  /**
   * One schedule; {@code exactly} puts as many people to each activity as its limit says. Given up
   * as soon as it ends later than {@code latestEnd}.
   */
  private Try attempt(double[] priority, int[] limit, boolean exactly, int latestEnd) {
    int n = activities.size();
    Placement[] placed = new Placement[n];
    boolean[] done = new boolean[n];
    Usage usage = new Usage();
    int end = 0;
    long sum = 0;
    for (int step = 0; step < n; step++) {
      int next = -1;
      for (int i = 0; i < n; i++) {
        if (!done[i] && (next < 0 || priority[i] < priority[next]) && isReady(i, done)) {
          next = i;
        }
      }
      placed[next] = place(next, exactly ? limit[next] : 1, limit[next], placed, usage);
      usage.add(placed[next]);
      done[next] = true;
      end = Math.max(end, placed[next].endSlot());
      sum += placed[next].endSlot();
      if (end > latestEnd) {
        return new Try(placed, end, sum);
      }
    }
    return new Try(placed, end, sum);
  }

  private boolean isReady(int i, boolean[] done) {
    for (Wait wait : activities.get(i).waits()) {
      if (!done[wait.before()]) {
        return false;
      }
    }
    return true;
  }

  /** Puts one activity where it ends earliest, with as many people as that takes. */
  private Placement place(int i, int fewest, int most, Placement[] placed, Usage usage) {
    Activity activity = activities.get(i);
    int ready = earliest[i];
    for (Wait wait : activity.waits()) {
      int end = placed[wait.before()].endSlot();
      int after =
          wait.seconds() == 0
              ? end
              : time.slotAtOrAfter(time.secondsAtEndOf(end - 1) + wait.seconds());
      ready = Math.max(ready, after);
    }
    Placement best = null;
    for (int hands = most; hands >= fewest; hands--) {
      Placement placement = fill(slotsOf(activity, hands), hands, ready, usage);
      if (best == null || placement.endSlot() < best.endSlot()) {
        best = placement;
      }
    }
    return best;
  }

  private Placement fill(int slots, int hands, int ready, Usage usage) {
    List<Chunk> chunks = new ArrayList<>();
    int remaining = slots;
    int at = ready;
    for (int w = time.windowOf(ready); remaining > 0; w++) {
      WorkingTime.Window window = time.window(w);
      at = Math.max(at, window.first());
      while (at < window.end() && remaining > 0) {
        int from = usage.firstFree(at, window.end(), hands);
        int until = usage.firstBusy(from, window.end(), hands);
        int take = from < until ? chunk(remaining, until - from) : 0;
        if (take > 0) {
          chunks.add(new Chunk(from, from + take));
          remaining -= take;
        }
        at = Math.max(until, from + 1);
      }
    }
    return new Placement(hands, chunks);
  }

  /** How much of the remaining work to do in a gap, so that no part is too short to be worth it. */
  private int chunk(int remaining, int gap) {
    if (remaining <= gap) {
      return remaining;
    }
    if (gap < leastChunk) {
      return 0;
    }
    if (remaining - gap >= leastChunk) {
      return gap;
    }
    if (remaining - leastChunk >= leastChunk) {
      return remaining - leastChunk;
    }
    return remaining <= time.longestWindow() ? 0 : gap;
  }

  private int slotsOf(Activity activity, int hands) {
    double slots = activity.personSeconds() / hands / time.slotSeconds();
    return Math.max(1, (int) Math.ceil(slots - 1e-9));
  }

  private int mostPeople(Activity activity) {
    return Math.max(1, Math.min(people, activity.maxPeople()));
  }

  /** How many people are at work in each slot. */
  private final class Usage {
    private int[] busy = new int[1024];

    private int at(int slot) {
      return slot < busy.length ? busy[slot] : 0;
    }

    int firstFree(int from, int end, int hands) {
      int slot = from;
      while (slot < end && at(slot) + hands > people) {
        slot++;
      }
      return slot;
    }

    int firstBusy(int from, int end, int hands) {
      int slot = from;
      while (slot < end && at(slot) + hands <= people) {
        slot++;
      }
      return slot;
    }

    void add(Placement placement) {
      if (placement.endSlot() > busy.length) {
        busy = Arrays.copyOf(busy, Math.max(placement.endSlot(), busy.length * 2));
      }
      for (Chunk chunk : placement.chunks()) {
        for (int slot = chunk.from(); slot < chunk.until(); slot++) {
          busy[slot] += placement.people();
        }
      }
    }
  }

  private record Try(Placement[] placements, int end, long sumOfEnds) {}

  /**
   * What is to be done.
   *
   * @param personSeconds work of one person, seconds
   * @param maxPeople how many can work on it at a time
   * @param notBefore earliest clock time of its start
   * @param waits what it waits for
   */
  record Activity(double personSeconds, int maxPeople, LocalDateTime notBefore, List<Wait> waits) {
    Activity {
      waits = List.copyOf(waits);
    }
  }

  /**
   * A wait for an earlier activity.
   *
   * @param before index of the earlier activity
   * @param seconds clock time that must pass after its finish
   */
  record Wait(int before, long seconds) {}

  /**
   * Where an activity went.
   *
   * @param people how many do it
   * @param chunks its parts in order of time, never empty
   */
  record Placement(int people, List<Chunk> chunks) {
    Placement {
      chunks = List.copyOf(chunks);
    }

    int startSlot() {
      return chunks.get(0).from();
    }

    int endSlot() {
      return chunks.get(chunks.size() - 1).until();
    }
  }

  /**
   * An unbroken part of an activity.
   *
   * @param from its first slot
   * @param until the slot after its last
   */
  record Chunk(int from, int until) {}
}
