package org.grovewright.ground;

import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Counts barrow trips. */
final class Barrows {
  private Barrows() {}

  static Figure enter(
      String id, String goods, Figure volume, Figure mass, Catalogue catalogue, FigureBook book) {
    Constant room = catalogue.constant("ground.barrow-volume");
    Constant strength = catalogue.constant("ground.barrow-mass");
    long trips =
        new Carrier(room.value(), strength.value())
            .trips(new BulkLoad(volume.value(), mass.value()));
    return book.enter(
        id,
        "Barrow loads of " + goods,
        trips,
        Kind.COUNT,
        Working.of(
            "the greater of V / Vb and m / mb, rounded up",
            "arithmetic",
            Input.from("V", volume),
            room.as("Vb"),
            Input.from("m", mass),
            strength.as("mb")));
  }
}
