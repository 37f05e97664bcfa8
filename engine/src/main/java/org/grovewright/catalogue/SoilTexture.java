package org.grovewright.catalogue;

/**
 * A USDA soil texture class.
 *
 * @param key catalogue key
 * @param name name of the class
 * @param fieldCapacity water content at field capacity, volume share
 * @param wiltingPoint water content at wilting point, volume share
 * @param infiltrationMPerS basic infiltration rate, m/s
 * @param bulkDensityKgPerM3 dry bulk density, kg/m3
 * @param swell volume of a loosened heap over volume in the ground, minus 1
 * @param readilyEvaporableM readily evaporable water, metres
 * @param source where the values come from
 */
public record SoilTexture(
    String key,
    String name,
    double fieldCapacity,
    double wiltingPoint,
    double infiltrationMPerS,
    double bulkDensityKgPerM3,
    double swell,
    double readilyEvaporableM,
    String source) {}
