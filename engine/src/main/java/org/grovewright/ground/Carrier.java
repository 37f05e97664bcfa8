package org.grovewright.ground;

/**
 * What carries loose goods: a barrow, a trailer, a lorry.
 *
 * @param volumeM3 what it holds, m3, above 0
 * @param massKg what it may safely carry, kg, above 0
 */
public record Carrier(double volumeM3, double massKg) {
  /** A load this little above a full one is not worth another trip. */
  private static final double SLACK = 1e-9;

  /**
   * Checks the limits.
   *
   * @throws IllegalArgumentException if one is not above 0
   */
  public Carrier {
    if (!(volumeM3 > 0 && massKg > 0)) {
      throw new IllegalArgumentException(
          "a carrier needs room and strength, got " + volumeM3 + " m3 and " + massKg + " kg");
    }
  }

  /** Whole trips for a load: room or strength, whichever gives out first. */
  public long trips(BulkLoad load) {
    double full = Math.max(load.volumeM3() / volumeM3, load.massKg() / massKg);
    return (long) Math.ceil(full - SLACK);
  }
}
