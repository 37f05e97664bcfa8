package org.grovewright.irrigation;

import org.grovewright.catalogue.Catalogue;

/**
 * The numbers of the trade that a design keeps to, read once from the catalogue.
 *
 * @param peakRunS run time per day at the peak that emitters are counted for, seconds
 * @param maxEmitters most emitters at one plant
 * @param minEmitters fewest emitters at a main plant
 * @param emitterSpacingM distance between emitters of one plant, metres
 * @param offsetM distance of tubing from the row's centre line where none is given, metres
 * @param tailM tubing beyond the last emitter, metres
 * @param reachM plants farther than this from the tubing get a feeder tube, metres
 * @param maxFeederM longest feeder tube, metres
 * @param maxVelocityMPerS highest water speed
 * @param evenness design emission uniformity to be reached, by what sort of watering a zone is
 * @param supplyShare share of the supply's flow that a zone may draw
 * @param lossAllowanceM head set aside for losses before they are known, metres
 * @param screenLoadingMPerS flow through a filter by the area of its screen, m3/s per m2
 * @param catchCans emitters of a zone whose flow is measured with cans
 * @param mostZones most zones that are proposed
 * @param pinSpacingM distance between pins that hold tubing down, metres
 * @param wettedShare share of the ground under a tree's crown that tubing along one side must wet
 *     to be enough
 * @param efficiency share of the water from emitters that roots can use
 * @param rigidPieceM length in which rigid pipe is sold, metres
 * @param tooMuch share of its need above which a plant counts as overwatered
 * @param leastExcessM3PerS excess of water that is worth a remark, m3/s
 * @param sortsPerZone most sorts of emitter behind one valve
 * @param sortsInAll most sorts of emitter in a system
 * @param emitterWorthM3 water whose saving in the years planned is worth one emitter more, m3
 */
record Rulebook(
    double peakRunS,
    int maxEmitters,
    int minEmitters,
    double emitterSpacingM,
    double offsetM,
    double tailM,
    double reachM,
    double maxFeederM,
    double maxVelocityMPerS,
    EmissionClasses evenness,
    double supplyShare,
    double lossAllowanceM,
    double screenLoadingMPerS,
    int catchCans,
    int mostZones,
    double pinSpacingM,
    double wettedShare,
    double efficiency,
    double rigidPieceM,
    double tooMuch,
    double leastExcessM3PerS,
    int sortsPerZone,
    int sortsInAll,
    double emitterWorthM3) {

  static Rulebook of(Catalogue catalogue) {
    return new Rulebook(
        value(catalogue, "peak-run-time"),
        (int) value(catalogue, "max-emitters-per-plant"),
        (int) value(catalogue, "min-emitters-per-main-plant"),
        value(catalogue, "emitter-spacing"),
        value(catalogue, "line-offset"),
        value(catalogue, "line-tail"),
        value(catalogue, "feeder-from"),
        value(catalogue, "feeder-longest"),
        value(catalogue, "velocity-limit"),
        new EmissionClasses(catalogue),
        value(catalogue, "supply-share"),
        value(catalogue, "loss-allowance"),
        value(catalogue, "screen-loading"),
        (int) value(catalogue, "catch-cans"),
        (int) value(catalogue, "most-zones"),
        value(catalogue, "pin-spacing"),
        value(catalogue, "one-side-wetted-share"),
        value(catalogue, "application-efficiency"),
        value(catalogue, "rigid-piece"),
        value(catalogue, "too-much"),
        value(catalogue, "least-excess"),
        (int) value(catalogue, "sorts-per-zone"),
        (int) value(catalogue, "sorts-in-all"),
        value(catalogue, "emitter-worth"));
  }

  private static double value(Catalogue catalogue, String key) {
    return catalogue.constant("irrigation." + key).value();
  }

  LateralLayout.Rules layoutRules(double offset) {
    return new LateralLayout.Rules(offset, emitterSpacingM, tailM, reachM + offset);
  }
}
