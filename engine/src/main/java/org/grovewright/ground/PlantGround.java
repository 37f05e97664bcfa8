package org.grovewright.ground;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The hole of one plant and what goes into it. Volumes are in m3; "in place" is as it lies firmed
 * in the ground, "loose" as it lies in a heap or comes off the lorry.
 *
 * @param plantId the plant
 * @param ball its root ball
 * @param ballMassKg mass of the ball when moist, kg; 0 for bare roots
 * @param hole its hole, up to the level of the ground
 * @param raiseM height of the top of the ball above the ground, metres; 0 but on a mound
 * @param moundM3 volume of the mound above the ground with the part of the ball in it
 * @param backfillM3 volume to fill about the ball, in place
 * @param nativeM3 dug soil that goes back, in place
 * @param mixPlacedM3 bought mix that goes in, in place
 * @param mixBoughtM3 bought mix as delivered, loose
 * @param dugLooseM3 dug soil in the heap, loose
 * @param surplusLooseM3 dug soil left over, loose
 * @param amendmentsKg amendments blended in, kg by catalogue key
 */
public record PlantGround(
    String plantId,
    Frustum ball,
    double ballMassKg,
    Frustum hole,
    double raiseM,
    double moundM3,
    double backfillM3,
    double nativeM3,
    double mixPlacedM3,
    double mixBoughtM3,
    double dugLooseM3,
    double surplusLooseM3,
    Map<String, Double> amendmentsKg) {
  /** Copies the map in its order. */
  public PlantGround {
    amendmentsKg = Collections.unmodifiableMap(new LinkedHashMap<>(amendmentsKg));
  }
}
