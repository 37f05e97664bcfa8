package org.grovewright.sheets;

/**
 * Round steps into which values are sorted so that each step can have a colour. Five colours run
 * from dark blue to yellow; they differ in lightness, so that they can be told apart by readers who
 * see few hues and on a print without colour.
 *
 * @param from lower end of the first step
 * @param step width of a step
 * @param count number of steps, 1 to 5
 */
record ValueSteps(double from, double step, int count) {
  private static final int MOST = 5;
  private static final double[] ROUND = {1, 2, 2.5, 5, 10};

  /**
   * The narrowest round steps that hold a range.
   *
   * @param least least value
   * @param most greatest value
   * @param narrowest width below which a difference does not matter to the reader
   */
  static ValueSteps over(double least, double most, double narrowest) {
    double power = Math.pow(10, Math.floor(Math.log10(Math.max(narrowest, (most - least) / MOST))));
    for (double scale = power; ; scale *= 10) {
      for (double round : ROUND) {
        double step = round * scale;
        double from = Math.floor(least / step + 1e-9) * step;
        int count = (int) Math.max(1, Math.ceil((most - from) / step - 1e-9));
        if (step >= narrowest * (1 - 1e-9) && count <= MOST) {
          return new ValueSteps(from, step, count);
        }
      }
    }
  }

  /** Number of the step that holds a value, from 0; values outside go to the nearest. */
  int of(double value) {
    int index = (int) Math.floor((value - from) / step + 1e-9);
    return Math.max(0, Math.min(count - 1, index));
  }

  /** Number of the colour of a step, 0 the darkest to 4 the lightest. */
  int colour(int index) {
    return count == 1 ? 2 : (int) Math.round(index * (MOST - 1.0) / (count - 1));
  }

  /** What a step holds, such as "0.90 to 0.95 bar". */
  String label(int index, int decimals, String unit) {
    return Decimals.fixed(from + index * step, decimals)
        + " to "
        + Decimals.fixed(from + (index + 1) * step, decimals)
        + " "
        + unit;
  }
}
