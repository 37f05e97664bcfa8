package org.grovewright.web;

/** The server cannot start; the message is a plain sentence for the owner. */
public class CannotServeException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** A server that cannot start for this reason. */
  public CannotServeException(String message) {
    super(message);
  }
}
