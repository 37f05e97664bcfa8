package org.grovewright.formats.units;

import org.grovewright.texts.Sentence;

/** A text is not the quantity that is wanted; the message is a sentence for its writer. */
public final class NotAQuantityException extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient Sentence sentence;

  /**
   * A text is not the quantity that is wanted.
   *
   * @param shape why, a sentence without a full stop
   * @param arguments what is filled into it
   */
  public NotAQuantityException(String shape, Object... arguments) {
    this(Sentence.of(shape, arguments));
  }

  private NotAQuantityException(Sentence sentence) {
    super(sentence.english());
    this.sentence = sentence;
  }

  /** Why, a sentence without a full stop. */
  public Sentence sentence() {
    return sentence;
  }
}
