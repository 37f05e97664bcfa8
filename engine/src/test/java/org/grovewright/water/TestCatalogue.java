package org.grovewright.water;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.Mulch;
import org.grovewright.catalogue.SoilTexture;
import org.grovewright.catalogue.Species;
import org.grovewright.quantity.Kind;

/** A small catalogue for tests; crop values follow FAO-56 (1998) table 12, from memory. */
public final class TestCatalogue {
  private TestCatalogue() {}

  /** The constants under {@code water.} and {@code growth.}. */
  public static Map<String, Constant> constants() {
    Map<String, Constant> constants = new LinkedHashMap<>();
    put(constants, "water.angstrom-a", 0.25, Kind.NUMBER);
    put(constants, "water.angstrom-b", 0.5, Kind.NUMBER);
    put(constants, "water.krs-interior", 0.16, Kind.NUMBER);
    put(constants, "water.krs-coastal", 0.19, Kind.NUMBER);
    put(constants, "water.wind-default", 2, Kind.WIND_SPEED);
    put(constants, "water.curve-number", 65, Kind.NUMBER);
    put(constants, "water.rain-per-wet-day", 0.008, Kind.WATER_DEPTH);
    put(constants, "water.temperature-deviation", 3, Kind.NUMBER);
    put(constants, "water.temperature-memory", 0.65, Kind.NUMBER);
    put(constants, "water.wind-floor", 0.5, Kind.WIND_SPEED);
    put(constants, "water.dewpoint-arid-offset", 2, Kind.NUMBER);
    put(constants, "water.arid-below", 0.5, Kind.NUMBER);
    put(constants, "water.canopy-multiplier", 1.5, Kind.NUMBER);
    put(constants, "water.stand-cover", 0.7, Kind.SHARE);
    put(constants, "water.basal-difference", 0.05, Kind.NUMBER);
    put(constants, "water.wetted-share", 0.35, Kind.SHARE);
    put(constants, "water.capillary-reach", 0.1, Kind.LENGTH);
    put(constants, "water.evaporation-depth", 0.1, Kind.LENGTH);
    put(constants, "water.ball-field-capacity", 0.4, Kind.SHARE);
    put(constants, "water.ball-wilting-point", 0.22, Kind.SHARE);
    put(constants, "water.ball-exchange", 0.1, Kind.SHARE);
    put(constants, "water.root-compensation", 1, Kind.NUMBER);
    put(constants, "water.rew-default", 0.008, Kind.WATER_DEPTH);
    put(constants, "water.establishment-time", 365.25 * 86_400, Kind.DAYS);
    put(constants, "water.establishment-interval", 7 * 86_400.0, Kind.DAYS);
    put(constants, "water.longest-interval", 21 * 86_400.0, Kind.DAYS);
    put(constants, "growth.crown-per-container", 2.4, Kind.NUMBER);
    put(constants, "growth.height-per-container", 5, Kind.NUMBER);
    put(constants, "growth.bare-root-as-container", 0.01, Kind.BULK_VOLUME);
    put(constants, "growth.root-rate", 0.45, Kind.LENGTH);
    return constants;
  }

  private static void put(Map<String, Constant> constants, String key, double value, Kind kind) {
    constants.put(key, new Constant(key, key, value, kind, "test"));
  }

  /** A catalogue with these species, a loam and wood chips. */
  public static Catalogue of(Species... species) {
    return of(constants(), species);
  }

  /** The same where a usual rain brings so much, metres. */
  static Catalogue raining(double perWetDayM) {
    Map<String, Constant> constants = constants();
    put(constants, "water.rain-per-wet-day", perWetDayM, Kind.WATER_DEPTH);
    return of(constants);
  }

  private static Catalogue of(Map<String, Constant> constants, Species... species) {
    Map<String, Species> plants = new LinkedHashMap<>();
    for (Species one : species) {
      plants.put(one.key(), one);
    }
    // Water contents and REW of a loam: FAO-56 (1998) table 19.
    SoilTexture loam =
        new SoilTexture("loam", "loam", 0.25, 0.12, 13e-3 / 3600, 1400, 0.25, 0.009, "test");
    Mulch chips = new Mulch("mulch.wood-chips", "wood chips", 300, 0.2, 0.08, 2, 0.5, "test");
    return new Catalogue(
        plants,
        Map.of("loam", loam),
        Map.of(),
        Map.of(),
        Map.of(),
        Map.of(),
        Map.of(),
        Map.of(),
        Map.of("mulch.wood-chips", chips),
        Map.of(),
        Map.of(),
        Map.of(),
        List.of(),
        List.of(),
        constants,
        Map.of());
  }

  /** An evergreen like avocado. */
  public static Species evergreen() {
    return species("evergreen", true, 7, 6, new Species.Kc(0.6, 0.85, 0.75, 60, 90, 120, 95, 1));
  }

  /** A deciduous tree like peach without ground cover. */
  public static Species deciduous() {
    return species("deciduous", false, 5, 4.5, new Species.Kc(0.45, 0.9, 0.65, 20, 70, 90, 30, 3));
  }

  /** A species with the size and curve that matter here. */
  public static Species species(
      String key, boolean evergreen, double spreadM, double spacingM, Species.Kc kc) {
    return new Species(
        key,
        key,
        key,
        evergreen ? Species.Group.SUBTROPICAL : Species.Group.TEMPERATE,
        Species.Role.MAIN,
        evergreen,
        6,
        spreadM,
        10,
        spacingM,
        0.8,
        evergreen ? 0.7 : 0.5,
        kc,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        -3,
        5.5,
        7.5,
        new Species.Feeding(0.1, 0.5, List.of(3, 5, 7)),
        Optional.empty(),
        "test");
  }
}
