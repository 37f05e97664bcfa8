package org.grovewright.trouble;

/** A place in the tubing that is not there, with lengths that each reader gets in his own units. */
public final class NoSuchPlaceException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final transient Told told;

  NoSuchPlaceException(Told told) {
    super(told.message());
    this.told = told;
  }

  /** What is wrong. */
  public Told told() {
    return told;
  }
}
