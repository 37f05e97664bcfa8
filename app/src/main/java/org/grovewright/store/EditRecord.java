package org.grovewright.store;

import java.time.Instant;

/**
 * A line of a site's log of edits.
 *
 * @param version the version it made
 * @param kind create, edit, undo or redo
 * @param position the version whose description held after it
 * @param label what it did
 * @param author who did it
 * @param made when
 */
public record EditRecord(
    long version, String kind, long position, String label, String author, Instant made) {}
