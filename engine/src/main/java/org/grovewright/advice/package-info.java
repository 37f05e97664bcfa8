/**
 * What to do with the water today.
 *
 * <p>A timer is set for the usual weather of a month; the weather of this week is another matter.
 * Who keeps account of what the soil has lost to the air and got from rain and hose knows, on any
 * morning, how much is left for each plant before it begins to suffer. That account is made anew
 * from the weather, the rain gauge and the notes of watering each time it is asked for, so a
 * forgotten watering or a night of heavy rain needs no correction afterwards: the next answer has
 * it in.
 *
 * <p>{@link org.grovewright.advice.WaterLog} holds what the owner noted, {@link
 * org.grovewright.advice.WeatherToDate} the weather until today and a little beyond, and {@link
 * org.grovewright.advice.TodayAdvice} says of each zone whether to water, for how many minutes, and
 * which plants to look at.
 */
package org.grovewright.advice;
