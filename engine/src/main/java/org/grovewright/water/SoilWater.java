package org.grovewright.water;

import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.SoilTexture;
import org.grovewright.model.Soil;

/**
 * What the native soil holds.
 *
 * @param fieldCapacity water content at field capacity, volume share
 * @param wiltingPoint water content at wilting point, volume share
 * @param readilyEvaporableM water that evaporates from a wet surface without hindrance, metres
 * @param depthM depth to which roots can go, metres
 * @param origin where the water contents come from, as the origin of an input
 */
public record SoilWater(
    double fieldCapacity,
    double wiltingPoint,
    double readilyEvaporableM,
    double depthM,
    String origin) {
  private static final double LEAST_DEPLETION = 0.1;
  private static final double GREATEST_DEPLETION = 0.8;

  /**
   * The soil of a description; measured water contents go before those of the texture class.
   *
   * @throws IllegalArgumentException if neither is known, or if field capacity is not above wilting
   *     point
   */
  public static SoilWater of(Soil soil, Catalogue catalogue) {
    SoilTexture texture = soil.textureKey().map(catalogue.textures()::get).orElse(null);
    boolean measured = soil.fieldCapacity().isPresent() && soil.wiltingPoint().isPresent();
    if (!measured && texture == null) {
      throw new IllegalArgumentException(
          "the soil needs a texture class of the catalogue, or both field capacity and wilting"
              + " point");
    }
    double fieldCapacity = measured ? soil.fieldCapacity().getAsDouble() : texture.fieldCapacity();
    double wiltingPoint = measured ? soil.wiltingPoint().getAsDouble() : texture.wiltingPoint();
    if (!(fieldCapacity > wiltingPoint)) {
      throw new IllegalArgumentException(
          "field capacity must be greater than wilting point, got "
              + fieldCapacity
              + " and "
              + wiltingPoint);
    }
    double readily =
        texture == null
            ? catalogue.constant("water.rew-default").value()
            : texture.readilyEvaporableM();
    return new SoilWater(
        fieldCapacity,
        wiltingPoint,
        readily,
        soil.depthM(),
        measured ? "description" : "catalogue: textures, " + texture.key());
  }

  /** Total available water, metres of depth, in a root zone; FAO-56 equation 82. */
  public double totalAvailableM(double rootDepthM) {
    return (fieldCapacity - wiltingPoint) * rootDepthM;
  }

  /**
   * Share of the total available water that a plant can use before it suffers; the table's share is
   * for 5 mm/day and falls as the plant uses more, FAO-56 table 22, note 2.
   *
   * @param tableShare share of the table
   * @param etcMmPerDay what the plant uses, mm per day over its root zone
   */
  public static double depletion(double tableShare, double etcMmPerDay) {
    double adjusted = tableShare + 0.04 * (5 - etcMmPerDay);
    return Math.max(LEAST_DEPLETION, Math.min(GREATEST_DEPLETION, adjusted));
  }
}
