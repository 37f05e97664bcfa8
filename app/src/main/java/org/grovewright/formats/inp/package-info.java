/**
 * Reads and writes pipe networks as EPANET input text, the open text form in which hydraulic models
 * are commonly exchanged.
 *
 * <p>The text has sections such as {@code [JUNCTIONS]} with one part per line. Whatever a section
 * says that a steady solve of one moment cannot use is named as a note, and whatever would change
 * the answer if it were left out is named as an error; nothing is skipped in silence.
 */
package org.grovewright.formats.inp;
