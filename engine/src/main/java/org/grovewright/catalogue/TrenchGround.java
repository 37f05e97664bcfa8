package org.grovewright.catalogue;

import java.util.Optional;

/**
 * Ground through which the trench of a main may go, and what that asks for.
 *
 * @param kind the ground
 * @param name name in plain words
 * @param digTask key of the task of digging there, counted by volume
 * @param liftTask key of the task of taking up what lies on it, counted by area
 * @param mendTask key of the task of putting that back, counted by area
 * @param mainCover least soil over a main
 * @param lateralCover least soil over a lateral; 0 lets it lie on the ground
 * @param reluctance times that the cost of a trench there counts when ways are compared, for the
 *     harm it may do
 * @param source where the values come from
 */
public record TrenchGround(
    Kind kind,
    String name,
    String digTask,
    Optional<String> liftTask,
    Optional<String> mendTask,
    Cover mainCover,
    Cover lateralCover,
    double reluctance,
    String source) {
  /** Kinds of ground; where several lie over each other the later one counts. */
  public enum Kind {
    SOIL,
    LAWN,
    GRAVEL,
    SERVICE,
    ROOTS,
    PAVING
  }

  /**
   * Least depth of soil over a pipe.
   *
   * @param feetM where only people walk, metres
   * @param vehiclesM where vehicles drive, metres
   */
  public record Cover(double feetM, double vehiclesM) {
    /** The depth for a kind of traffic, metres. */
    public double of(boolean vehicles) {
      return vehicles ? vehiclesM : feetM;
    }
  }
}
