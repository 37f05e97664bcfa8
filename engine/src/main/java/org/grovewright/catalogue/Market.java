package org.grovewright.catalogue;

import org.grovewright.model.Preferences.Units;

/** Where a size is sold; sizes made to inches are hard to find where metric ones are the rule. */
public enum Market {
  /** Sold where metric units are the rule. */
  METRIC,
  /** Sold in the United States. */
  US,
  /** Sold everywhere. */
  ANY;

  /** Whether a size of this market is to be had by an owner who uses these units. */
  public boolean serves(Units units) {
    return this == ANY
        || this == METRIC && units == Units.METRIC
        || this == US && units == Units.US;
  }
}
