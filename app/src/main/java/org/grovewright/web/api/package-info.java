/**
 * What the browser may ask for, as JSON.
 *
 * <p>A browser works on the newest version of a site, says which version it worked on and gets the
 * newer state back. Every route names who may use it ({@link org.grovewright.web.api.Access}); a
 * route that names nobody is closed. What goes wrong is an {@link
 * org.grovewright.web.api.ApiException} with a plain sentence, and the field it is about where
 * there is one.
 *
 * <p>{@link org.grovewright.web.api.Api} adds all routes; {@link org.grovewright.web.api.Groves}
 * keeps groves that were read and plans that were made.
 */
package org.grovewright.web.api;
