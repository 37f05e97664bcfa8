package org.grovewright.trench;

import org.grovewright.catalogue.Catalogue;

/**
 * The distances that a trench keeps to.
 *
 * @param clearM room between a trench and a wall, building or tank, metres
 * @param serviceClearM distance from a buried service within which digging is by hand, metres
 * @param plantClearM room between a trench and a tree to be planted, metres
 * @param rootTimes radius of a standing tree's root zone over the diameter of its trunk
 * @param rootWidestM greatest radius of a root zone, metres
 * @param leastWidthM least width of a trench, metres
 * @param pipeGapM room beside and between pipes, metres
 * @param beddingM soft bed below the pipes, metres
 */
public record TrenchRules(
    double clearM,
    double serviceClearM,
    double plantClearM,
    double rootTimes,
    double rootWidestM,
    double leastWidthM,
    double pipeGapM,
    double beddingM) {
  /** The rules as the catalogue has them. */
  public static TrenchRules of(Catalogue catalogue) {
    return new TrenchRules(
        value(catalogue, "main-clearance"),
        value(catalogue, "service-clearance"),
        value(catalogue, "plant-clearance"),
        value(catalogue, "root-zone-times"),
        value(catalogue, "root-zone-widest"),
        value(catalogue, "trench-least-width"),
        value(catalogue, "trench-pipe-gap"),
        value(catalogue, "trench-bedding"));
  }

  private static double value(Catalogue catalogue, String key) {
    return catalogue.constant("irrigation." + key).value();
  }

  /** Width of a trench for pipes that lie side by side, metres. */
  double widthM(double pipesM, int pipes) {
    return Math.max(leastWidthM, pipesM + (pipes + 1) * pipeGapM);
  }
}
