package org.grovewright.irrigation;

import java.util.Set;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.model.Grove;

/** Types of emitters that can stand in for each other on a zone as it is. */
final class LikeSorts {
  private LikeSorts() {}

  /** Whether two types work alike and differ in their ratings only. */
  static boolean same(EmitterType a, EmitterType b) {
    return a.compensating() == b.compensating()
        && a.shutOffPressurePa().isPresent() == b.shutOffPressurePa().isPresent();
  }

  /** Whether a type is of a sort that the zone has, sold here, and works at its pressures. */
  static boolean fit(EmitterType e, Set<EmitterType> has, ZoneResult zone, Grove grove) {
    boolean like = false;
    boolean bears = true;
    for (EmitterType type : has) {
      like |= same(e, type);
      bears &= e.maxPressurePa() >= type.maxPressurePa();
    }
    return like
        && bears
        && e.market().serves(grove.preferences().units())
        && e.minPressurePa() <= zone.minPressurePa()
        && e.maxPressurePa() >= zone.maxPressurePa()
        && e.filterOpeningM() >= zone.design().filter().openingM() - 1e-9;
  }

  /** What an emitter of a type gives at the mean pressure of a zone, m3/s. */
  static double flowM3PerS(EmitterType e, ZoneResult zone) {
    double meanM =
        zone.outlets().stream().mapToDouble(ZoneResult.OutletResult::pressurePa).average().orElse(0)
            / SupplyModel.PASCALS_PER_METRE;
    return ZoneNetwork.curveOf(e).flow(meanM);
  }
}
