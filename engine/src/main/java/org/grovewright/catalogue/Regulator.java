package org.grovewright.catalogue;

/**
 * A preset pressure regulator.
 *
 * @param key catalogue key
 * @param name name in plain words
 * @param setPressurePa pressure it holds downstream, pascals
 * @param minFlowM3PerS least flow at which it regulates, m3/s
 * @param maxFlowM3PerS greatest flow, m3/s
 * @param lossAtMaxPa pressure it takes at the greatest flow when it is wide open, pascals
 * @param maxInletPa highest inlet pressure, pascals
 * @param market where it is sold
 * @param source where the values come from
 */
public record Regulator(
    String key,
    String name,
    double setPressurePa,
    double minFlowM3PerS,
    double maxFlowM3PerS,
    double lossAtMaxPa,
    double maxInletPa,
    Market market,
    String source) {}
