/**
 * The tables of the trade in the engine's own types: species, soils, pipes, emitters, filters,
 * regulators, mixes, amendments, mulches, parts, tasks, cautions, clearances, grounds.
 *
 * <p>The rows themselves live in data files, each with its source; a reader outside the engine
 * makes one {@link org.grovewright.catalogue.Catalogue} of them. All values are in SI units; an
 * item's key is the same in every file, price list and plan.
 */
package org.grovewright.catalogue;
