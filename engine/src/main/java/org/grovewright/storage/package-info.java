/**
 * Rain kept in a tank.
 *
 * <p>A roof gives a litre for each millimetre of rain on a square metre, less what wets the tiles
 * and splashes over the gutter, and less the dirty first flush of each rain that is better kept
 * out. What the tank has no room for runs over, and what it does not hold cannot be drawn; so a
 * tank that would do for the mean year may stand empty in the one that matters. The level is
 * therefore followed day by day through many years.
 *
 * <p>{@link org.grovewright.storage.RainTank} is one tank through one series of days; {@link
 * org.grovewright.storage.TankYears} puts a plan's draws on it through all years of weather and
 * says how often it runs dry, and what tank would do. A simple timer draws its whole card after
 * rain too, which an owner who looks at the soil does not; {@link
 * org.grovewright.storage.TimerDraw} follows both.
 */
package org.grovewright.storage;
