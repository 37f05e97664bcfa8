package org.grovewright.edit;

import org.grovewright.texts.Sentence;
import org.grovewright.texts.ToldException;

/** A change cannot be made. */
public final class EditException extends ToldException {
  private static final long serialVersionUID = 1L;

  /**
   * A change that cannot be made for this reason: the shape of a plain sentence, and what is filled
   * into it.
   */
  public EditException(String shape, Object... arguments) {
    super(Sentence.of(shape, arguments));
  }
}
