package org.grovewright.water;

import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.Mulch;

/** The catalogue's numbers that needs are found with. */
record NeedSettings(
    Constant canopyMultiplier,
    Constant standCover,
    Constant basalDifference,
    Constant wettedShare,
    Constant capillaryReach,
    double evaporationDepthM,
    double establishmentYears,
    double establishmentIntervalS,
    double longestIntervalS,
    double mulchReduction,
    String mulchOrigin) {
  private static final double SECONDS_PER_YEAR = 365.25 * 86_400;

  static NeedSettings of(Catalogue catalogue, Mulch mulch, boolean mulchChosen) {
    return new NeedSettings(
        catalogue.constant("water.canopy-multiplier"),
        catalogue.constant("water.stand-cover"),
        catalogue.constant("water.basal-difference"),
        catalogue.constant("water.wetted-share"),
        catalogue.constant("water.capillary-reach"),
        catalogue.constant("water.evaporation-depth").value(),
        catalogue.constant("water.establishment-time").value() / SECONDS_PER_YEAR,
        catalogue.constant("water.establishment-interval").value(),
        catalogue.constant("water.longest-interval").value(),
        mulch.evaporationReduction(),
        (mulchChosen ? "catalogue: mulches, " : "assumed: mulched with catalogue: mulches, ")
            + mulch.key());
  }
}
