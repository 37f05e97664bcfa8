package org.grovewright.formats.units;

/** A text is not the quantity that is wanted; the message is a sentence for its writer. */
public final class NotAQuantityException extends Exception {
  private static final long serialVersionUID = 1L;

  /** A text is not the quantity that is wanted. */
  public NotAQuantityException(String message) {
    super(message);
  }
}
