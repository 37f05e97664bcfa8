package org.grovewright.catalogue;

/**
 * A filter; head loss {@code h = lossAtRated * (Q / rated)^2} when clean.
 *
 * @param key catalogue key
 * @param name name in plain words
 * @param openingM size of its openings, metres
 * @param mesh openings in an inch of its screen
 * @param screenAreaM2 area of its screen or discs, m2
 * @param ratedFlowM3PerS highest flow for continuous use, m3/s
 * @param lossAtRatedPa pressure lost at the rated flow when clean, pascals
 * @param dirtyAllowancePa pressure to allow for dirt before it is cleaned, pascals
 * @param maxPressurePa highest pressure at its inlet, pascals; infinite where it is not known
 * @param source where the values come from
 */
public record Filter(
    String key,
    String name,
    double openingM,
    double mesh,
    double screenAreaM2,
    double ratedFlowM3PerS,
    double lossAtRatedPa,
    double dirtyAllowancePa,
    double maxPressurePa,
    String source) {
  /** Pressure lost at a flow when clean, pascals. */
  public double lossPa(double flowM3PerS) {
    double share = flowM3PerS / ratedFlowM3PerS;
    return lossAtRatedPa * share * share;
  }
}
