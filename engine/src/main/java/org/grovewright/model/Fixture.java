package org.grovewright.model;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A thing that stays where it is.
 *
 * @param id its name in the description
 * @param kind what it is
 * @param shape its footprint
 * @param heightM its height above ground, metres; 0 for flat or buried things
 * @param clearanceM distance that plants must keep, metres; empty takes the catalogue's
 * @param traffic what goes over paving, gravel or a lawn; empty where the owner did not say
 * @param service what a buried service carries; empty for other things and where it is not known
 */
public record Fixture(
    String id,
    FixtureKind kind,
    Shape shape,
    double heightM,
    OptionalDouble clearanceM,
    Optional<Traffic> traffic,
    Optional<Service> service) {
  /** A thing of which neither traffic nor service is known. */
  public Fixture(
      String id, FixtureKind kind, Shape shape, double heightM, OptionalDouble clearanceM) {
    this(id, kind, shape, heightM, clearanceM, Optional.empty(), Optional.empty());
  }

  /** What goes over a surface. */
  public enum Traffic {
    FEET,
    VEHICLES
  }

  /**
   * A pipe or cable in the ground.
   *
   * @param kind what it carries
   * @param depthM depth of its top below the ground, metres; empty where it is not known
   */
  public record Service(Carries kind, OptionalDouble depthM) {}

  /** What a buried service carries. */
  public enum Carries {
    ELECTRIC,
    GAS,
    WATER,
    SEWER,
    TELECOM,
    UNKNOWN
  }
}
