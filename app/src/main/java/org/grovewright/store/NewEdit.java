package org.grovewright.store;

import java.util.Optional;

/**
 * An edit to be saved.
 *
 * @param clientId id the sender made for it, so that sending it twice saves it once
 * @param label what it does, for the list of edits
 * @param operation the edit as it was asked for
 * @param name what the site is called after it
 * @param description the description after it
 */
public record NewEdit(
    Optional<String> clientId, String label, String operation, String name, String description) {}
