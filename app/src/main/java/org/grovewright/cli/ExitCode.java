package org.grovewright.cli;

/** What the exit code of the program means. */
public final class ExitCode {
  /** All is well. */
  public static final int OK = 0;

  /** The plan was made, but it falls short somewhere; the findings say where. */
  public static final int FALLS_SHORT = 1;

  /** What was given cannot be used; the message says what to change. */
  public static final int BAD_INPUT = 2;

  /** The program failed through a fault of its own. */
  public static final int OUR_BUG = 3;

  private ExitCode() {}
}
