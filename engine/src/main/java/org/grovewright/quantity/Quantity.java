package org.grovewright.quantity;

import java.util.Objects;

/**
 * A number with its kind.
 *
 * @param value the number in the SI unit of its kind
 * @param kind what sort of number it is
 */
public record Quantity(double value, Kind kind) {
  /** Checks that the kind is there. */
  public Quantity {
    Objects.requireNonNull(kind, "kind");
  }
}
