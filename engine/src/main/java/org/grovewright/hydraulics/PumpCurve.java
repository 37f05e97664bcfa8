package org.grovewright.hydraulics;

import java.util.List;

/** Head that a pump adds at each flow, in metres with flows in m3/s. */
public sealed interface PumpCurve {
  /**
   * The curve from one point, by the usual assumption that a centrifugal pump has 4/3 of the head
   * at no flow and no head at twice the flow, with exponent 2.
   */
  static PowerLaw ofPoint(double flow, double headM) {
    return new PowerLaw(4 * headM / 3, headM / (3 * flow * flow), 2);
  }

  /**
   * The power law through the head at no flow and two points.
   *
   * @throws IllegalArgumentException if the head does not fall from each point to the next
   */
  static PowerLaw ofPoints(
      double shutoffHead, double flow1, double head1, double flow2, double head2) {
    boolean falls = shutoffHead > head1 && head1 > head2 && flow1 > 0 && flow2 > flow1;
    double c = Math.log((shutoffHead - head2) / (shutoffHead - head1)) / Math.log(flow2 / flow1);
    if (!falls || !(c > 0) || c > 20) {
      throw new IllegalArgumentException(
          "a pump's head must fall from each point of its curve to the next as the flow grows");
    }
    return new PowerLaw(shutoffHead, (shutoffHead - head1) / Math.pow(flow1, c), c);
  }

  /** Head added at a flow, in m; below zero where the pump holds back so much water. */
  double headAt(double flow);

  /** The lift in m above which the pump gives nothing. */
  double mostHead();

  /** Flow in m3/s up to which the curve tells of the pump. */
  double mostFlow();

  /** Flow in m3/s at which the pump adds no head. */
  double flowWithoutHead();

  /**
   * The curve of the same pump at another speed, by the affinity laws: flows grow with the speed
   * and heads with its square.
   *
   * @param ratio speed over that of this curve, positive
   */
  PumpCurve atSpeed(double ratio);

  /**
   * The curve {@code h = h0 - b Q^c}.
   *
   * @param shutoffHead h0, head at no flow, in m
   * @param b coefficient, positive
   * @param c exponent, positive
   */
  record PowerLaw(double shutoffHead, double b, double c) implements PumpCurve {
    @Override
    public double headAt(double flow) {
      return shutoffHead - b * Math.pow(flow, c);
    }

    @Override
    public double mostHead() {
      return shutoffHead;
    }

    @Override
    public double mostFlow() {
      return flowWithoutHead();
    }

    @Override
    public double flowWithoutHead() {
      return Math.pow(shutoffHead / b, 1 / c);
    }

    @Override
    public PowerLaw atSpeed(double ratio) {
      return new PowerLaw(ratio * ratio * shutoffHead, b * ratio * ratio / Math.pow(ratio, c), c);
    }
  }

  /**
   * A point of a curve.
   *
   * @param flow flow in m3/s
   * @param head head added at it in m
   */
  record Point(double flow, double head) {}

  /**
   * The curve that runs straight from each point to the next, and on beyond the last as between the
   * last two.
   *
   * <p>At less flow than that of the first point nothing is known of the pump. The law then runs on
   * as between the first two, but a pump that would have to lift more than the first point's head
   * is shut, as in the public-domain engine.
   *
   * @param points two or more, each with more flow and less head than the one before
   */
  record Pieces(List<Point> points) implements PumpCurve {
    /**
     * Checks the points.
     *
     * @throws IllegalArgumentException if they are no falling curve
     */
    public Pieces {
      points = List.copyOf(points);
      if (points.size() < 2) {
        throw new IllegalArgumentException("a pump's curve of pieces needs two points or more");
      }
      double flow = points.get(0).flow();
      double head = points.get(0).head();
      boolean good = flow >= 0 && head > 0 && Double.isFinite(head);
      for (Point point : points.subList(1, points.size())) {
        good &= point.flow() > flow && point.head() < head;
        flow = point.flow();
        head = point.head();
      }
      if (!good || !Double.isFinite(flow) || !Double.isFinite(head)) {
        throw new IllegalArgumentException(
            "a pump's curve must start at a flow of 0 or more and a head above 0, and its head must"
                + " fall from each point to the next as the flow grows");
      }
    }

    @Override
    public double headAt(double flow) {
      int end = 1;
      while (end < points.size() - 1 && points.get(end).flow() < flow) {
        end++;
      }
      Point from = points.get(end - 1);
      return from.head() - fall(end) * (flow - from.flow());
    }

    @Override
    public double mostHead() {
      return points.get(0).head();
    }

    @Override
    public double mostFlow() {
      return points.get(points.size() - 1).flow();
    }

    @Override
    public double flowWithoutHead() {
      int end = 1;
      while (end < points.size() - 1 && points.get(end).head() > 0) {
        end++;
      }
      Point from = points.get(end - 1);
      return from.flow() + from.head() / fall(end);
    }

    /** How steeply the head falls in the piece that ends at a point, in m per m3/s. */
    double fall(int end) {
      Point from = points.get(end - 1);
      Point to = points.get(end);
      return (from.head() - to.head()) / (to.flow() - from.flow());
    }

    @Override
    public Pieces atSpeed(double ratio) {
      return new Pieces(
          points.stream()
              .map(point -> new Point(ratio * point.flow(), ratio * ratio * point.head()))
              .toList());
    }
  }
}
