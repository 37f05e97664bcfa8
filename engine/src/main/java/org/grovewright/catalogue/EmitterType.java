package org.grovewright.catalogue;

import java.util.OptionalDouble;

/**
 * A generic emitter: {@code q = qn (p / pn)^x} outside compensation, nearly constant within its
 * range when it compensates pressure.
 *
 * @param key catalogue key
 * @param name name in plain words
 * @param nominalFlowM3PerS flow at the nominal pressure, m3/s
 * @param nominalPressurePa nominal pressure, pascals
 * @param exponent exponent x of the pressure; within the range for a compensating emitter
 * @param compensating whether it compensates pressure
 * @param minPressurePa start of the working range, pascals
 * @param maxPressurePa end of the working range, pascals
 * @param manufacturingCv coefficient of manufacturing variation
 * @param shutOffPressurePa pressure below which it holds water back, pascals, if it does
 * @param wettedDiameterM typical diameter wetted on loam, metres
 * @param filterOpeningM largest filter opening that protects it, metres
 * @param barbLossM length of tubing whose friction equals the loss at its barb, metres
 * @param pattern how it gives its water
 * @param market where it is sold
 * @param source where the values come from
 */
public record EmitterType(
    String key,
    String name,
    double nominalFlowM3PerS,
    double nominalPressurePa,
    double exponent,
    boolean compensating,
    double minPressurePa,
    double maxPressurePa,
    double manufacturingCv,
    OptionalDouble shutOffPressurePa,
    double wettedDiameterM,
    double filterOpeningM,
    double barbLossM,
    Pattern pattern,
    Market market,
    String source) {
  /** By the key alone: types stand in many tables, and adding up all members takes long. */
  @Override
  public int hashCode() {
    return key.hashCode();
  }

  /** How an emitter gives its water. */
  public enum Pattern {
    /** Drop by drop at one point. */
    DRIPPER,
    /** A small stream at one point. */
    BUBBLER,
    /** Over a circle of several metres. */
    SPRAY,
    /** At close even steps all along the tubing. */
    LINE
  }
}
