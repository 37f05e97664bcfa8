package org.grovewright.formats.inp;

import java.util.Objects;

/**
 * Something to know about a network text that was read or written.
 *
 * @param severity how much it matters
 * @param line line of the text, from 1; 0 where it concerns no single line
 * @param message a plain sentence
 */
public record InpNote(Severity severity, int line, String message) {
  /** How much a note matters. */
  public enum Severity {
    /** Left out or changed without effect on a steady solve. */
    NOTE,
    /** Left out or not understood; the network is not the one that was meant. */
    ERROR
  }

  /** Checks that no part is missing. */
  public InpNote {
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(message, "message");
  }
}
