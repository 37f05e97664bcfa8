package org.grovewright.exchange;

/** A file cannot be read or written; the message is a plain sentence for the owner. */
public final class ExchangeException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** A file that cannot be used for this reason. */
  public ExchangeException(String message) {
    super(message);
  }
}
