package org.grovewright.irrigation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Pipe;
import org.grovewright.model.Row;
import org.grovewright.model.Watering.Run;

/**
 * A lateral before its sizes are chosen.
 *
 * @param id name of the lateral
 * @param row its row, walked from the end at which the water comes in; of a lateral whose way the
 *     owner drew, that way
 * @param run how it runs
 * @param plants indices of the plants it serves, in order along the row
 * @param tubing tubing asked for
 * @param emitter emitter asked for at main plants
 * @param count emitters asked for at each main plant
 * @param companionEmitter emitter asked for at companions
 * @param offsetM distance of the tubing from the centre line, metres
 * @param kept how far it is the owner's
 */
record LateralWish(
    String id,
    Row row,
    Run run,
    List<Integer> plants,
    Optional<Pipe> tubing,
    Optional<EmitterType> emitter,
    OptionalInt count,
    Optional<EmitterType> companionEmitter,
    double offsetM,
    Kept kept) {
  LateralWish {
    plants = List.copyOf(plants);
  }

  /** How far a lateral is the owner's, who drew its way or laid it. */
  enum Kept {
    /** It is proposed, or only its run and parts are given. */
    NOTHING(false, false, false),
    /** It is one line that serves its whole row. */
    WHOLE(true, false, false),
    /** Its way is drawn too. */
    WAY(true, true, false),
    /** It lies along the row already. */
    LAID(true, false, true),
    /** It lies already, on a way that is drawn. */
    LAID_WAY(true, true, true);

    private final boolean whole;
    private final boolean drawn;
    private final boolean laid;

    Kept(boolean whole, boolean drawn, boolean laid) {
      this.whole = whole;
      this.drawn = drawn;
      this.laid = laid;
    }

    static Kept of(boolean drawn, boolean laid) {
      return laid ? (drawn ? LAID_WAY : LAID) : drawn ? WAY : WHOLE;
    }
  }

  /** Whether it must not be shared among zones. */
  boolean whole() {
    return kept.whole;
  }

  /** Whether the points of its row are the way of the tubing itself. */
  boolean drawn() {
    return kept.drawn;
  }

  /** Whether its tubing lies there already. */
  boolean laid() {
    return kept.laid;
  }

  /** The same lateral with another run. */
  LateralWish running(Run other) {
    return new LateralWish(
        id, row, other, plants, tubing, emitter, count, companionEmitter, offsetM, kept);
  }

  /** The same lateral for some of its plants only. */
  LateralWish serving(String newId, List<Integer> some) {
    return new LateralWish(
        newId, row, run, some, tubing, emitter, count, companionEmitter, offsetM, kept);
  }
}
