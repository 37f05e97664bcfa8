package org.grovewright.formats.weather;

/** A forecast could not be had; the message says why in a sentence for the owner. */
public final class ForecastException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** No forecast for this reason. */
  public ForecastException(String message) {
    super(message);
  }
}
