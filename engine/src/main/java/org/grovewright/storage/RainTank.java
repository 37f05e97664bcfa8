package org.grovewright.storage;

/**
 * A tank under a roof. Each day the rain comes first; what the tank has no room for runs over, and
 * the day's draw is taken from what is left.
 *
 * @param volumeM3 usable volume of the tank, m3
 * @param roofM2 area of the roof seen from above, m2
 * @param runoff share of its rain that reaches the gutter
 * @param firstFlushM3 water of each rain that is kept out, m3
 * @param dryDays days without rain after which the first flush is kept out again, at least 1
 */
public record RainTank(
    double volumeM3, double roofM2, double runoff, double firstFlushM3, int dryDays) {
  /** The same roof over another tank. */
  public RainTank holding(double otherM3) {
    return new RainTank(otherM3, roofM2, runoff, firstFlushM3, dryDays);
  }

  /**
   * What became of the water by day; all m3.
   *
   * @param level in the tank at the end of the day
   * @param caught from the roof, first flush already kept out
   * @param drawn taken from the tank
   * @param missing wanted but not there
   * @param spilled run over
   */
  public record Days(
      double[] level, double[] caught, double[] drawn, double[] missing, double[] spilled) {}

  /**
   * Water from the roof by day, m3.
   *
   * @param rainM rain by day, metres
   */
  public double[] caught(double[] rainM) {
    double[] caught = new double[rainM.length];
    int since = dryDays;
    double flush = firstFlushM3;
    for (int i = 0; i < rainM.length; i++) {
      if (rainM[i] <= 0) {
        since++;
        continue;
      }
      if (since >= dryDays) {
        flush = firstFlushM3;
      }
      since = 0;
      double water = rainM[i] * roofM2 * runoff;
      double kept = Math.min(flush, water);
      flush -= kept;
      caught[i] = water - kept;
    }
    return caught;
  }

  /**
   * Follows the tank through a series of days.
   *
   * @param rainM rain by day, metres
   * @param wantedM3 water wanted by day, m3
   * @param startM3 water in the tank at the start, m3
   */
  public Days through(double[] rainM, double[] wantedM3, double startM3) {
    double[] caught = caught(rainM);
    int days = rainM.length;
    Days result =
        new Days(new double[days], caught, new double[days], new double[days], new double[days]);
    double level = Math.min(volumeM3, startM3);
    for (int i = 0; i < days; i++) {
      level += caught[i];
      result.spilled()[i] = Math.max(0, level - volumeM3);
      level = Math.min(volumeM3, level);
      result.drawn()[i] = Math.min(level, wantedM3[i]);
      result.missing()[i] = wantedM3[i] - result.drawn()[i];
      level -= result.drawn()[i];
      result.level()[i] = level;
    }
    return result;
  }
}
