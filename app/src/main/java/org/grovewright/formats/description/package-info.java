/**
 * The description of a grove as text: YAML with units beside the values. YAML is nested lists and
 * named values that people can write in any editor; every value keeps the line and column where it
 * stands, so that a mistake can be pointed at.
 *
 * <p>{@link org.grovewright.formats.description.DescriptionReader} makes a {@link
 * org.grovewright.model.Grove} of a text or says everything that is wrong with it at once in a
 * {@link org.grovewright.formats.description.DescriptionException}; {@link
 * org.grovewright.formats.description.DescriptionWriter} writes a grove as text again. {@link
 * org.grovewright.formats.description.Section} lists the keys the language knows.
 */
package org.grovewright.formats.description;
