package org.grovewright.store;

import java.time.Instant;

/**
 * A site as it stands.
 *
 * @param id its lasting id
 * @param name what it is called
 * @param version number of its newest save
 * @param description the description's text
 * @param canUndo whether there is an edit to take back
 * @param canRedo whether there is an edit taken back that can be made again
 * @param changedBy who saved last
 * @param changed when
 */
public record SiteState(
    String id,
    String name,
    long version,
    String description,
    boolean canUndo,
    boolean canRedo,
    String changedBy,
    Instant changed) {}
