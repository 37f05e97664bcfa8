/**
 * When the work is done: who does what on which evening until the grove stands, and what it asks
 * for in the three years after.
 *
 * <p>Each kind of work takes a set-up time and a time for each unit, in person-hours; more people
 * do it faster up to the number that can usefully work on it. Some work must wait for other work,
 * and some waits for the clock: cement cures whether or not anybody is there. {@link
 * org.grovewright.work.WorkPlan} turns amounts of work into sessions on the crew's own evenings and
 * weekends; {@link org.grovewright.work.CareCalendar} lists the feeding, checks and upkeep that
 * follow. All times are local clock times without a zone.
 */
package org.grovewright.work;
