package org.grovewright.trouble;

import java.util.List;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/**
 * A sentence with its quantities apart, so that each reader gets them in units of his own.
 *
 * @param message the sentence, in which {@code {0}}, {@code {1}} ... stand for the quantities
 * @param quantities the quantities
 */
public record Told(String message, List<Quantity> quantities) {
  /** Copies the list. */
  public Told {
    quantities = List.copyOf(quantities);
  }

  /** A sentence without a quantity. */
  static Told of(String message) {
    return new Told(message, List.of());
  }

  /** A sentence with one quantity. */
  static Told of(String message, double value, Kind kind) {
    return new Told(message, List.of(new Quantity(value, kind)));
  }

  /** A sentence with two quantities. */
  static Told of(String message, double first, Kind firstKind, double second, Kind secondKind) {
    return new Told(
        message, List.of(new Quantity(first, firstKind), new Quantity(second, secondKind)));
  }
}
