package org.grovewright.catalogue;

/**
 * A soil mix or compost sold in bulk or bags.
 *
 * @param key catalogue key
 * @param name name in plain words
 * @param looseDensityKgPerM3 bulk density as delivered, kg/m3
 * @param settlement share of the delivered volume lost by settling
 * @param bulk whether it is sold as a load
 * @param fieldCapacity water content at field capacity, volume share
 * @param wiltingPoint water content at wilting point, volume share
 * @param source where the values come from
 */
public record SoilMix(
    String key,
    String name,
    double looseDensityKgPerM3,
    double settlement,
    boolean bulk,
    double fieldCapacity,
    double wiltingPoint,
    String source) {}
