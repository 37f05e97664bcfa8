package org.grovewright.hydraulics;

/**
 * Head that a pump adds: {@code h = h0 - b Q^c}, in metres with Q in m3/s.
 *
 * @param shutoffHead h0, head at no flow, in m
 * @param b coefficient, positive
 * @param c exponent, at least 1
 */
public record PumpCurve(double shutoffHead, double b, double c) {
  /**
   * The curve from one point, by the usual assumption that a centrifugal pump has 4/3 of the head
   * at no flow and no head at twice the flow, with exponent 2.
   */
  public static PumpCurve ofPoint(double flow, double headM) {
    return new PumpCurve(4 * headM / 3, headM / (3 * flow * flow), 2);
  }

  /**
   * The curve through the head at no flow and two points.
   *
   * @throws IllegalArgumentException if the head does not fall from each point to the next
   */
  public static PumpCurve ofPoints(
      double shutoffHead, double flow1, double head1, double flow2, double head2) {
    boolean falls = shutoffHead > head1 && head1 > head2 && flow1 > 0 && flow2 > flow1;
    double c = Math.log((shutoffHead - head2) / (shutoffHead - head1)) / Math.log(flow2 / flow1);
    if (!falls || !(c > 0) || c > 20) {
      throw new IllegalArgumentException(
          "a pump's head must fall from each point of its curve to the next as the flow grows");
    }
    return new PumpCurve(shutoffHead, (shutoffHead - head1) / Math.pow(flow1, c), c);
  }

  /**
   * The curve of the same pump at another speed, by the affinity laws.
   *
   * @param ratio speed over that of this curve, positive
   */
  public PumpCurve atSpeed(double ratio) {
    return new PumpCurve(ratio * ratio * shutoffHead, b * ratio * ratio / Math.pow(ratio, c), c);
  }

  /** Head added at a flow, in m. */
  public double headAt(double flow) {
    return shutoffHead - b * Math.pow(flow, c);
  }
}
