/**
 * What a part of the plan asks of the purse and of the hands: goods to be bought ({@link
 * org.grovewright.demand.Requirement}) and work to be done ({@link
 * org.grovewright.demand.WorkAmount}).
 *
 * <p>Every subject that uses goods or work reports them in these two forms; buying and work
 * planning read nothing else of the other subjects.
 */
package org.grovewright.demand;
