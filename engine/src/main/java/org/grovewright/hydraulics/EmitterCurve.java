package org.grovewright.hydraulics;

/**
 * How much water one emitter gives at a pressure.
 *
 * <p>A curve is made of up to three power laws {@code q = k h^x}, each for a range of pressure,
 * which meet without a jump. A plain emitter has one (Karmeli and Keller's emitter equation, from
 * memory); a pressure-compensating one rises like an orifice until its diaphragm starts to work, is
 * nearly flat over its range, and rises like an orifice again above it. Nothing comes out, and
 * nothing is drawn in, at or below zero pressure, or below the shut-off pressure of an anti-drain
 * emitter. Over the first few millimetres of head a cubic leads from zero into the law so that the
 * slope stays finite.
 */
public final class EmitterCurve {
  /** Width of the cubic that leads from zero into the law, in m. */
  static final double LEAD_IN = 0.005;

  private static final double ORIFICE = 0.5;

  private final double[] from;
  private final double[] k;
  private final double[] x;
  private final double opensAt;
  private final double leadIn;

  private EmitterCurve(double[] from, double[] k, double[] x, double opensAt) {
    this.from = from;
    this.k = k;
    this.x = x;
    this.opensAt = opensAt;
    this.leadIn = Math.max(LEAD_IN, opensAt * 0.05);
  }

  /**
   * An emitter by its equation {@code q = k h^x}.
   *
   * @param k flow in m3/s at 1 m of head
   * @param x exponent from 0 to 1
   */
  public static EmitterCurve power(double k, double x) {
    return new EmitterCurve(new double[] {0}, new double[] {k}, new double[] {x}, 0);
  }

  /** The power law with exponent {@code x} that gives {@code flow} at {@code headM}. */
  public static EmitterCurve through(double flow, double headM, double x) {
    return power(flow / Math.pow(headM, x), x);
  }

  /**
   * A free hole, such as a cut in a lateral: {@code q = Cd A sqrt(2 g h)}.
   *
   * @param diameterM diameter of the hole in m
   * @param dischargeCoefficient Cd; about 0.6 for a sharp edge
   */
  public static EmitterCurve orifice(double diameterM, double dischargeCoefficient) {
    double k =
        dischargeCoefficient * Friction.area(diameterM) * Math.sqrt(2 * Water.STANDARD_GRAVITY);
    return power(k, ORIFICE);
  }

  /**
   * A pressure-compensating emitter.
   *
   * @param nominalFlow flow in m3/s at the lower end of the range
   * @param minHeadM lower end of the range of pressure that it compensates, in m
   * @param maxHeadM upper end of that range, in m
   * @param exponent exponent within the range, 0 to about 0.1
   */
  public static EmitterCurve pressureCompensating(
      double nominalFlow, double minHeadM, double maxHeadM, double exponent) {
    double flat = nominalFlow / Math.pow(minHeadM, exponent);
    double top = flat * Math.pow(maxHeadM, exponent);
    return new EmitterCurve(
        new double[] {0, minHeadM, maxHeadM},
        new double[] {nominalFlow / Math.sqrt(minHeadM), flat, top / Math.sqrt(maxHeadM)},
        new double[] {ORIFICE, exponent, ORIFICE},
        0);
  }

  /** This emitter made to shut below a pressure (in m), as anti-drain emitters do. */
  public EmitterCurve shuttingBelow(double headM) {
    return new EmitterCurve(from, k, x, headM);
  }

  /** This emitter with every flow multiplied, e.g. by a wear or clogging factor. */
  public EmitterCurve scaled(double factor) {
    double[] scaled = k.clone();
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] *= factor;
    }
    return new EmitterCurve(from, scaled, x, opensAt);
  }

  /** Flow of one emitter in m3/s at a gauge pressure in m of water. */
  public double flow(double head) {
    if (head <= opensAt) {
      return 0;
    }
    double knee = opensAt + leadIn;
    if (head >= knee) {
      return law(head);
    }
    double end = law(knee);
    double s = end == 0 ? 0 : lawSlope(knee) * leadIn / end;
    double t = (head - opensAt) / leadIn;
    return end * t * t * (3 - s + (s - 2) * t);
  }

  /** Slope of the flow, dq/dh, in m2/s. */
  public double slope(double head) {
    if (head <= opensAt) {
      return 0;
    }
    double knee = opensAt + leadIn;
    if (head >= knee) {
      return lawSlope(head);
    }
    double end = law(knee);
    double s = end == 0 ? 0 : lawSlope(knee) * leadIn / end;
    double t = (head - opensAt) / leadIn;
    return end / leadIn * t * (2 * (3 - s) + 3 * (s - 2) * t);
  }

  /**
   * Head at which the emitter gives a flow, in m.
   *
   * @param flow flow in m3/s, positive
   * @return the head, or infinity where no head gives that flow
   */
  public double headFor(double flow) {
    int piece = 0;
    while (piece + 1 < from.length
        && k[piece + 1] * Math.pow(from[piece + 1], x[piece + 1]) < flow) {
      piece++;
    }
    if (k[piece] == 0 || x[piece] == 0 && flow > k[piece]) {
      return Double.POSITIVE_INFINITY;
    }
    double head = x[piece] == 0 ? from[piece] : Math.pow(flow / k[piece], 1 / x[piece]);
    return Math.max(head, opensAt);
  }

  private int piece(double head) {
    int piece = from.length - 1;
    while (piece > 0 && head < from[piece]) {
      piece--;
    }
    return piece;
  }

  private double law(double head) {
    int i = piece(head);
    return k[i] * Math.pow(head, x[i]);
  }

  private double lawSlope(double head) {
    int i = piece(head);
    return x[i] * k[i] * Math.pow(head, x[i] - 1);
  }

  /** True where the curve is one power law open from zero pressure on. */
  boolean isPlainPower() {
    return from.length == 1 && opensAt == 0;
  }

  /** Coefficient of the first power law, m3/s at 1 m. */
  double firstCoefficient() {
    return k[0];
  }

  /** Exponent of the law at a pressure in m: how many per cent the flow follows one of pressure. */
  public double exponentAt(double head) {
    return x[piece(head)];
  }

  /** What is wrong with the numbers of this curve, or null. */
  String fault() {
    for (int i = 0; i < k.length; i++) {
      if (!(k[i] >= 0) || Double.isInfinite(k[i])) {
        return "its flow coefficient must be zero or more, but is " + k[i];
      }
      if (!(x[i] >= 0 && x[i] <= 1)) {
        return "its exponent must be from 0 to 1, but is " + x[i];
      }
      if (i > 0 && !(from[i] > from[i - 1]) || Double.isInfinite(from[i])) {
        return "its pressure range must run from a lower to a higher pressure above zero";
      }
    }
    if (!(opensAt >= 0) || Double.isInfinite(opensAt)) {
      return "its shut-off pressure must be zero or more, but is " + opensAt;
    }
    return null;
  }
}
