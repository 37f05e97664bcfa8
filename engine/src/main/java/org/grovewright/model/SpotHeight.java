package org.grovewright.model;

/**
 * A measured height of the ground.
 *
 * @param at where
 * @param heightM height above the site's own zero, metres
 */
public record SpotHeight(Point at, double heightM) {}
