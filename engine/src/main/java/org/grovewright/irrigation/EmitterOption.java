package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.EmitterType;

/**
 * One way to bring a plant to its full emitters over the years.
 *
 * @param starters smaller emitters that the young plant has in the holes of the later ones, if any
 * @param stay its full emitters, those fitted first before those added later
 * @param flows flow of those open in each year, m3/s
 */
record EmitterOption(List<StagedEmitter> starters, List<StagedEmitter> stay, double[] flows) {
  EmitterOption {
    starters = List.copyOf(starters);
    stay = List.copyOf(stay);
  }

  /** Number of emitters to be bought and fitted in all years. */
  int pieces() {
    return starters.size() + stay.size();
  }

  /**
   * A type with the flow it gives at the plant.
   *
   * @param flow m3/s
   */
  record Rated(EmitterType type, double flow) {}

  /** The full emitters in every year. */
  static EmitterOption constant(Rated full, int count, int years) {
    List<StagedEmitter> stay = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      stay.add(StagedEmitter.always(full.type()));
    }
    return of(List.of(), stay, full, full, years);
  }

  /**
   * All ways to reach the full emitters in the last year, with a flow that never falls: some of
   * them first and the others later, or smaller ones first that are exchanged for the full ones. Of
   * ways with the same flows the one with the fewest pieces is kept.
   *
   * @param full type of the full emitters
   * @param count their number
   * @param smaller types that the plant may start with
   * @param least fewest emitters at any time
   */
  static List<EmitterOption> all(Rated full, int count, List<Rated> smaller, int least, int years) {
    Map<List<Long>, EmitterOption> byFlows = new LinkedHashMap<>();
    for (int exchange = 1; exchange <= years; exchange++) {
      List<Rated> starts = exchange == 1 ? List.of(full) : smaller;
      for (Rated start : starts) {
        extend(new int[years], 0, exchange, start, full, count, least, byFlows);
      }
    }
    return List.copyOf(byFlows.values());
  }

  /** Tries all numbers of emitters for a year and those after it; the last has them all. */
  private static void extend(
      int[] counts,
      int year,
      int exchange,
      Rated start,
      Rated full,
      int count,
      int least,
      Map<List<Long>, EmitterOption> byFlows) {
    if (year == counts.length) {
      EmitterOption option = staged(counts, exchange, start, full);
      if (option.grows()) {
        byFlows.merge(option.key(), option, (a, b) -> b.pieces() < a.pieces() ? b : a);
      }
      return;
    }
    // As many as before at least, so that no hole is left when emitters are exchanged.
    int from = year == 0 ? Math.min(least, count) : counts[year - 1];
    for (int n = year == counts.length - 1 ? count : from; n <= count; n++) {
      counts[year] = n;
      extend(counts, year + 1, exchange, start, full, count, least, byFlows);
    }
  }

  private static EmitterOption staged(int[] counts, int exchange, Rated start, Rated full) {
    List<StagedEmitter> starters = new ArrayList<>();
    List<StagedEmitter> stay = new ArrayList<>();
    for (int year = 1; year <= counts.length; year++) {
      if (year < exchange) {
        while (starters.size() < counts[year - 1]) {
          starters.add(new StagedEmitter(start.type(), year, exchange - 1));
        }
      } else {
        while (stay.size() < counts[year - 1]) {
          stay.add(new StagedEmitter(full.type(), year, StagedEmitter.STAYS));
        }
      }
    }
    return of(starters, stay, start, full, counts.length);
  }

  private static EmitterOption of(
      List<StagedEmitter> starters, List<StagedEmitter> stay, Rated start, Rated full, int years) {
    double[] flows = new double[years];
    for (int year = 1; year <= years; year++) {
      for (StagedEmitter emitter : starters) {
        flows[year - 1] += emitter.openIn(year) ? start.flow() : 0;
      }
      for (StagedEmitter emitter : stay) {
        flows[year - 1] += emitter.openIn(year) ? full.flow() : 0;
      }
    }
    return new EmitterOption(starters, stay, flows);
  }

  private boolean grows() {
    for (int y = 1; y < flows.length; y++) {
      if (flows[y] < flows[y - 1] * (1 - 1e-9)) {
        return false;
      }
    }
    return true;
  }

  /** Flows in steps so fine that no two ways worth telling apart share them. */
  private List<Long> key() {
    List<Long> key = new ArrayList<>();
    for (double flow : flows) {
      key.add(Math.round(flow * 1e12));
    }
    return key;
  }
}
