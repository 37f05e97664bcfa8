package org.grovewright.cli;

import org.grovewright.texts.Sentence;
import org.grovewright.texts.ToldException;

/** What the user gave cannot be used; the message says in plain sentences what to change. */
public final class BadInputException extends ToldException {
  private static final long serialVersionUID = 1L;

  /** Input that cannot be used, in English. */
  public BadInputException(String message) {
    super(Sentence.asIs(message));
  }

  /** Input that cannot be used, for a reason that may be told in a browser too. */
  BadInputException(Sentence sentence) {
    super(sentence);
  }
}
