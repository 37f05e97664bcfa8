package org.grovewright.model;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The native soil. Either the texture class or both measured water contents are known.
 *
 * @param textureKey catalogue key of the USDA texture class, if known
 * @param fieldCapacity measured water content at field capacity, volume share
 * @param wiltingPoint measured water content at wilting point, volume share
 * @param depthM depth to rock, hardpan or water table, metres
 * @param drainageTest what the drainage hole showed, if it was dug
 * @param ph soil reaction, if known
 * @param test laboratory values, if known
 */
public record Soil(
    Optional<String> textureKey,
    OptionalDouble fieldCapacity,
    OptionalDouble wiltingPoint,
    double depthM,
    Optional<DrainageTest> drainageTest,
    OptionalDouble ph,
    SoilTest test) {

  /**
   * How fast water left a filled hole.
   *
   * @param dropM fall of the water level, metres
   * @param seconds time it took
   */
  public record DrainageTest(double dropM, double seconds) {}

  /**
   * Laboratory values; each may be unknown.
   *
   * @param organicMatter share of mass
   * @param phosphorusMgPerKg available phosphorus, mg per kg of soil
   * @param potassiumMgPerKg available potassium, mg per kg of soil
   * @param salinitySPerM electrical conductivity of the saturation extract, S/m
   */
  public record SoilTest(
      OptionalDouble organicMatter,
      OptionalDouble phosphorusMgPerKg,
      OptionalDouble potassiumMgPerKg,
      OptionalDouble salinitySPerM) {
    /** Nothing measured. */
    public static final SoilTest NONE =
        new SoilTest(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());
  }
}
