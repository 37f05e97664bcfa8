package org.grovewright.web;

/** Another program listens on the port already. */
public final class PortTakenException extends CannotServeException {
  private static final long serialVersionUID = 1L;

  PortTakenException(int port) {
    super(
        "Another program, perhaps Grovewright itself, uses port "
            + port
            + " already. Give another one with --port.");
  }
}
