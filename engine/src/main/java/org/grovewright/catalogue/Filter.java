package org.grovewright.catalogue;

/**
 * A filter; head loss {@code h = lossAtRated * (Q / rated)^2} when clean.
 *
 * @param key catalogue key
 * @param name name in plain words
 * @param openingM size of its openings, metres
 * @param ratedFlowM3PerS highest flow for continuous use, m3/s
 * @param lossAtRatedPa pressure lost at the rated flow when clean, pascals
 * @param dirtyAllowancePa pressure to allow for dirt before it is cleaned, pascals
 * @param source where the values come from
 */
public record Filter(
    String key,
    String name,
    double openingM,
    double ratedFlowM3PerS,
    double lossAtRatedPa,
    double dirtyAllowancePa,
    String source) {}
