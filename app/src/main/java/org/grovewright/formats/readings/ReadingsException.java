package org.grovewright.formats.readings;

/** Readings that cannot be used; says which line and why. */
public final class ReadingsException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** A reason in a plain sentence. */
  public ReadingsException(String message) {
    super(message);
  }
}
