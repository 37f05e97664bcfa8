package org.grovewright.water;

/**
 * Sums of a water balance over its days.
 *
 * @param days days
 * @param stressedDays days on which the plant could not take up what it wanted
 * @param rainM3 rain less runoff on the root zone, m3
 * @param irrigationM3 irrigation, m3
 * @param transpiredM3 water the plant gave off, m3
 * @param wantedM3 water it would have given off in soil never dry, m3
 * @param evaporatedM3 water evaporated from the soil, m3
 * @param lostM3 water lost below the roots, m3
 */
public record BalanceTotals(
    int days,
    int stressedDays,
    double rainM3,
    double irrigationM3,
    double transpiredM3,
    double wantedM3,
    double evaporatedM3,
    double lostM3) {}
