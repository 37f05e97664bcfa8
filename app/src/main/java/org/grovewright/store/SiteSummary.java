package org.grovewright.store;

import java.time.Instant;

/**
 * A site in a list.
 *
 * @param id its lasting id
 * @param name what it is called
 * @param version number of its newest save
 * @param role what the asking account may do with it
 * @param changed when it was last saved
 * @param inBin whether it was deleted and can still be brought back
 */
public record SiteSummary(
    String id, String name, long version, Role role, Instant changed, boolean inBin) {}
