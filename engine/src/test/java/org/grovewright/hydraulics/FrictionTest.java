package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FrictionTest {
  private static final double GPM = 3.785411784e-3 / 60;
  private static final double INCH = 0.0254;
  private static final double FOOT = 0.3048;
  // 1 psi of water at 62.4 lb/ft3 is 144 / 62.4 ft
  private static final double PSI = 144 / 62.4 * FOOT;

  /**
   * The formula in gallons and inches, p = 4.52 Q^1.85 / (C^1.85 d^4.87) psi per foot, as used for
   * fire protection (NFPA 13; formula seen in an online calculator's reference). Its rounded
   * coefficients keep it within half a per cent.
   */
  @ParameterizedTest
  @CsvSource({"5, 150, 0.8", "20, 150, 1.38", "100, 120, 3.0", "2, 140, 0.62"})
  void hazenWilliamsAgreesWithGallonForm(double gpm, double c, double inches) {
    double psiPerFoot = 4.52 * Math.pow(gpm, 1.85) / (Math.pow(c, 1.85) * Math.pow(inches, 4.87));
    double metres = Friction.hazenWilliamsLoss(gpm * GPM, 100 * FOOT, inches * INCH, c);
    assertThat(metres).isCloseTo(psiPerFoot * 100 * PSI, withinPercentage(1.0));
  }

  /**
   * The metric form h = 10.67 L Q^1.852 / (C^1.852 d^4.87), as commonly printed (seen in an online
   * glossary of irrigation terms).
   */
  @Test
  void hazenWilliamsAgreesWithMetricForm() {
    double printed =
        10.67 * 80 * Math.pow(2e-4, 1.852) / (Math.pow(145, 1.852) * Math.pow(0.016, 4.87));
    assertThat(Friction.hazenWilliamsLoss(2e-4, 80, 0.016, 145))
        .isCloseTo(printed, withinPercentage(0.5));
  }

  /** The equation of Colebrook and White, 1/sqrt(f) = -2 log10(e/3.7 + 2.51/(Re sqrt f)). */
  private static double colebrook(double reynolds, double relative) {
    double x = 8;
    for (int i = 0; i < 60; i++) {
      x = -2 * Math.log10(relative / 3.7 + 2.51 * x / reynolds);
    }
    return 1 / (x * x);
  }

  /** Swamee and Jain (1976) claim 1 % of Colebrook for 1e-6 <= e/D <= 1e-2, 5000 <= Re <= 1e8. */
  @Test
  void turbulentFactorIsWithinThreePerCentOfColebrook() {
    for (double relative = 1e-6; relative <= 1e-2; relative *= 2) {
      for (double reynolds = 5000; reynolds <= 1e8; reynolds *= 1.5) {
        assertThat(Friction.darcyFactor(reynolds, relative))
            .isCloseTo(colebrook(reynolds, relative), withinPercentage(3.0));
      }
    }
  }

  /** Points of the Moody chart for smooth pipe (Prandtl-Karman line), from memory. */
  @ParameterizedTest
  @CsvSource({"1e4, 0.0309", "1e5, 0.0180", "1e6, 0.01165"})
  void smoothPipeFollowsMoodyChart(double reynolds, double factor) {
    assertThat(Friction.darcyFactor(reynolds, 0)).isCloseTo(factor, withinPercentage(1.5));
  }

  @Test
  void laminarLossIsHagenPoiseuille() {
    double q = 2e-6;
    double d = 0.01;
    double nu = 1e-6;
    double expected = 128 * nu * 5 * q / (Math.PI * Water.STANDARD_GRAVITY * Math.pow(d, 4));
    assertThat(Friction.darcyWeisbachLoss(q, 5, d, 1e-6, nu)).isCloseTo(expected, within(1e-12));
  }

  /**
   * The transitional cubic as the documentation of the public-domain EPANET engine prints it (seen
   * in a public transcription of its manual, appendix D).
   */
  @ParameterizedTest
  @CsvSource({"2100, 0", "2500, 0.0001", "3000, 0.001", "3500, 0.01", "3990, 0.03"})
  void transitionIsThePublishedCubic(double reynolds, double relative) {
    double r = reynolds / 2000;
    double y2 = relative / 3.7 + 5.74 / Math.pow(4000, 0.9);
    double y3 = -0.86859 * Math.log(y2);
    double fa = 1 / (y3 * y3);
    double fb = fa * (2 - 0.00514215 / (y2 * y3));
    double x1 = 7 * fa - fb;
    double x2 = 0.128 - 17 * fa + 2.5 * fb;
    double x3 = -0.128 + 13 * fa - 2 * fb;
    double x4 = r * (0.032 - 3 * fa + 0.5 * fb);
    assertThat(Friction.darcyFactor(reynolds, relative))
        .isCloseTo(x1 + r * (x2 + r * (x3 + x4)), withinPercentage(0.01));
  }

  @Test
  void factorHasNoJumpAndLossAlwaysGrows() {
    for (double relative : new double[] {0, 1e-4, 1e-2, 0.05}) {
      double before = 0;
      for (double reynolds = 1500; reynolds < 6000; reynolds += 1) {
        double loss = Friction.darcyFactor(reynolds, relative) * reynolds * reynolds;
        assertThat(loss).isGreaterThan(before);
        if (before > 0) {
          assertThat(loss / before).isLessThan(1.005);
        }
        before = loss;
      }
    }
  }

  /** Kinematic viscosity in mm2/s of water by temperature, common handbook table, from memory. */
  @ParameterizedTest
  @CsvSource({"5, 1.519", "10, 1.307", "20, 1.004", "30, 0.801", "40, 0.658"})
  void viscosityFollowsTable(double celsius, double expected) {
    assertThat(Water.kinematicViscosity(celsius) * 1e6).isCloseTo(expected, withinPercentage(1.5));
  }

  /** Slopes that Newton's method relies on, against differences of the losses themselves. */
  @Test
  void slopesMatchLosses() {
    Roughness hw = Roughness.hazenWilliams(140);
    Roughness dw = Roughness.darcyWeisbach(2e-5);
    Link[] links = {
      Link.Pipe.of("a", "x", "y", 30, 0.016, hw).withMinorLoss(2),
      Link.Pipe.of("b", "x", "y", 30, 0.016, dw).withMinorLoss(1),
      new Link.LossDevice("c", "x", "y", new LossCurve(3e5, 1.7, 2e5), false, false),
      new Link.LossDevice("d", "x", "y", new LossCurve(3e5, 2, 2e5), false, false),
      new Link.Pump("e", "x", "y", new PumpCurve.PowerLaw(30, 1e6, 1.8)),
      new Link.PressureRegulator("f", "x", "y", 0.02, 10, 5),
      new Link.Pump(
          "g",
          "x",
          "y",
          new PumpCurve.Pieces(
              java.util.List.of(
                  new PumpCurve.Point(1e-5, 30),
                  new PumpCurve.Point(1.3e-4, 29),
                  new PumpCurve.Point(1e-3, 12))))
    };
    LinkLaws laws = new LinkLaws(links.length, 1e-6, 9.80665);
    for (int i = 0; i < links.length; i++) {
      laws.set(i, links[i]);
    }
    double[] flow = new double[links.length];
    double[] loss = new double[links.length];
    double[] slope = new double[links.length];
    double[] low = new double[links.length];
    double[] high = new double[links.length];
    double[] ignored = new double[links.length];
    for (double q = 3e-9; q < 1e-2; q *= 1.7) {
      for (int sign = -1; sign <= 1; sign += 2) {
        double step = 1e-5 * q;
        java.util.Arrays.fill(flow, sign * q - step);
        laws.evaluate(flow, low, ignored);
        java.util.Arrays.fill(flow, sign * q + step);
        laws.evaluate(flow, high, ignored);
        java.util.Arrays.fill(flow, sign * q);
        laws.evaluate(flow, loss, slope);
        for (int i = 0; i < links.length; i++) {
          // the pump's large constant drowns the difference at the smallest flows
          double difference = (high[i] - low[i]) / (2 * step);
          double noise = 1e-14 / step;
          assertThat(slope[i])
              .as(links[i].id() + " at " + sign * q)
              .isCloseTo(difference, within(2e-3 * Math.abs(difference) + noise));
        }
      }
    }
  }
}
