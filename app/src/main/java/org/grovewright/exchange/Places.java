package org.grovewright.exchange;

import java.util.List;
import java.util.Optional;

/**
 * What a file of places says, by latitude and longitude in degrees.
 *
 * @param outline corners of the land; empty if the file has none
 * @param plants plants
 */
public record Places(List<double[]> outline, List<PlantPlace> plants) {
  /** Copies the lists. */
  public Places {
    outline = List.copyOf(outline);
    plants = List.copyOf(plants);
  }

  /**
   * One plant.
   *
   * @param name what the file calls it; may be empty
   * @param species species as the file names it, if it does
   * @param latitude latitude, degrees
   * @param longitude longitude, degrees
   */
  public record PlantPlace(
      String name, Optional<String> species, double latitude, double longitude) {}
}
