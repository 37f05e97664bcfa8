package org.grovewright.layout;

import java.util.OptionalDouble;

/**
 * How the ground falls at a place.
 *
 * @param gradient rise over run along the line of steepest fall, 0 when level
 * @param aspectDeg compass bearing towards which the ground falls, degrees clockwise from true
 *     north in [0, 360); empty when level
 */
public record Slope(double gradient, OptionalDouble aspectDeg) {}
