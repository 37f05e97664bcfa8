/**
 * The sheets that leave the program: the report, the map, the plan as data, the shopping list.
 *
 * <p>A sheet only shows. It turns the SI values of the plan into the reader's units ({@link
 * org.grovewright.sheets.ReaderUnits}), writes them down, and ties each number to its working, but
 * it finds no number of its own: whatever a reader may want to check stands in the plan. All sheets
 * are strings that depend on the plan alone; only {@link org.grovewright.sheets.OutputFolder}
 * touches the disk.
 */
package org.grovewright.sheets;
