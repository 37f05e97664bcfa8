package org.grovewright.water;

import org.grovewright.quantity.Figure;

/**
 * Water of one plant in one month.
 *
 * @param year year of the plan, 1 for the twelve months from the month of its start
 * @param month 1 to 12
 * @param ageYears time since planting in the middle of the month, years
 * @param spreadM crown spread, metres
 * @param transpirationM3PerS water the plant gives off, m3/s
 * @param evaporationM3PerS water that evaporates from the wetted soil around it, m3/s
 * @param rainM3PerS rain that stays in its root zone and is used, m3/s
 * @param storeM3 water the plant can take from a full root zone before it suffers, m3
 * @param totalM3 all water the plant can take from a full root zone, m3; more runs through
 * @param need water to be brought to the plant, m3/s as a mean of the month, without any allowance
 *     for losses or uneven watering
 * @param longestInterval longest time between waterings, seconds; below a day the plant wants water
 *     more than once a day
 */
public record MonthNeed(
    int year,
    int month,
    double ageYears,
    double spreadM,
    double transpirationM3PerS,
    double evaporationM3PerS,
    double rainM3PerS,
    double storeM3,
    double totalM3,
    Figure need,
    Figure longestInterval) {}
