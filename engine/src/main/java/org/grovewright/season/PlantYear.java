package org.grovewright.season;

/**
 * What one year of weather did to one plant.
 *
 * @param year calendar year in which it begins
 * @param stressedDays days on which the plant could not take up all it wanted
 * @param longestSpell most such days in a row
 * @param shortfall share of what it wanted that it did not get
 * @param waterM3 water brought to its soil, m3
 * @param lostM3 water, rain included, that ran through below its roots, m3
 */
public record PlantYear(
    int year, int stressedDays, int longestSpell, double shortfall, double waterM3, double lostM3) {
  /** Whether the plant passed its limit in the year. */
  public boolean passedLimit() {
    return stressedDays > 0;
  }
}
