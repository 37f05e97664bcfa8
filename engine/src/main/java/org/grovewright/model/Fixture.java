package org.grovewright.model;

import java.util.OptionalDouble;

/**
 * A thing that stays where it is.
 *
 * @param id its name in the description
 * @param kind what it is
 * @param shape its footprint
 * @param heightM its height above ground, metres; 0 for flat or buried things
 * @param clearanceM distance that plants must keep, metres; empty takes the catalogue's
 */
public record Fixture(
    String id, FixtureKind kind, Shape shape, double heightM, OptionalDouble clearanceM) {}
