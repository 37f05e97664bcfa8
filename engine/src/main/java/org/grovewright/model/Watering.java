package org.grovewright.model;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The watering system as the owner wants it.
 *
 * @param propose whether Grovewright is to choose whatever is not said here
 * @param mainPipeKey catalogue key of the main from the supply to the rows; empty lets us choose
 * @param mainRoute bends of the main between the supply and the rows, in order; may be empty
 * @param mainLaid whether one pipe lies there already from the supply over the bends to the last of
 *     them, so that neither it nor its trench is planned
 * @param filterKey catalogue key of the filter; empty lets us choose
 * @param regulatorKey catalogue key of the regulator; empty lets us choose
 * @param choose short name of the way to build it that the owner chose among those compared; empty
 *     lets us choose
 * @param wishes what the owner wants of a proposal
 * @param zones the zones; empty only where a proposal is wanted
 * @param laterals laterals that the owner drew or laid without saying which zone they belong to;
 *     the zones are then proposed, and these are kept in them
 */
public record Watering(
    boolean propose,
    Optional<String> mainPipeKey,
    List<Point> mainRoute,
    boolean mainLaid,
    Optional<String> filterKey,
    Optional<String> regulatorKey,
    Optional<String> choose,
    Wishes wishes,
    List<Zone> zones,
    List<Lateral> laterals) {
  /** Copies the lists. */
  public Watering {
    mainRoute = List.copyOf(mainRoute);
    zones = List.copyOf(zones);
    laterals = List.copyOf(laterals);
  }

  /** Watering by an owner who leaves us the choice of how it is proposed. */
  public Watering(
      boolean propose,
      Optional<String> mainPipeKey,
      List<Point> mainRoute,
      Optional<String> filterKey,
      Optional<String> regulatorKey,
      Optional<String> choose,
      List<Zone> zones) {
    this(
        propose,
        mainPipeKey,
        mainRoute,
        false,
        filterKey,
        regulatorKey,
        choose,
        Wishes.NONE,
        zones,
        List.of());
  }

  /**
   * What an owner wants of a proposal; what is empty is left to what is usual.
   *
   * @param emitterSorts most sorts of emitter behind one valve
   * @param emitterSortsInAll most sorts of emitter in all
   * @param hourOfWork money in the plan's currency that an hour of work counts when ways to build
   *     the watering are compared
   */
  public record Wishes(
      OptionalInt emitterSorts, OptionalInt emitterSortsInAll, OptionalDouble hourOfWork) {
    /** No wishes. */
    public static final Wishes NONE =
        new Wishes(OptionalInt.empty(), OptionalInt.empty(), OptionalDouble.empty());
  }

  /**
   * One valve and what it waters.
   *
   * @param id its name in the description
   * @param laterals its laterals, one a row
   */
  public record Zone(String id, List<Lateral> laterals) {
    /** Copies the laterals. */
    public Zone {
      laterals = List.copyOf(laterals);
    }
  }

  /**
   * A line of tubing along a row.
   *
   * @param rowId the row it serves
   * @param run how it runs
   * @param tubingKey catalogue key of the tubing; empty lets us choose
   * @param emitterKey catalogue key of the emitters at main plants; empty lets us choose
   * @param emittersPerPlant emitters at each main plant; empty lets us choose
   * @param companionEmitterKey catalogue key of the emitter at each companion; empty lets us choose
   * @param offsetM distance of the tubing from the row's centre line, metres
   * @param route the way the tubing takes, from where the water comes in; of a loop the whole way
   *     round, of a two-sided lateral the middle between its lines. Empty where it follows the row.
   * @param laid whether the tubing lies there already, so that none is bought for it
   */
  public record Lateral(
      String rowId,
      Run run,
      Optional<String> tubingKey,
      Optional<String> emitterKey,
      OptionalInt emittersPerPlant,
      Optional<String> companionEmitterKey,
      double offsetM,
      List<Point> route,
      boolean laid) {
    /** Copies the way. */
    public Lateral {
      route = List.copyOf(route);
    }

    /** A lateral that follows its row and is still to be laid. */
    public Lateral(
        String rowId,
        Run run,
        Optional<String> tubingKey,
        Optional<String> emitterKey,
        OptionalInt emittersPerPlant,
        Optional<String> companionEmitterKey,
        double offsetM) {
      this(
          rowId,
          run,
          tubingKey,
          emitterKey,
          emittersPerPlant,
          companionEmitterKey,
          offsetM,
          List.of(),
          false);
    }
  }

  /** How a lateral runs. */
  public enum Run {
    /** One line along one side, closed at the far end. */
    DEAD_END,
    /** Down one side of the row and back up the other, both ends joined to the feed. */
    LOOP,
    /** Two lines, one each side, each closed at the far end. */
    TWO_SIDED
  }
}
