/**
 * The edge between units and the engine. A unit is a word a gardener writes ({@code gal/h}); a
 * dimension is what it measures (volume over time). A number may only be used where its dimension
 * is wanted, and is converted once, exactly, to the SI unit the engine holds.
 *
 * <p>{@link org.grovewright.formats.units.UnitWords} knows the words, {@link
 * org.grovewright.formats.units.Measure} the dimensions a field may want, and {@link
 * org.grovewright.formats.units.QuantityText} reads a number with its unit. Conversions are those
 * of the reference implementation of the Units of Measurement API.
 */
package org.grovewright.formats.units;
