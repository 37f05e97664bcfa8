/** The application: readers, catalogue and faces around the engine. */
package org.grovewright;
