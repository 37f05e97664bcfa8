package org.grovewright.hydraulics;

import java.util.Random;

/**
 * How emitters of one kind differ from each other in the field.
 *
 * @param manufacturingCv coefficient of variation of new emitters, as a share
 * @param cloggedShare share of emitters that are partly clogged, 0 to 1
 * @param cloggedFlow what a clogged emitter still gives, as a share of its flow
 * @param temperatureFactor flow of every emitter at the water's temperature over that at the
 *     temperature it was published for
 * @param temperatureCv coefficient of variation of that factor between emitters, because water
 *     warms up on its way through tubing in the sun, as a share
 */
public record EmitterVariation(
    double manufacturingCv,
    double cloggedShare,
    double cloggedFlow,
    double temperatureFactor,
    double temperatureCv) {
  /**
   * Checks the figures.
   *
   * @throws IllegalArgumentException if a figure is outside its range
   */
  public EmitterVariation {
    boolean fits =
        manufacturingCv >= 0
            && manufacturingCv < 1
            && cloggedShare >= 0
            && cloggedShare <= 1
            && cloggedFlow >= 0
            && cloggedFlow <= 1
            && temperatureFactor > 0
            && temperatureCv >= 0
            && temperatureCv < 1;
    if (!fits) {
      throw new IllegalArgumentException(
          "variation and shares must be from 0 to 1 and the temperature factor above 0");
    }
  }

  /** Variation with water of one temperature throughout. */
  public EmitterVariation(
      double manufacturingCv, double cloggedShare, double cloggedFlow, double temperatureFactor) {
    this(manufacturingCv, cloggedShare, cloggedFlow, temperatureFactor, 0);
  }

  /** Variation of manufacture alone. */
  public static EmitterVariation ofManufacture(double cv) {
    return new EmitterVariation(cv, 0, 1, 1);
  }

  /**
   * Factor on an emitter's flow by a linear temperature effect.
   *
   * @param perKelvin change of flow per degree as a share; about 0 in turbulent emitters
   * @param celsius temperature of the water
   * @param publishedAt temperature the flow was published for
   */
  public static double temperatureFactor(double perKelvin, double celsius, double publishedAt) {
    return 1 + perKelvin * (celsius - publishedAt);
  }

  /**
   * Factor on an emitter's flow by the viscosity of the water, {@code (nu / nu0)^(1 - 2x)}.
   *
   * <p>An emitter is a passage whose loss follows a power law of friction, {@code h ~ nu^m
   * q^(2-m)}; its exponent is then {@code x = 1 / (2 - m)}, which leaves {@code q ~ nu^(1 - 2x)} at
   * the same pressure: nothing in turbulent emitters (x = 0.5), {@code 1 / nu} in laminar ones (x =
   * 1, Hagen and Poiseuille), and {@code nu^(-1/7)} where Blasius's law of smooth pipes holds.
   * Below 0.5 a diaphragm sets the flow, and viscosity is taken not to matter.
   *
   * @param exponent exponent x of the emitter, 0 to 1
   * @param celsius temperature of the water, 0 to 100 degrees Celsius
   * @param publishedAt temperature the flow was published for
   */
  public static double viscosityFactor(double exponent, double celsius, double publishedAt) {
    double ratio = Water.kinematicViscosity(celsius) / Water.kinematicViscosity(publishedAt);
    return exponent <= 0.5 ? 1 : Math.pow(ratio, 1 - 2 * exponent);
  }

  /**
   * This variation with water that differs in temperature from emitter to emitter. The factor's
   * mean and spread are those of a straight line at the mean temperature.
   *
   * @param exponent exponent x of the emitters
   * @param celsius mean temperature of the water at the emitters
   * @param deviation standard deviation of the temperature between emitters, in K
   * @param publishedAt temperature the flow was published for
   */
  public EmitterVariation inWater(
      double exponent, double celsius, double deviation, double publishedAt) {
    double mean = viscosityFactor(exponent, celsius, publishedAt);
    double warmer = viscosityFactor(exponent, celsius + 0.5, publishedAt);
    double colder = viscosityFactor(exponent, celsius - 0.5, publishedAt);
    return new EmitterVariation(
        manufacturingCv, cloggedShare, cloggedFlow, mean, (warmer - colder) / mean * deviation);
  }

  /** Mean factor on the flow by all causes together. */
  public double meanFactor() {
    return temperatureFactor * (1 - cloggedShare * (1 - cloggedFlow));
  }

  /**
   * Coefficient of variation that manufacture, clogging and temperature cause together: all
   * multiply the flow and are independent, so that {@code 1 + V^2 = (1 + Vm^2)(1 + Vc^2)(1 +
   * Vt^2)}.
   */
  public double coefficient() {
    double lost = cloggedShare * (1 - cloggedFlow);
    double variance = cloggedShare * (1 - cloggedShare) * (1 - cloggedFlow) * (1 - cloggedFlow);
    double clogging = variance / ((1 - lost) * (1 - lost));
    double warmth = temperatureCv * temperatureCv;
    return Math.sqrt((1 + manufacturingCv * manufacturingCv) * (1 + clogging) * (1 + warmth) - 1);
  }

  /** Draws the factor on one emitter's flow. */
  double draw(Random random) {
    double made = Math.max(0, 1 + manufacturingCv * random.nextGaussian());
    boolean clogged = random.nextDouble() < cloggedShare;
    double warmth = temperatureCv == 0 ? 1 : Math.max(0, 1 + temperatureCv * random.nextGaussian());
    return temperatureFactor * warmth * made * (clogged ? cloggedFlow : 1);
  }
}
