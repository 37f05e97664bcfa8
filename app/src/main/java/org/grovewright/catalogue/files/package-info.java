/**
 * The catalogue's data files and their reader.
 *
 * <p>Each table of the trade is a plain CSV file that a gardener can open in a spreadsheet: one row
 * a thing, units in the column names, and a source for every row. A table is described once, as a
 * list of columns with their type, unit and allowed range; reading, the messages about faulty files
 * and the printed description of the columns all follow from that one list.
 *
 * <p>{@link org.grovewright.catalogue.files.CatalogueFiles} reads the bundled files, lays an
 * owner's own files over them, and makes the engine's {@link org.grovewright.catalogue.Catalogue}
 * in SI units of the result. {@link org.grovewright.catalogue.files.Tables} lists the tables;
 * faults are gathered as {@link org.grovewright.catalogue.files.Problem}s and thrown together.
 */
package org.grovewright.catalogue.files;
