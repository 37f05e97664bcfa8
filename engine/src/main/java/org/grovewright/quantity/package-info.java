/**
 * What a number is: its kind (length, flow, money ...), its SI value and the working that shows how
 * it was found.
 *
 * <p>Inside the engine every number is in the SI unit of its {@link org.grovewright.quantity.Kind};
 * the user's own units exist only in the faces and the readers. Packages compute with plain doubles
 * whose names carry the unit where it is not the SI one, and wrap a result in a {@link
 * org.grovewright.quantity.Figure} when it leaves the engine.
 */
package org.grovewright.quantity;
