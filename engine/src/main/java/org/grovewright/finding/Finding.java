package org.grovewright.finding;

import java.util.List;
import org.grovewright.quantity.Quantity;

/**
 * A remark on the plan.
 *
 * @param code stable name of the kind of remark, lower case words parted by dots, e.g. {@code
 *     layout.too-close}
 * @param severity how much it matters
 * @param subject id of the plant, row, zone or thing it is about, or empty text for the whole grove
 * @param message one or two plain sentences, in which {@code {0}}, {@code {1}} ... stand for the
 *     quantities
 * @param quantities the numbers of the message
 */
public record Finding(
    String code, Severity severity, String subject, String message, List<Quantity> quantities) {
  /** Copies the quantities. */
  public Finding {
    quantities = List.copyOf(quantities);
  }

  /** A remark with its quantities listed. */
  public static Finding of(
      String code, Severity severity, String subject, String message, Quantity... quantities) {
    return new Finding(code, severity, subject, message, List.of(quantities));
  }

  /** How much a remark matters. */
  public enum Severity {
    /** Worth knowing: an assumption made, an advice. */
    NOTE,
    /** The plan is made, but it falls short of what it should do. */
    SHORTFALL
  }
}
