package org.grovewright.quantity;

import java.util.Objects;

/**
 * One number that goes into a working.
 *
 * @param symbol its symbol in the formula, with a word where the symbol alone would not be clear
 * @param value its value in the SI unit of its kind
 * @param kind what sort of number it is
 * @param origin the id of the figure it came from, or where it was given ("description",
 *     "catalogue: pipes") or assumed ("assumed: ...")
 */
public record Input(String symbol, double value, Kind kind, String origin) {
  /** Checks that no part is missing. */
  public Input {
    Objects.requireNonNull(symbol, "symbol");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(origin, "origin");
  }

  /** The input that hands on a figure already in the plan. */
  public static Input from(String symbol, Figure figure) {
    return new Input(symbol, figure.value(), figure.kind(), figure.id());
  }
}
