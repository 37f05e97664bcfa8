package org.grovewright.start;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** The description in the making: its lines, what was assumed, and the units it is written in. */
final class Sheet {
  private static final double METRES_PER_FOOT = 0.3048;

  private final Answers answers;
  private final List<String> lines = new ArrayList<>();
  private final List<Remark> assumptions = new ArrayList<>();
  private final boolean us;

  Sheet(Answers answers) {
    this.answers = answers;
    this.us = answers.choice("units", Set.of("metric", "us")).orElse("metric").equals("us");
  }

  Answers answers() {
    return answers;
  }

  List<Remark> assumptions() {
    return assumptions;
  }

  String text() {
    return String.join("\n", lines) + "\n";
  }

  void add(String line) {
    lines.add(line);
  }

  void note(Remark assumption) {
    assumptions.add(assumption);
  }

  /** A value that was taken because it was not said, as it stands in its line. */
  String assume(String field, String code, String value) {
    note(new Remark(field, code, List.of(value)));
    return value + "   # assumed";
  }

  /** Whether the answers are in feet, gallons and psi. */
  boolean us() {
    return us;
  }

  /** The unit of lengths, after a space. */
  String length() {
    return us ? " ft" : " m";
  }

  /** Metres in the unit of the answers. */
  double own(double metres) {
    return us ? metres / METRES_PER_FOOT : metres;
  }

  /** Metres of a number in the unit of the answers. */
  double metres(String value) {
    return Double.parseDouble(value) * (us ? METRES_PER_FOOT : 1);
  }

  /** A place in the unit of the answers. */
  String place(String x, String y) {
    return "[" + x + length() + ", " + y + length() + "]";
  }
}
