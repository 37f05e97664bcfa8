package org.grovewright.ground;

import java.time.YearMonth;

/**
 * One feeding of one plant.
 *
 * @param plantId the plant
 * @param year year after planting, or of the plan for a plant that stands already; 1 is the first
 * @param when the month it is given in
 * @param nitrogenKg nitrogen given, kg
 * @param fertiliserKey catalogue key of the fertiliser
 * @param fertiliserKg fertiliser given, kg
 * @param figureId id of the figure that shows the working of the fertiliser
 */
public record Feeding(
    String plantId,
    int year,
    YearMonth when,
    double nitrogenKg,
    String fertiliserKey,
    double fertiliserKg,
    String figureId) {}
