package org.grovewright.quantity;

import java.util.List;
import java.util.Objects;

/**
 * How a figure was found: the formula, what went into it and where the method comes from.
 *
 * @param formula the formula in plain symbols, e.g. {@code V = pi/4 * d^2 * h}, or a sentence where
 *     the method is a search or a solve
 * @param inputs the numbers that went in, in the order of the formula's symbols
 * @param source the published source of the method, or what kind of knowledge it is
 */
public record Working(String formula, List<Input> inputs, String source) {
  /** Copies the inputs so that the working cannot change later. */
  public Working {
    Objects.requireNonNull(formula, "formula");
    Objects.requireNonNull(source, "source");
    inputs = List.copyOf(inputs);
  }

  /** Working of the form formula, source, inputs. */
  public static Working of(String formula, String source, Input... inputs) {
    return new Working(formula, List.of(inputs), source);
  }

  /** Working of a number that the owner wrote in the description. */
  public static Working given(String where) {
    return new Working("as written in the description", List.of(), where);
  }

  /** Source text for a fact of the trade that no publication is cited for. */
  public static final String COMMON_PRACTICE = "common practice, no source";
}
