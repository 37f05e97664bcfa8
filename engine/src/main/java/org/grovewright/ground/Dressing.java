package org.grovewright.ground;

import org.grovewright.catalogue.Amendment;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Amendment blended into backfill at its label rate. */
final class Dressing {
  private Dressing() {}

  /** How the mass of an amendment in a volume of backfill is found. */
  static Working working(Amendment amendment, Figure backfill) {
    return Working.of(
        "rate backfill",
        amendment.source(),
        new Input(
            "rate",
            amendment.ratePlantingKgPerM3(),
            Kind.DENSITY,
            "catalogue: amendments, " + amendment.key()),
        Input.from("backfill", backfill));
  }
}
