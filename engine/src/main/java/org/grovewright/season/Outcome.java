package org.grovewright.season;

import java.util.Comparator;
import java.util.List;

/**
 * What one way of watering did over all years.
 *
 * @param way the way
 * @param waterM3PerYear water drawn from the supply in a mean year, m3
 * @param share share of the wanted minutes that the water that may be drawn leaves, at most 1
 * @param plants the plants, in the order of the zones
 */
public record Outcome(Way way, double waterM3PerYear, double share, List<PlantHistory> plants) {
  /** A way of watering. */
  public enum Way {
    /** The setting found by search. */
    CARD,
    /** The plan's own programme, made from monthly means. */
    MONTHLY_NEEDS,
    /** Half an hour every other day, all year. */
    SAME_HALF_HOUR,
    /** One fixed depth of water once a week, all year. */
    WEEKLY_DEPTH,
    /** Each zone the same minutes all year, the least that keep the plants as the card does. */
    SAME_KEEPING,
    /** Each zone the same minutes all year, with about the water of the card. */
    SAME_WATER
  }

  /** Copies the plants. */
  public Outcome {
    plants = List.copyOf(plants);
  }

  /** Stressed days of all plants together in a mean year. */
  public double stressedPlantDays() {
    return plants.stream().mapToDouble(PlantHistory::meanStressedDays).sum();
  }

  /** Water lost below the roots of all plants in a mean year, m3. */
  public double lostM3PerYear() {
    return plants.stream().mapToDouble(PlantHistory::lostM3PerYear).sum();
  }

  /** Plants that pass their limit in no more than this share of the years. */
  public long kept(double share) {
    return plants.stream().filter(p -> p.failedShare() <= share + 1e-9).count();
  }

  /** The plant that passes its limit most often; of several the one with the most stressed days. */
  public PlantHistory worst() {
    return plants.stream()
        .max(
            Comparator.comparingDouble(PlantHistory::failedShare)
                .thenComparingDouble(PlantHistory::meanStressedDays))
        .orElseThrow();
  }
}
