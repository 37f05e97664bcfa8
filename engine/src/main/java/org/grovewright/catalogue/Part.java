package org.grovewright.catalogue;

/**
 * A fitting, valve, tool or consumable bought by the piece or by volume.
 *
 * @param key catalogue key
 * @param name name in plain words
 * @param role the role it fills in a plan, a stable word such as {@code tee}, {@code end-cap}
 * @param fits catalogue key of the pipe it fits, or empty text for any
 * @param lossCoefficient minor loss coefficient K on the velocity head of its pipe, 0 if none
 * @param source where the values come from
 */
public record Part(
    String key, String name, String role, String fits, double lossCoefficient, String source) {}
