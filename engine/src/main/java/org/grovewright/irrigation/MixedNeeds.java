package org.grovewright.irrigation;

import java.util.List;
import org.grovewright.quantity.FigureBook;

/**
 * What it brings a zone that its emitters are staged over the years, so that plants with unlike
 * needs share one valve.
 *
 * <p>Both sides are worked out with the flow of each emitter at the pressure to be expected and
 * minutes that are not rounded, month by month, for the neediest plant of the zone.
 *
 * @param zone id of the zone
 * @param before with the same emitters in all years, counted for the last
 * @param after with the emitters of the plan
 */
public record MixedNeeds(String zone, Effect before, Effect after) {
  /** Beginning of the ids of a zone's figures; {@code before} or {@code after} follows. */
  public static String figureId(String zone) {
    return "irrigation.mixed-needs." + FigureBook.slug(zone) + ".";
  }

  /**
   * One side.
   *
   * @param waterM3 water that the zone runs in each year of the plan, m3
   * @param worstShare greatest share of its need that a plant gets in its own peak month; 1 where
   *     none gets an excess that counts
   * @param plant index of that plant in the grove's plantings, or -1
   * @param year year of the plan in which it does, or 0
   */
  public record Effect(List<Double> waterM3, double worstShare, int plant, int year) {
    /** Copies the list. */
    public Effect {
      waterM3 = List.copyOf(waterM3);
    }

    /** Water of all years, m3. */
    public double totalM3() {
      return waterM3.stream().mapToDouble(Double::doubleValue).sum();
    }
  }
}
