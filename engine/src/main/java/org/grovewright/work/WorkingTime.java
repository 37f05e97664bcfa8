package org.grovewright.work;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.grovewright.model.Crew;
import org.grovewright.model.Supply.Hours;

/**
 * The crew's working hours laid end to end as slots of equal length, numbered from 0. Clock times
 * are local times without a zone: a crew that works from six to eight works from six to eight
 * whether or not the clocks were changed in the night.
 */
final class WorkingTime {
  private final Crew crew;
  private final int slotSeconds;
  private final int longestWindow;
  private final double workedShare;
  private final List<Window> windows = new ArrayList<>();
  private LocalDate nextDate;
  private LocalDateTime busyUntil = LocalDateTime.MIN;

  /**
   * Lays out the hours from a date on.
   *
   * @param crew whose hours
   * @param start first day of work
   * @param slotSeconds length of a slot
   * @throws IllegalArgumentException if no window of the week holds even one slot
   */
  WorkingTime(Crew crew, LocalDate start, int slotSeconds) {
    if (!hasHours(crew, slotSeconds)) {
      throw new IllegalArgumentException("the crew has no working hours");
    }
    this.crew = crew;
    this.slotSeconds = slotSeconds;
    this.nextDate = start;
    LocalDate settled = start.plusDays(7);
    for (LocalDate off : crew.daysOff()) {
      settled = off.plusDays(8).isAfter(settled) ? off.plusDays(8) : settled;
    }
    // The longest window that keeps coming back, seen after the last day off.
    while (nextDate.isBefore(settled.plusDays(14))) {
      addDay();
    }
    int longest = 0;
    long worked = 0;
    for (Window window : windows) {
      if (!window.start().toLocalDate().isBefore(settled)) {
        longest = Math.max(longest, window.slots());
        worked += window.slots();
      }
    }
    this.longestWindow = longest;
    this.workedShare = (double) worked * slotSeconds / (14 * 86_400);
  }

  /** Whether the crew's week holds at least one slot. */
  static boolean hasHours(Crew crew, int slotSeconds) {
    return crew.hours().values().stream().anyMatch(h -> h.seconds() >= slotSeconds);
  }

  private void addDay() {
    Hours hours = crew.hours().get(nextDate.getDayOfWeek());
    if (hours != null && !crew.daysOff().contains(nextDate)) {
      LocalDateTime from = nextDate.atTime(hours.from());
      LocalDateTime until = from.plusSeconds(hours.seconds());
      if (from.isBefore(busyUntil)) {
        from = busyUntil;
      }
      long slots = ChronoUnit.SECONDS.between(from, until) / slotSeconds;
      if (slots > 0) {
        int first = windows.isEmpty() ? 0 : windows.get(windows.size() - 1).end();
        windows.add(new Window(from, secondsAt(from), first, first + (int) slots));
        busyUntil = until;
      }
    }
    nextDate = nextDate.plusDays(1);
  }

  int slotSeconds() {
    return slotSeconds;
  }

  /** Slots of the longest window that comes back week after week. */
  int longestWindow() {
    return longestWindow;
  }

  /** Share of the time that is worked, over whole weeks. */
  double workedShare() {
    return workedShare;
  }

  /** The window with this number, in order of time. */
  Window window(int index) {
    while (windows.size() <= index) {
      addDay();
    }
    return windows.get(index);
  }

  /** Number of the window that holds a slot. */
  int windowOf(int slot) {
    while (windows.get(windows.size() - 1).end() <= slot) {
      addDay();
    }
    int low = 0;
    int high = windows.size() - 1;
    while (low < high) {
      int mid = (low + high) >>> 1;
      if (windows.get(mid).end() <= slot) {
        low = mid + 1;
      } else {
        high = mid;
      }
    }
    return low;
  }

  /** The first slot that starts at or after a time. */
  int slotAtOrAfter(LocalDateTime time) {
    return slotAtOrAfter(secondsAt(time));
  }

  /** The same for a time in seconds as {@link #secondsAtEndOf} gives them. */
  int slotAtOrAfter(long time) {
    while (windows.get(windows.size() - 1).startS() < time) {
      addDay();
    }
    int low = 0;
    int high = windows.size() - 1;
    // First window whose end lies after the time.
    while (low < high) {
      int mid = (low + high) >>> 1;
      Window window = windows.get(mid);
      if (window.startS() + (long) window.slots() * slotSeconds > time) {
        high = mid;
      } else {
        low = mid + 1;
      }
    }
    Window window = windows.get(low);
    if (window.startS() >= time) {
      return window.first();
    }
    long late = time - window.startS();
    return window.first() + (int) ((late + slotSeconds - 1) / slotSeconds);
  }

  /** Clock time at which a slot ends, in seconds of the clock since some day long ago. */
  long secondsAtEndOf(int slot) {
    Window window = window(windowOf(slot));
    return window.startS() + (long) (slot + 1 - window.first()) * slotSeconds;
  }

  private static long secondsAt(LocalDateTime time) {
    return time.toEpochSecond(ZoneOffset.UTC);
  }

  /** Clock time at which a slot starts. */
  LocalDateTime startOf(int slot) {
    Window window = window(windowOf(slot));
    return window.start().plusSeconds((long) (slot - window.first()) * slotSeconds);
  }

  /** Clock time at which a slot ends. */
  LocalDateTime endOf(int slot) {
    return startOf(slot).plusSeconds(slotSeconds);
  }

  /**
   * One unbroken span of working hours.
   *
   * @param start clock time of its start
   * @param startS the same in seconds, to count with
   * @param first its first slot
   * @param end the slot after its last
   */
  record Window(LocalDateTime start, long startS, int first, int end) {
    int slots() {
      return end - first;
    }
  }
}
