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
 * @param row its row, walked from the end at which the water comes in
 * @param run how it runs
 * @param plants indices of the plants it serves, in order along the row
 * @param tubing tubing asked for
 * @param emitter emitter asked for at main plants
 * @param count emitters asked for at each main plant
 * @param companionEmitter emitter asked for at companions
 * @param offsetM distance of the tubing from the centre line, metres
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
    double offsetM) {
  LateralWish {
    plants = List.copyOf(plants);
  }

  /** The same lateral with another run. */
  LateralWish running(Run other) {
    return new LateralWish(
        id, row, other, plants, tubing, emitter, count, companionEmitter, offsetM);
  }

  /** The same lateral for some of its plants only. */
  LateralWish serving(String newId, List<Integer> some) {
    return new LateralWish(
        newId, row, run, some, tubing, emitter, count, companionEmitter, offsetM);
  }
}
