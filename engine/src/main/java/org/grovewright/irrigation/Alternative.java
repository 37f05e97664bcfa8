package org.grovewright.irrigation;

/**
 * One way to water the grove, designed and solved in full, for the owner to compare.
 *
 * @param name how its laterals run, its sort of emitter, how it is matched to plants, the most
 *     emitters at a plant and the daily run at the peak that they are counted for
 * @param cost what it costs over its life
 * @param emissionUniformity design emission uniformity of its least even zone, share
 * @param zones number of its zones
 * @param keepsRules whether it keeps every rule and brings the peak need within the allowed hours
 * @param onFront whether none of the others that keep the rules is both cheaper and more even
 * @param planned whether it is the one that is planned
 * @param why why it costs what it does beside the planned one
 */
public record Alternative(
    String name,
    LifeCost cost,
    double emissionUniformity,
    int zones,
    boolean keepsRules,
    boolean onFront,
    boolean planned,
    String why) {}
