package org.grovewright.ground;

/**
 * An amount of loose goods, known both by volume and by mass.
 *
 * @param volumeM3 volume as delivered, m3
 * @param massKg mass as delivered, kg
 */
public record BulkLoad(double volumeM3, double massKg) {
  /** No goods. */
  public static final BulkLoad NONE = new BulkLoad(0, 0);

  /**
   * Checks the amounts.
   *
   * @throws IllegalArgumentException if one is negative or not finite
   */
  public BulkLoad {
    if (!(volumeM3 >= 0 && massKg >= 0 && volumeM3 + massKg < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "a load cannot be of " + volumeM3 + " m3 and " + massKg + " kg");
    }
  }

  /**
   * The load of a volume.
   *
   * @param volumeM3 volume as delivered, m3
   * @param densityKgPerM3 bulk density as delivered, kg/m3, above 0
   */
  public static BulkLoad ofVolume(double volumeM3, double densityKgPerM3) {
    return new BulkLoad(volumeM3, volumeM3 * positive(densityKgPerM3));
  }

  /**
   * The load of a mass, for goods sold by weight.
   *
   * @param massKg mass as delivered, kg
   * @param densityKgPerM3 bulk density as delivered, kg/m3, above 0
   */
  public static BulkLoad ofMass(double massKg, double densityKgPerM3) {
    return new BulkLoad(massKg / positive(densityKgPerM3), massKg);
  }

  private static double positive(double densityKgPerM3) {
    if (!(densityKgPerM3 > 0)) {
      throw new IllegalArgumentException("a density must be above 0, got " + densityKgPerM3);
    }
    return densityKgPerM3;
  }
}
