package org.grovewright.hydraulics;

/** The curves of all emitters, in flat arrays, grouped by the node they hang on. */
final class EmitterLaws {
  private static final byte SQUARE_ROOT = 0;
  private static final byte POWER = 1;
  private static final byte CURVE = 2;

  private final byte[] kind;
  private final double[] k;
  private final double[] x;

  /** Number of emitters in the group times the wear factor of the group. */
  private final double[] times;

  private final EmitterCurve[] curve;
  private final double[] factor;
  private final int[] count;

  EmitterLaws(int groups) {
    kind = new byte[groups];
    k = new double[groups];
    x = new double[groups];
    times = new double[groups];
    curve = new EmitterCurve[groups];
    factor = new double[groups];
    count = new int[groups];
  }

  private EmitterLaws(EmitterLaws other) {
    kind = other.kind.clone();
    k = other.k.clone();
    x = other.x.clone();
    times = other.times.clone();
    curve = other.curve.clone();
    factor = other.factor.clone();
    count = other.count.clone();
  }

  EmitterLaws copy() {
    return new EmitterLaws(this);
  }

  void set(int group, EmitterCurve ofOne, int number) {
    curve[group] = ofOne;
    count[group] = number;
    factor[group] = 1;
    times[group] = number;
    x[group] = ofOne.exponentAt(0);
    k[group] = ofOne.firstCoefficient();
    if (!ofOne.isPlainPower()) {
      kind[group] = CURVE;
    } else {
      kind[group] = x[group] == 0.5 ? SQUARE_ROOT : POWER;
    }
  }

  void setCurve(int group, EmitterCurve ofOne) {
    double kept = factor[group];
    set(group, ofOne, count[group]);
    setFactor(group, kept);
  }

  void setFactor(int group, double times1) {
    factor[group] = times1;
    times[group] = count[group] * times1;
  }

  int size() {
    return kind.length;
  }

  int count(int group) {
    return count[group];
  }

  /** Flow of a whole group in m3/s at a pressure in m. */
  double flow(int group, double head) {
    if (head < EmitterCurve.LEAD_IN || kind[group] == CURVE) {
      return times[group] * curve[group].flow(head);
    }
    double power = kind[group] == SQUARE_ROOT ? Math.sqrt(head) : Math.pow(head, x[group]);
    return times[group] * k[group] * power;
  }

  /** Slope of the flow of a whole group in m2/s, given its flow at the same pressure. */
  double slope(int group, double head, double flow) {
    if (head < EmitterCurve.LEAD_IN || kind[group] == CURVE) {
      return times[group] * curve[group].slope(head);
    }
    return x[group] * flow / head;
  }
}
