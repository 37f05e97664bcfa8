package org.grovewright.quantity;

import java.util.Objects;

/**
 * One number of the plan with all that is needed to check it.
 *
 * @param id stable name, lower case words parted by dots, the same in every run and version
 * @param label what the number is, in a gardener's words
 * @param value the number in the SI unit of its kind; never NaN or infinite
 * @param kind what sort of number it is
 * @param working how it was found
 */
public record Figure(String id, String label, double value, Kind kind, Working working) {
  /**
   * Checks the parts.
   *
   * @throws IllegalArgumentException if the id is not of the stable form or the value is not finite
   */
  public Figure {
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(working, "working");
    if (!isStableId(id)) {
      throw new IllegalArgumentException("not a stable figure id: " + id);
    }
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("figure " + id + " is not a finite number: " + value);
    }
  }

  private static boolean isStableId(String id) {
    if (id.isEmpty()) {
      return false;
    }
    for (int i = 0; i < id.length(); i++) {
      char c = id.charAt(i);
      boolean letter = c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '.' || c == '-';
      if (!letter) {
        return false;
      }
    }
    return true;
  }
}
