package org.grovewright.store;

/**
 * An account that may see a site.
 *
 * @param accountId the account
 * @param name its name
 * @param role what it may do
 */
public record Member(String accountId, String name, Role role) {}
