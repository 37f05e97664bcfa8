package org.grovewright.catalogue;

import org.grovewright.model.FixtureKind;

/**
 * The distance plants keep from a kind of fixed thing.
 *
 * @param kind the fixed thing
 * @param trunkM least distance of a trunk from its edge, metres
 * @param crownM least gap between a mature crown and its edge, metres; negative lets crowns reach
 *     over it
 * @param source where the distance comes from
 */
public record Clearance(FixtureKind kind, double trunkM, double crownM, String source) {}
