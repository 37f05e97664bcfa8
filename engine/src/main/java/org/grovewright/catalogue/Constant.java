package org.grovewright.catalogue;

import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;

/**
 * A single number of the trade.
 *
 * @param key stable key
 * @param name what it is, in plain words
 * @param value its value in the SI unit of its kind
 * @param kind what sort of number it is
 * @param source where it comes from
 */
public record Constant(String key, String name, double value, Kind kind, String source) {
  /** The constant as an input of a working. */
  public Input as(String symbol) {
    return new Input(symbol, value, kind, "catalogue: constants, " + key);
  }
}
