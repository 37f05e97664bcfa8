package org.grovewright.formats.inp;

import java.util.List;
import java.util.regex.Pattern;
import org.grovewright.formats.inp.InpSections.Line;

/**
 * Reads the numbers of lines. What is wrong with one is noted once, as it stands in the text and in
 * the text's units, and another number is given in its stead with which nothing else is wrong.
 */
final class InpNumbers {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");

  private final List<InpNote> notes;

  InpNumbers(List<InpNote> notes) {
    this.notes = notes;
  }

  /** Notes that something is wrong with a line. */
  void error(int line, String message) {
    notes.add(new InpNote(InpNote.Severity.ERROR, line, message));
  }

  /** What is wrong with a field as a number, or null. */
  static String fault(String field) {
    if (!NUMBER.matcher(field).matches()) {
      return "\"" + field + "\" is not a number";
    }
    return Double.isInfinite(Double.parseDouble(field)) ? field + " is too large a number" : null;
  }

  /** Any number; what is given otherwise where the line ends before it or it is wrong. */
  double any(Line line, int at, double otherwise) {
    double value = read(line, at, otherwise);
    return Double.isNaN(value) ? otherwise : value;
  }

  /**
   * A number above zero.
   *
   * @param what what it is and of which part
   * @param unit its unit in the text; empty for none
   */
  double above(Line line, int at, String what, String unit, double otherwise) {
    double value = read(line, at, otherwise);
    if (value <= 0) {
      error(line.number(), what + " must be above " + in("0", unit) + isNow(line, at, unit));
    }
    return value > 0 ? value : otherwise;
  }

  /** A number that is not below zero; see {@link #above}. */
  double notBelow(Line line, int at, String what, String unit, double otherwise) {
    double value = read(line, at, otherwise);
    if (value < 0) {
      error(line.number(), what + " must be " + in("0", unit) + " or more" + isNow(line, at, unit));
    }
    return value >= 0 ? value : otherwise;
  }

  private static String isNow(Line line, int at, String unit) {
    return ", but is " + in(line.field(at), unit);
  }

  /** A number as it was written, with its unit. */
  static String in(String number, String unit) {
    return unit.isEmpty() ? number : number + " " + unit;
  }

  /** The number in a field, not a number where it is wrong and that was noted. */
  private double read(Line line, int at, double otherwise) {
    if (at >= line.size()) {
      return otherwise;
    }
    String fault = fault(line.field(at));
    if (fault != null) {
      error(line.number(), fault);
      return Double.NaN;
    }
    return Double.parseDouble(line.field(at));
  }
}
