/**
 * The work and the care as an iCalendar file (RFC 5545) that any calendar takes in.
 *
 * <p>Sessions of work are events at floating local times, without a time zone: six in the evening
 * is six in the evening on the owner's own clock. Care is all-day events, with a recurrence rule
 * where it comes back. Every event keeps its id from plan to plan, so that a calendar that takes in
 * a new plan moves events rather than doubling them. {@link
 * org.grovewright.calendar.CalendarWriter} writes the file.
 */
package org.grovewright.calendar;
