package org.grovewright.store;

/**
 * Who does something.
 *
 * @param accountId the account
 * @param name its name at the time, kept in the logs even when the account goes
 */
public record Author(String accountId, String name) {}
