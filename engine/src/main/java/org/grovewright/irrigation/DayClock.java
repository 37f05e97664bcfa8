package org.grovewright.irrigation;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Grove;
import org.grovewright.model.Supply.Hours;

/**
 * The allowed watering hours, filled run by run over the days on which each run falls. One valve is
 * open at a time, so runs that can fall on one day never overlap, and no day draws more than the
 * daily volume. Times are seconds from midnight and may run past the next midnight where an allowed
 * span does.
 */
final class DayClock {
  /** A span of time taken on every {@code gap}-th day from day {@code first} on. */
  private record Span(int from, int until, int gap, int first) {
    boolean meets(int otherGap, int otherFirst) {
      return Math.floorMod(first - otherFirst, gcd(gap, otherGap)) == 0;
    }
  }

  private record Draw(int gap, int first, double volume) {}

  private record Window(int from, int until) {}

  private final List<Window> allowed = new ArrayList<>();
  private final List<Span> taken = new ArrayList<>();
  private final List<Draw> drawn = new ArrayList<>();
  private final double dailyVolume;

  /**
   * A clock with nothing on it.
   *
   * @param hours allowed hours
   * @param dailyVolume most water on any day, m3; infinite where there is no limit
   */
  DayClock(List<Hours> hours, double dailyVolume) {
    for (Hours h : hours) {
      int from = h.from().toSecondOfDay();
      allowed.add(new Window(from, from + h.seconds()));
    }
    allowed.sort(Comparator.comparingInt(Window::from));
    this.dailyVolume = dailyVolume;
  }

  /** The hours in which a grove may be watered; from the usual start round the clock if any may. */
  static List<Hours> allowedHours(Grove grove, Catalogue catalogue) {
    if (!grove.supply().allowedHours().isEmpty()) {
      return grove.supply().allowedHours();
    }
    LocalTime usual =
        LocalTime.ofSecondOfDay((long) catalogue.constant("irrigation.usual-start").value());
    return List.of(new Hours(usual, usual));
  }

  /**
   * A run that waits for its place.
   *
   * @param cycles number of cycles
   * @param onS length of a cycle, seconds
   * @param soakS least pause between cycles, seconds
   * @param gap days from one watering to the next
   * @param volume water of all cycles together, m3
   */
  record Run(int cycles, int onS, int soakS, int gap, double volume) {
    /** The same run with a pause of at least so many seconds between its cycles. */
    Run pausing(int leastS) {
      return new Run(cycles, onS, Math.max(soakS, leastS), gap, volume);
    }
  }

  /**
   * Where a run was put.
   *
   * @param first day of its first watering, from 0
   * @param starts start of each cycle, seconds from midnight
   */
  record Place(int first, List<Integer> starts) {}

  /** Puts a run on the first day and at the earliest times that are free, if there are any. */
  Optional<Place> place(Run run) {
    for (int first = 0; first < run.gap(); first++) {
      if (heaviestDay(run.gap(), first) + run.volume() > dailyVolume * (1 + 1e-9)) {
        continue;
      }
      List<Integer> starts = starts(run, first);
      if (starts.size() == run.cycles()) {
        for (int start : starts) {
          taken.add(new Span(start, start + run.onS(), run.gap(), first));
        }
        drawn.add(new Draw(run.gap(), first, run.volume()));
        return Optional.of(new Place(first, starts));
      }
    }
    return Optional.empty();
  }

  private List<Integer> starts(Run run, int first) {
    List<Integer> starts = new ArrayList<>();
    int earliest = 0;
    for (int c = 0; c < run.cycles(); c++) {
      Optional<Integer> start = firstFree(earliest, run.onS(), run.gap(), first);
      if (start.isEmpty()) {
        break;
      }
      starts.add(start.get());
      earliest = start.get() + run.onS() + run.soakS();
    }
    return starts;
  }

  private Optional<Integer> firstFree(int earliest, int length, int gap, int first) {
    for (Window window : allowed) {
      int start = Math.max(earliest, window.from());
      boolean moved = true;
      while (moved && start + length <= window.until()) {
        moved = false;
        for (Span busy : taken) {
          boolean overlaps = start < busy.until() && busy.from() < start + length;
          if (overlaps && busy.meets(gap, first)) {
            start = busy.until();
            moved = true;
          }
        }
      }
      if (start + length <= window.until()) {
        return Optional.of(start);
      }
    }
    return Optional.empty();
  }

  /** Water already drawn on the heaviest of the days on which a new run would fall, m3. */
  private double heaviestDay(int gap, int first) {
    int cycle = gap;
    for (Draw d : drawn) {
      cycle = cycle / gcd(cycle, d.gap()) * d.gap();
    }
    double most = 0;
    for (int day = first; day < cycle; day += gap) {
      double sum = 0;
      for (Draw d : drawn) {
        if (Math.floorMod(day - d.first(), d.gap()) == 0) {
          sum += d.volume();
        }
      }
      most = Math.max(most, sum);
    }
    return most;
  }

  private static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }
}
