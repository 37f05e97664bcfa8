package org.grovewright.catalogue;

/**
 * A mulch.
 *
 * @param key catalogue key
 * @param name name in plain words
 * @param densityKgPerM3 bulk density as delivered, kg/m3
 * @param settlement share of the delivered depth lost in the first season
 * @param depthM usual settled depth, metres
 * @param renewYears years until it is renewed
 * @param evaporationReduction share by which it reduces evaporation from covered soil
 * @param source where the values come from
 */
public record Mulch(
    String key,
    String name,
    double densityKgPerM3,
    double settlement,
    double depthM,
    double renewYears,
    double evaporationReduction,
    String source) {}
