package org.grovewright.season;

/**
 * The least water found for a risk.
 *
 * @param allowedShare share of the years in which a plant may pass its limit
 * @param worstShare share of the years in which the worst plant does pass it; of a plant that no
 *     setting keeps, on more days than the card lets it
 * @param waterM3PerYear water drawn in a mean year, m3
 */
public record TradePoint(double allowedShare, double worstShare, double waterM3PerYear) {}
