/**
 * The grove as its owner describes it: site, soil, climate, supply, plants, watering, stock and
 * crew. Immutable records, SI inside, with no behaviour but their own invariants.
 *
 * <p>Positions are metres in the site's own frame: x to the right and y up on the owner's sketch,
 * from an origin of the owner's choice; {@link org.grovewright.model.Site#northBearingDeg} says how
 * the sketch lies on the earth. A reader resolves everything relative (a plant "at 3 m along row
 * A", companions "between") before it makes these records, so the engine only ever sees places.
 */
package org.grovewright.model;
