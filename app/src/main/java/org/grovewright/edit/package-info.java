/**
 * Changes descriptions of groves as text.
 *
 * <p>Owners write remarks into their descriptions and lay them out to their liking, and both should
 * outlive a tree dragged on a screen. So a change is cut into the text where it belongs and the
 * rest stays letter by letter. {@link org.grovewright.edit.YamlDocument} does that for any YAML;
 * {@link org.grovewright.edit.Operation} lists what can be changed in a description and {@link
 * org.grovewright.edit.DescriptionEditor} does it.
 */
package org.grovewright.edit;
