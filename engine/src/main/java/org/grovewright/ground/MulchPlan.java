package org.grovewright.ground;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The first mulching.
 *
 * @param mulchKey catalogue key of the mulch
 * @param areaM2 ground covered, m2; overlapping rings count once
 * @param areaByRow the same by row id, with empty text for plants in no row, m2
 * @param settledM3 volume after settling, m3
 * @param delivered what has to be delivered
 */
public record MulchPlan(
    String mulchKey,
    double areaM2,
    Map<String, Double> areaByRow,
    double settledM3,
    BulkLoad delivered) {
  /** Copies the map in its order. */
  public MulchPlan {
    areaByRow = Collections.unmodifiableMap(new LinkedHashMap<>(areaByRow));
  }
}
