/**
 * Whether a timer keeps its plants through real years of weather, and the setting that does so with
 * the least water.
 *
 * <p>A plan made from monthly means is right in a mean year. Years differ: a dry month falls on a
 * full-running timer in one year and a wet one in the next, and a young tree has only one first
 * summer. So a setting of the timer is judged by replay: every plant's soil is moved on day by day
 * through every year of weather that is known, or through years drawn from the monthly normals
 * where only those are known. A plant passes its limit on a day on which its soil no longer holds
 * the water it can take up with ease; a year with such a day counts against the setting.
 *
 * <p>{@link org.grovewright.season.WeatherYears} are the years, {@link
 * org.grovewright.season.TimerCard} a setting of a simple timer, {@link
 * org.grovewright.season.Outcome} what a setting did, and {@link org.grovewright.season.SeasonPlan}
 * the setting found by search beside the plan's own and the rules that people use.
 */
package org.grovewright.season;
