/**
 * What the plan has to say besides numbers: notes, and places where it falls short.
 *
 * <p>A {@link org.grovewright.finding.Finding} keeps its numbers apart from its words, so that each
 * face can write them in the reader's units.
 */
package org.grovewright.finding;
