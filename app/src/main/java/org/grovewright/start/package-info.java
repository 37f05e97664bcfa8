/**
 * Turns the answers of somebody who starts into a first description of their grove.
 *
 * <p>Few know their soil or the pressure at the tap on the first evening. So a first plan asks what
 * it cannot do without, takes a usual value for the rest and says so: every value taken is a remark
 * behind its line of the description and an assumption on the screen, and all can be replaced
 * later.
 *
 * <p>{@link org.grovewright.start.FirstPlan} writes the description. {@link
 * org.grovewright.start.RowProposal} puts plants into rows on the land, {@link
 * org.grovewright.start.TextureTriangle} names a soil by its layers in a jar, and {@link
 * org.grovewright.start.UsualClimates} holds the weather of regions for those who have no numbers
 * of their own.
 */
package org.grovewright.start;
