package org.grovewright.water;

/**
 * When a root zone is filled again and how long that takes: when its readily available water is
 * used up, and with what is missing; FAO-56 chapter 8.
 */
public final class RefillRule {
  /** Share of the readily available water that must be missing for a watering to be worth it. */
  public static final String WORTH_FILLING = "irrigation.worth-filling";

  private RefillRule() {}

  /**
   * Whether to water on a day, so that the plant does not begin to suffer before it is over.
   *
   * @param missingByEveningMm what will be missing by the evening if nothing is watered, mm
   * @param limitMm readily available water, mm
   */
  public static boolean isDue(double missingByEveningMm, double limitMm) {
    return missingByEveningMm > limitMm + 1e-9;
  }

  /**
   * Whether enough is missing for a watering to be worth it.
   *
   * @param missingMm what is missing, mm
   * @param limitMm readily available water, mm
   * @param share the catalogue's {@link #WORTH_FILLING}
   */
  public static boolean isWorthIt(double missingMm, double limitMm, double share) {
    return missingMm > share * limitMm;
  }

  /**
   * Time to fill the root zone, seconds.
   *
   * @param missingMm what is missing, mm over the area of the root zone
   * @param soilM2 that area, m2
   * @param flowM3PerS what the plant's emitters give, m3/s
   * @param efficiency share of that which the roots can use
   */
  public static double seconds(
      double missingMm, double soilM2, double flowM3PerS, double efficiency) {
    return missingMm / 1000 * soilM2 / (flowM3PerS * efficiency);
  }
}
