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
  private record Span(int from, int until, Rhythm rhythm) {}

  private record Draw(Rhythm rhythm, double volume) {}

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
   * @param rhythms the days on which it may fall, one of which will do
   * @param volume water of all cycles together, m3
   */
  record Run(int cycles, int onS, int soakS, List<Rhythm> rhythms, double volume) {
    Run {
      rhythms = List.copyOf(rhythms);
    }

    /** The same run with a pause of at least so many seconds between its cycles. */
    Run pausing(int leastS) {
      return new Run(cycles, onS, Math.max(soakS, leastS), rhythms, volume);
    }
  }

  /**
   * Where a run was put.
   *
   * @param rhythm its days
   * @param starts start of each cycle, seconds from midnight
   */
  record Place(Rhythm rhythm, List<Integer> starts) {}

  /** Puts a run on the first day and at the earliest times that are free, if there are any. */
  Optional<Place> place(Run run) {
    for (Rhythm rhythm : run.rhythms()) {
      if (heaviestDay(rhythm) + run.volume() > dailyVolume * (1 + 1e-9)) {
        continue;
      }
      List<Integer> starts = starts(run, rhythm);
      if (starts.size() == run.cycles()) {
        for (int start : starts) {
          taken.add(new Span(start, start + run.onS(), rhythm));
        }
        drawn.add(new Draw(rhythm, run.volume()));
        return Optional.of(new Place(rhythm, starts));
      }
    }
    return Optional.empty();
  }

  private List<Integer> starts(Run run, Rhythm rhythm) {
    List<Integer> starts = new ArrayList<>();
    int earliest = 0;
    for (int c = 0; c < run.cycles(); c++) {
      Optional<Integer> start = firstFree(earliest, run.onS(), rhythm);
      if (start.isEmpty()) {
        break;
      }
      starts.add(start.get());
      earliest = start.get() + run.onS() + run.soakS();
    }
    return starts;
  }

  private Optional<Integer> firstFree(int earliest, int length, Rhythm rhythm) {
    for (Window window : allowed) {
      int start = Math.max(earliest, window.from());
      boolean moved = true;
      while (moved && start + length <= window.until()) {
        moved = false;
        for (Span busy : taken) {
          boolean overlaps = start < busy.until() && busy.from() < start + length;
          if (overlaps && busy.rhythm().meets(rhythm)) {
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
  private double heaviestDay(Rhythm rhythm) {
    int cycle = rhythm.period();
    for (Draw d : drawn) {
      cycle = cycle / Rhythm.gcd(cycle, d.rhythm().period()) * d.rhythm().period();
    }
    double most = 0;
    for (int day = 0; day < cycle; day++) {
      if (!rhythm.onDay(day)) {
        continue;
      }
      double sum = 0;
      for (Draw d : drawn) {
        if (d.rhythm().onDay(day)) {
          sum += d.volume();
        }
      }
      most = Math.max(most, sum);
    }
    return most;
  }
}
