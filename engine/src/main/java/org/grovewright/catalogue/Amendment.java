package org.grovewright.catalogue;

import java.util.Optional;

/**
 * A soil amendment or fertiliser.
 *
 * @param key catalogue key
 * @param name name in plain words
 * @param densityKgPerM3 bulk density, kg/m3
 * @param nitrogen nitrogen, share of mass
 * @param phosphate phosphate as P2O5, share of mass
 * @param potash potash as K2O, share of mass
 * @param ratePlantingKgPerM3 label rate at planting, kg per m3 of backfill; 0 if not used then
 * @param use when it is used
 * @param caution key of its caution, if any
 * @param source where the values come from
 */
public record Amendment(
    String key,
    String name,
    double densityKgPerM3,
    double nitrogen,
    double phosphate,
    double potash,
    double ratePlantingKgPerM3,
    Use use,
    Optional<String> caution,
    String source) {
  /** When an amendment is used. */
  public enum Use {
    PLANTING,
    FEEDING,
    ACIDIFYING,
    LIMING
  }
}
