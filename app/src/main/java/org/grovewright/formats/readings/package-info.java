/**
 * Field readings: what an owner noted with a water meter, a pressure gauge, and a can and a watch.
 *
 * <p>A reading without its unit is worth nothing, and the commonest slip is the right number under
 * the wrong unit. So each column names its unit in its heading, and readings that the supply cannot
 * give, or that all lie off the plan by just the ratio of two units, are refused with the unit they
 * look like.
 *
 * <p>{@link org.grovewright.formats.readings.ReadingsCsv} reads the file and {@link
 * org.grovewright.formats.readings.UnitDoubt} looks for wrong units.
 */
package org.grovewright.formats.readings;
