/**
 * Serves the plan to browsers, on this machine alone unless the owner says otherwise.
 *
 * <p>One process answers everything: the pages, which are plain files, and the API, which is JSON.
 * A page from elsewhere must not be able to use it behind the owner's back, so every request is
 * looked at before it is answered: the name of the host it was sent to, where it comes from, who
 * sends it, and for a change the secret word that only our own page knows.
 *
 * <p>{@link org.grovewright.web.WebServer} starts it, {@link org.grovewright.web.Guard} looks at
 * the requests, {@link org.grovewright.web.StaticFiles} gives out the pages; the API is in {@link
 * org.grovewright.web.api}.
 */
package org.grovewright.web;
