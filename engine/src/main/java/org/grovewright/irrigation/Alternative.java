package org.grovewright.irrigation;

import org.grovewright.finding.Finding;

/**
 * One way to water the grove, designed and solved in full, for the owner to compare.
 *
 * @param key short name by which the owner chooses it in the description
 * @param name how its laterals run, its sort of emitter, how it is matched to plants, the emitters
 *     at a tree and the daily run at the peak that they are counted for
 * @param cost what it costs over its life
 * @param emissionUniformity design emission uniformity of its least even zone, share
 * @param peakRunS time that its zones run in all on a day of the peak month, seconds
 * @param zones number of its zones
 * @param keepsRules whether it keeps every rule and brings the peak need within the allowed hours
 * @param onFront whether none of the others that keep the rules is both cheaper and more even
 * @param planned whether it is the one that is planned
 * @param why why it costs what it does beside the cheapest, or which rule it breaks
 */
public record Alternative(
    String key,
    String name,
    LifeCost cost,
    double emissionUniformity,
    double peakRunS,
    int zones,
    boolean keepsRules,
    boolean onFront,
    boolean planned,
    Finding why) {
  /** Id of a figure of this way. */
  public String figureId(String what) {
    return "irrigation.way." + key + "." + what;
  }
}
