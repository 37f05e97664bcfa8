package org.grovewright.irrigation;

import org.grovewright.finding.Finding;

/**
 * A device of the system that is there for a reason an owner should know.
 *
 * @param itemKey catalogue key of what is bought
 * @param name its name in plain words
 * @param count how many there are
 * @param price price of one in the plan's currency, 0 where it is not known
 * @param why why it is there and what to mind with it
 */
public record Device(String itemKey, String name, int count, double price, Finding why) {}
