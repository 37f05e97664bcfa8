/**
 * What a part of the plan asks of the purse and of the hands: goods to be bought ({@link
 * org.grovewright.demand.Requirement}), work to be done ({@link org.grovewright.demand.WorkAmount})
 * and work that falls due in a later year ({@link org.grovewright.demand.LaterWork}).
 *
 * <p>Every subject that uses goods or work reports them in these forms; buying and work planning
 * read nothing else of the other subjects.
 */
package org.grovewright.demand;
