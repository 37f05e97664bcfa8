package org.grovewright.work;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;

/**
 * The critical path method: earliest and latest times of activities bound only by what must come
 * before what. Times are in whatever unit the durations have, counted from the start of the work.
 *
 * <p>Forward pass {@code ES = max(EF + lag)} over the predecessors, {@code EF = ES + d}; backward
 * pass {@code LF = min(LS - lag)} over the successors, {@code LS = LF - d}; slack {@code LS - ES}.
 * Source: Kelley and Walker, Critical-Path Planning and Scheduling (1959), from memory.
 */
final class CriticalPath {
  private final double[] earliestStart;
  private final double[] latestStart;
  private final double[] duration;
  private final double length;

  /**
   * Does both passes.
   *
   * @param duration duration of each activity
   * @param links predecessors of each activity, with the time that must pass after each of them
   * @throws IllegalArgumentException if the activities wait for each other in a circle
   */
  CriticalPath(double[] duration, List<List<Link>> links) {
    int n = duration.length;
    List<Integer> order = inOrder(links);
    double[] start = new double[n];
    double end = 0;
    for (int i : order) {
      for (Link link : links.get(i)) {
        start[i] = Math.max(start[i], start[link.before()] + duration[link.before()] + link.lag());
      }
      end = Math.max(end, start[i] + duration[i]);
    }
    double[] latest = new double[n];
    for (int i = 0; i < n; i++) {
      latest[i] = end - duration[i];
    }
    for (int k = n - 1; k >= 0; k--) {
      int i = order.get(k);
      for (Link link : links.get(i)) {
        int before = link.before();
        latest[before] = Math.min(latest[before], latest[i] - link.lag() - duration[before]);
      }
    }
    this.duration = duration.clone();
    this.earliestStart = start;
    this.latestStart = latest;
    this.length = end;
  }

  double earliestStart(int i) {
    return earliestStart[i];
  }

  double earliestFinish(int i) {
    return earliestStart[i] + duration[i];
  }

  double latestStart(int i) {
    return latestStart[i];
  }

  double latestFinish(int i) {
    return latestStart[i] + duration[i];
  }

  /** How far activity i can slip without moving the end of the work. */
  double slack(int i) {
    return latestStart[i] - earliestStart[i];
  }

  /** Time from the start of the first activity to the end of the last. */
  double length() {
    return length;
  }

  /**
   * The activities in an order in which none comes before its predecessors.
   *
   * @throws IllegalArgumentException if there is no such order
   */
  static List<Integer> inOrder(List<List<Link>> links) {
    int n = links.size();
    int[] open = new int[n];
    List<List<Integer>> after = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      after.add(new ArrayList<>());
    }
    for (int i = 0; i < n; i++) {
      for (Link link : links.get(i)) {
        open[i]++;
        after.get(link.before()).add(i);
      }
    }
    ArrayDeque<Integer> ready = new ArrayDeque<>();
    for (int i = 0; i < n; i++) {
      if (open[i] == 0) {
        ready.add(i);
      }
    }
    List<Integer> order = new ArrayList<>();
    while (!ready.isEmpty()) {
      int i = ready.poll();
      order.add(i);
      for (int next : after.get(i)) {
        if (--open[next] == 0) {
          ready.add(next);
        }
      }
    }
    if (order.size() < n) {
      throw new IllegalArgumentException("activities wait for each other in a circle");
    }
    return order;
  }

  /**
   * One activity waits for another.
   *
   * @param before index of the activity that comes first
   * @param lag time that must pass between its finish and the start of the one that waits
   */
  record Link(int before, double lag) {}
}
