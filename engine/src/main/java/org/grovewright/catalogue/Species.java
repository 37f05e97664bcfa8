package org.grovewright.catalogue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A plant species or a group of cultivars that behave alike.
 *
 * @param key catalogue key
 * @param name common name
 * @param latin botanical name
 * @param group climate group or use
 * @param role what it is planted for
 * @param evergreen whether it keeps its leaves
 * @param matureHeightM height when mature, metres
 * @param matureSpreadM crown diameter when mature, metres
 * @param yearsToMature years from planting until about 95 % of the mature spread
 * @param spacingM usual distance between plants of the kind, metres
 * @param rootDepthM effective root depth when mature, metres
 * @param depletion depletion fraction p at which stress begins, at 5 mm/day
 * @param kc crop coefficients of a mature stand
 * @param salinityThresholdSPerM salinity of the saturation extract at which growth begins to fall,
 *     S/m
 * @param salinityLimitSPerM salinity of the saturation extract at which nothing grows any more, S/m
 * @param coldLimitC temperature that a mature plant survives, degrees Celsius
 * @param phMin lowest suitable soil pH
 * @param phMax highest suitable soil pH
 * @param feeding yearly feeding
 * @param caution key of the caution that belongs to handling or eating it, if any
 * @param source where the row's values come from
 */
public record Species(
    String key,
    String name,
    String latin,
    Group group,
    Role role,
    boolean evergreen,
    double matureHeightM,
    double matureSpreadM,
    double yearsToMature,
    double spacingM,
    double rootDepthM,
    double depletion,
    Kc kc,
    OptionalDouble salinityThresholdSPerM,
    OptionalDouble salinityLimitSPerM,
    double coldLimitC,
    double phMin,
    double phMax,
    Feeding feeding,
    Optional<String> caution,
    String source) {

  /** Climate group or use. */
  public enum Group {
    SUBTROPICAL,
    MEDITERRANEAN,
    TEMPERATE,
    COMPANION,
    GROUNDCOVER
  }

  /** What a plant is planted for. */
  public enum Role {
    MAIN,
    COMPANION,
    GROUNDCOVER
  }

  /**
   * Crop coefficients by stage of the season, in the manner of FAO-56 table 12.
   *
   * @param ini coefficient at the start of the season
   * @param mid coefficient in mid-season
   * @param end coefficient at the end of the season
   * @param iniDays length of the initial stage, days
   * @param devDays length of the development stage, days
   * @param midDays length of the mid-season, days
   * @param lateDays length of the late season, days
   * @param startMonth month in which the season starts in the northern hemisphere, 1 to 12
   */
  public record Kc(
      double ini,
      double mid,
      double end,
      int iniDays,
      int devDays,
      int midDays,
      int lateDays,
      int startMonth) {}

  /**
   * Yearly feeding.
   *
   * @param nitrogenYearOneKg nitrogen in the first full year, kg per plant
   * @param nitrogenMatureKg nitrogen when mature, kg per plant and year
   * @param monthsNorth months of feeding in the northern hemisphere, 1 to 12
   */
  public record Feeding(
      double nitrogenYearOneKg, double nitrogenMatureKg, List<Integer> monthsNorth) {
    /** Copies the months. */
    public Feeding {
      monthsNorth = List.copyOf(monthsNorth);
    }
  }
}
