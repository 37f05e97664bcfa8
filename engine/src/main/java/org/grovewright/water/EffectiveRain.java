package org.grovewright.water;

/**
 * Rain of a month that stays in the root zone and is used from it, by the method of the USDA Soil
 * Conservation Service (1970), National Engineering Handbook part 623 chapter 2 (1993).
 */
public final class EffectiveRain {
  private static final double MM_PER_INCH = 25.4;
  private static final double LARGEST_ETC_INCH = 10;

  private EffectiveRain() {}

  /**
   * Effective rain of a month, mm; never more than fell nor than the plants used.
   *
   * @param rainMm rain of the month, mm
   * @param etcMm evapotranspiration of the plants in the month, mm; beyond 254 mm, where the
   *     published table ends, it adds nothing more
   * @param storeMm readily available water of the root zone, mm
   */
  public static double monthlyMm(double rainMm, double etcMm, double storeMm) {
    double rain = rainMm / MM_PER_INCH;
    double etc = Math.min(LARGEST_ETC_INCH, etcMm / MM_PER_INCH);
    double effective =
        storageFactor(storeMm)
            * (0.70917 * Math.pow(rain, 0.82416) - 0.11556)
            * Math.pow(10, 0.02426 * etc)
            * MM_PER_INCH;
    return Math.max(0, Math.min(effective, Math.min(rainMm, etcMm)));
  }

  /** Factor of the soil's storage, 1 at 75 mm. */
  static double storageFactor(double storeMm) {
    double d = storeMm / MM_PER_INCH;
    return 0.531747 + 0.295164 * d - 0.057697 * d * d + 0.003804 * d * d * d;
  }
}
