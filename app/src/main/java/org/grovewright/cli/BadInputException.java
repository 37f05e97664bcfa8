package org.grovewright.cli;

/** What the user gave cannot be used; the message says in plain sentences what to change. */
public final class BadInputException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Input that cannot be used. */
  public BadInputException(String message) {
    super(message);
  }
}
