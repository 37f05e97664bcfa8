package org.grovewright.hydraulics;

/**
 * The laws of head loss of all links, in flat arrays: what head a flow loses and how steeply that
 * grows with the flow.
 */
final class LinkLaws {
  private static final byte HAZEN_WILLIAMS = 0;
  private static final byte DARCY_WEISBACH = 1;
  private static final byte DEVICE = 2;
  private static final byte PUMP = 3;
  private static final byte PIECES = 4;

  /** Slope in m per m3/s that every device and pump has at least, so that none is lossless. */
  private static final double LEAST_SLOPE = 1e-3;

  /** Flow in m3/s below which a device's power law is replaced by a smooth odd cubic. */
  private static final double SMOOTH_FLOW = 1e-7;

  private final double viscosity;
  private final double gravity;
  private final byte[] kind;

  /** Main coefficient: r of Hazen-Williams, 8 L / (pi^2 g D^5), a of a device, b of a pump. */
  private final double[] main;

  /** Coefficient of Q |Q|. */
  private final double[] minor;

  /** Smoothing flow (Hazen-Williams), Reynolds number per flow (Darcy-Weisbach) or exponent. */
  private final double[] third;

  /**
   * Slope at zero (Hazen-Williams), relative roughness / 3.7, or the lift above which a pump gives
   * nothing.
   */
  private final double[] fourth;

  /** For each pump with a curve of pieces its curve; empty without such pumps. */
  private Pieces[] pieces = {};

  /** Four coefficients of the transitional friction factor per link; empty without such pipes. */
  private double[] cubic = {};

  /** The bore of the pipe set last: pipes of one sort mostly follow each other. */
  private Bore bore;

  LinkLaws(int links, double viscosity, double gravity) {
    this.viscosity = viscosity;
    this.gravity = gravity;
    kind = new byte[links];
    main = new double[links];
    minor = new double[links];
    third = new double[links];
    fourth = new double[links];
  }

  private LinkLaws(LinkLaws other) {
    viscosity = other.viscosity;
    gravity = other.gravity;
    kind = other.kind.clone();
    main = other.main.clone();
    minor = other.minor.clone();
    third = other.third.clone();
    fourth = other.fourth.clone();
    cubic = other.cubic.clone();
    // never written to once it is set
    pieces = other.pieces;
  }

  LinkLaws copy() {
    return new LinkLaws(this);
  }

  void set(int l, Link link) {
    if (link instanceof Link.Pipe pipe) {
      setPipe(l, pipe);
    } else if (link instanceof Link.LossDevice device) {
      LossCurve loss = device.loss();
      setDevice(l, loss.a(), loss.n(), loss.m());
    } else if (link instanceof Link.PressureRegulator valve) {
      setDevice(l, 0, 2, minorCoefficient(valve.minorLoss(), valve.diameter()));
    } else if (link instanceof Link.Pump pump) {
      setPump(l, pump.curve());
    }
  }

  private void setPump(int l, PumpCurve curve) {
    minor[l] = 0;
    fourth[l] = curve.mostHead();
    if (curve instanceof PumpCurve.PowerLaw law) {
      kind[l] = PUMP;
      main[l] = law.b();
      third[l] = law.c();
    } else if (curve instanceof PumpCurve.Pieces law) {
      kind[l] = PIECES;
      if (pieces.length == 0) {
        pieces = new Pieces[kind.length];
      }
      pieces[l] = new Pieces(law);
    }
  }

  /** A pump's curve of straight pieces in flat arrays. */
  private static final class Pieces {
    /** Flow and head where each piece starts, and how steeply the head falls along it. */
    final double[] flow;

    final double[] head;
    final double[] fall;

    Pieces(PumpCurve.Pieces curve) {
      int count = curve.points().size() - 1;
      flow = new double[count];
      head = new double[count];
      fall = new double[count];
      for (int i = 0; i < count; i++) {
        flow[i] = curve.points().get(i).flow();
        head[i] = curve.points().get(i).head();
        fall[i] = curve.fall(i + 1);
      }
    }

    /** The piece at a flow; the first below it and the last above. */
    int at(double q) {
      int i = flow.length - 1;
      while (i > 0 && q <= flow[i]) {
        i--;
      }
      return i;
    }
  }

  void setSupply(int l, SupplyCurve supply) {
    setDevice(l, supply.a(), supply.n(), 0);
  }

  private void setDevice(int l, double a, double n, double m) {
    kind[l] = DEVICE;
    main[l] = n == 2 ? 0 : a;
    third[l] = n;
    minor[l] = n == 2 ? a + m : m;
  }

  private void setPipe(int l, Link.Pipe pipe) {
    if (bore == null || !bore.isOf(pipe)) {
      bore = new Bore(pipe, viscosity, gravity);
    }
    minor[l] = minorCoefficient(pipe.minorLoss(), pipe.diameter());
    main[l] = bore.resistance * pipe.length();
    third[l] = bore.third;
    if (bore.formula == FrictionFormula.HAZEN_WILLIAMS) {
      kind[l] = HAZEN_WILLIAMS;
      fourth[l] = main[l] * bore.fourth;
      return;
    }
    kind[l] = DARCY_WEISBACH;
    fourth[l] = bore.fourth;
    if (cubic.length == 0) {
      cubic = new double[4 * kind.length];
    }
    System.arraycopy(bore.cubic, 0, cubic, 4 * l, 4);
  }

  private double minorCoefficient(double k, double diameter) {
    return k == 0 ? 0 : 8 * k / (Math.PI * Math.PI * gravity * Math.pow(diameter, 4));
  }

  /** What all pipes of a bore and roughness have in common, which takes powers to find. */
  private static final class Bore {
    final FrictionFormula formula;
    final double diameter;
    final double roughness;

    /** The main coefficient per metre. */
    final double resistance;

    final double third;

    /** The fourth coefficient; with Hazen-Williams for a main coefficient of 1. */
    final double fourth;

    final double[] cubic = new double[4];

    Bore(Link.Pipe pipe, double viscosity, double gravity) {
      formula = pipe.roughness().formula();
      diameter = pipe.diameter();
      roughness = pipe.roughness().value();
      if (formula == FrictionFormula.HAZEN_WILLIAMS) {
        resistance = Friction.hazenWilliamsResistance(1, diameter, roughness);
        third = Friction.HW_SMOOTH_SPEED * Friction.area(diameter);
        fourth = Math.pow(third, Friction.HW_EXPONENT - 1);
      } else {
        resistance = 8 / (Math.PI * Math.PI * gravity * Math.pow(diameter, 5));
        third = 4 / (Math.PI * diameter * viscosity);
        fourth = roughness / diameter / 3.7;
        Friction.transitionCubic(roughness / diameter, cubic, 0);
      }
    }

    boolean isOf(Link.Pipe pipe) {
      return pipe.diameter() == diameter
          && pipe.roughness().value() == roughness
          && pipe.roughness().formula() == formula;
    }
  }

  /** Finds loss in m and slope in m per m3/s at the flow of every link. */
  void evaluate(double[] flow, double[] loss, double[] slope) {
    for (int l = 0; l < kind.length; l++) {
      evaluate(l, flow, loss, slope);
    }
  }

  /** Whether the law of a link is that of a pipe, smooth but near standstill. */
  boolean isPipe(int l) {
    return kind[l] == HAZEN_WILLIAMS || kind[l] == DARCY_WEISBACH;
  }

  /** Finds loss and slope of one link at its flow. */
  void evaluate(int l, double[] flow, double[] loss, double[] slope) {
    double q = flow[l];
    double size = Math.abs(q);
    if (kind[l] == HAZEN_WILLIAMS && size >= third[l]) {
      double power = main[l] * Math.pow(size, Friction.HW_EXPONENT - 1);
      double squared = minor[l] * size;
      loss[l] = (power + squared) * q;
      slope[l] = Friction.HW_EXPONENT * power + 2 * squared;
    } else {
      evaluateOther(l, q, size, loss, slope);
    }
  }

  private void evaluateOther(int l, double q, double size, double[] loss, double[] slope) {
    double squared = minor[l] * size;
    switch (kind[l]) {
      case HAZEN_WILLIAMS -> {
        double ratio = size / third[l];
        double bend = (Friction.HW_EXPONENT - 1) / 2 * ratio * ratio;
        double flat = (3 - Friction.HW_EXPONENT) / 2;
        loss[l] = (fourth[l] * (flat + bend) + squared) * q;
        slope[l] = fourth[l] * (flat + 3 * bend) + 2 * squared;
      }
      case DARCY_WEISBACH -> darcyWeisbach(l, q, size, loss, slope);
      case PUMP -> {
        double power = power(l, size, slope);
        loss[l] = -fourth[l] + (power + LEAST_SLOPE) * q;
        slope[l] += LEAST_SLOPE;
      }
      case PIECES -> {
        Pieces law = pieces[l];
        int i = law.at(q);
        loss[l] = law.fall[i] * (q - law.flow[i]) - law.head[i] + LEAST_SLOPE * q;
        slope[l] = law.fall[i] + LEAST_SLOPE;
      }
      default -> {
        double power = power(l, size, slope);
        loss[l] = (power + squared + LEAST_SLOPE) * q;
        slope[l] += LEAST_SLOPE + 2 * squared;
      }
    }
  }

  /** The a Q^(n-1) of a power law; its slope goes into the array. */
  private double power(int l, double size, double[] slope) {
    double n = third[l];
    if (main[l] == 0) {
      slope[l] = minor[l] * SMOOTH_FLOW;
      return minor[l] * SMOOTH_FLOW;
    }
    if (size >= SMOOTH_FLOW) {
      double power = main[l] * Math.pow(size, n - 1);
      slope[l] = n * power;
      return power;
    }
    double atKnee = main[l] * Math.pow(SMOOTH_FLOW, n - 1);
    if (n >= 3) {
      slope[l] = atKnee;
      return atKnee;
    }
    double ratio = size / SMOOTH_FLOW;
    double bend = (n - 1) / 2 * ratio * ratio;
    slope[l] = atKnee * ((3 - n) / 2 + 3 * bend);
    return atKnee * ((3 - n) / 2 + bend);
  }

  private void darcyWeisbach(int l, double q, double size, double[] loss, double[] slope) {
    double reynolds = third[l] * size;
    double squared = minor[l] * size;
    if (reynolds <= Friction.LAMINAR_REYNOLDS) {
      double linear = 64 * main[l] / third[l];
      loss[l] = (linear + squared) * q;
      slope[l] = linear + 2 * squared;
      return;
    }
    double factor;
    // Re df/dRe
    double factorSlope;
    if (reynolds >= Friction.TURBULENT_REYNOLDS) {
      double term = 5.74 / Math.pow(reynolds, 0.9);
      double y = fourth[l] + term;
      double root = Friction.TWO_OVER_LN_10 * Math.log(y);
      factor = 1 / (root * root);
      factorSlope = 1.8 * Friction.TWO_OVER_LN_10 * term * factor / (y * root);
    } else {
      double s = reynolds / Friction.LAMINAR_REYNOLDS - 1;
      int at = 4 * l;
      factor = cubic[at] + s * (cubic[at + 1] + s * (cubic[at + 2] + s * cubic[at + 3]));
      factorSlope = (s + 1) * (cubic[at + 1] + s * (2 * cubic[at + 2] + s * 3 * cubic[at + 3]));
    }
    double friction = main[l] * size;
    loss[l] = (factor * friction + squared) * q;
    slope[l] = (2 * factor + factorSlope) * friction + 2 * squared;
  }

  /** The lift in m above which the link lets nothing through: positive for pumps only. */
  double headAdded(int l) {
    return kind[l] == PUMP || kind[l] == PIECES ? fourth[l] : 0;
  }

  /** Whether the law of a link only tells what it does from some flow on. */
  boolean startsAboveNoFlow(int l) {
    return kind[l] == PIECES && pieces[l].flow[0] > 0;
  }

  /**
   * Sets the flow of one link to one that loses about the given head, to start from.
   *
   * @param head head in m to be lost, positive
   * @param flow receives the flow in m3/s
   * @param loss scratch
   * @param slope scratch
   */
  void startLosing(int l, double head, double[] flow, double[] loss, double[] slope) {
    double low = 1e-9;
    double high = 10;
    for (int i = 0; i < 30; i++) {
      flow[l] = Math.sqrt(low * high);
      evaluate(l, flow, loss, slope);
      if (loss[l] < head) {
        low = flow[l];
      } else {
        high = flow[l];
      }
    }
  }
}
