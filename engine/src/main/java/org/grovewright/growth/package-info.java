/**
 * How large a plant is, so many years after planting.
 *
 * <p>A young tree grows slowly until it is established, then fast, then ever more slowly towards
 * its mature size. {@link org.grovewright.growth.Growth} follows such a curve from the size of the
 * plant in its container to the mature size of its species, moved so that it meets a spread the
 * owner has measured and cut off at a spread the owner prunes to. Roots start as the ball of the
 * container and spread outwards and downwards from there.
 */
package org.grovewright.growth;
