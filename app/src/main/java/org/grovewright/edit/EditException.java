package org.grovewright.edit;

/** A change cannot be made; the message is a plain sentence for the owner. */
public final class EditException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** A change that cannot be made for this reason. */
  public EditException(String message) {
    super(message);
  }
}
