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
 */
public record EmitterVariation(
    double manufacturingCv, double cloggedShare, double cloggedFlow, double temperatureFactor) {
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
            && temperatureFactor > 0;
    if (!fits) {
      throw new IllegalArgumentException(
          "variation and shares must be from 0 to 1 and the temperature factor above 0");
    }
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
   * Coefficient of variation that manufacture and clogging cause together: both multiply the flow
   * and are independent, so that {@code 1 + V^2 = (1 + Vm^2)(1 + Vc^2)}.
   */
  public double coefficient() {
    double lost = cloggedShare * (1 - cloggedFlow);
    double variance = cloggedShare * (1 - cloggedShare) * (1 - cloggedFlow) * (1 - cloggedFlow);
    double clogging = variance / ((1 - lost) * (1 - lost));
    return Math.sqrt((1 + manufacturingCv * manufacturingCv) * (1 + clogging) - 1);
  }

  /** Draws the factor on one emitter's flow. */
  double draw(Random random) {
    double made = Math.max(0, 1 + manufacturingCv * random.nextGaussian());
    boolean clogged = random.nextDouble() < cloggedShare;
    return temperatureFactor * made * (clogged ? cloggedFlow : 1);
  }
}
