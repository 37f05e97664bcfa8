package org.grovewright.advice;

import org.grovewright.quantity.Figure;

/**
 * The soil of one plant this morning.
 *
 * @param plantId the plant
 * @param zone id of its zone; empty text where no valve serves it
 * @param missing water missing from its root zone, m3
 * @param limit water that may be missing before it begins to suffer, m3
 * @param total water that its root zone holds for it when full, m3
 * @param dryness how far it has gone to its limit, as its roots meet the soil; 1 where it begins to
 *     suffer
 */
public record PlantState(
    String plantId, String zone, Figure missing, Figure limit, Figure total, Figure dryness) {}
