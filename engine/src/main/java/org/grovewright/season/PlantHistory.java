package org.grovewright.season;

import java.util.Comparator;
import java.util.List;

/**
 * One plant through all years.
 *
 * @param plantId the plant
 * @param zone the zone that waters it
 * @param main whether it is a main plant of the grove rather than a companion
 * @param years its years in order, at least one
 */
public record PlantHistory(String plantId, String zone, boolean main, List<PlantYear> years) {
  /** Copies the years. */
  public PlantHistory {
    years = List.copyOf(years);
  }

  /** Years in which it passed its limit. */
  public int failedYears() {
    return (int) years.stream().filter(PlantYear::passedLimit).count();
  }

  /** What the years say of the chance that it passes its limit in another year. */
  public Chance chance() {
    return new Chance(failedYears(), years.size());
  }

  /** Share of the years in which it passed its limit: the likeliest chance that a year does. */
  public double failedShare() {
    return (double) failedYears() / years.size();
  }

  /** Stressed days of a mean year. */
  public double meanStressedDays() {
    return years.stream().mapToInt(PlantYear::stressedDays).average().orElse(0);
  }

  /** Most stressed days in a row in any year. */
  public int longestSpell() {
    return years.stream().mapToInt(PlantYear::longestSpell).max().orElse(0);
  }

  /** The year with the most stressed days; of several the first. */
  public PlantYear worst() {
    return years.stream()
        .max(
            Comparator.comparingInt(PlantYear::stressedDays)
                .thenComparing(Comparator.comparingInt(PlantYear::year).reversed()))
        .orElseThrow();
  }

  /** Water lost below its roots in a mean year, m3. */
  public double lostM3PerYear() {
    return years.stream().mapToDouble(PlantYear::lostM3).average().orElse(0);
  }

  /** Water brought to its soil in a mean year, m3. */
  public double waterM3PerYear() {
    return years.stream().mapToDouble(PlantYear::waterM3).average().orElse(0);
  }
}
