package org.grovewright.exchange;

import org.grovewright.texts.Sentence;
import org.grovewright.texts.ToldException;

/** A file cannot be read or written. */
public final class ExchangeException extends ToldException {
  private static final long serialVersionUID = 1L;

  /**
   * A file that cannot be used for this reason: the shape of a plain sentence, and what is filled
   * into it.
   */
  public ExchangeException(String shape, Object... arguments) {
    super(Sentence.of(shape, arguments));
  }

  /** A file that cannot be used for this reason, a plain sentence. */
  public ExchangeException(Sentence sentence) {
    super(sentence);
  }
}
