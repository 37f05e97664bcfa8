package org.grovewright.formats.geo;

import org.grovewright.texts.Sentence;

/** A text is no outline of a grove; the message is a sentence for its writer. */
public final class BoundaryException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final transient Sentence sentence;

  /**
   * A text is no outline.
   *
   * @param shape why, a sentence without a full stop
   * @param arguments what is filled into it
   */
  BoundaryException(String shape, Object... arguments) {
    this(Sentence.of(shape, arguments));
  }

  private BoundaryException(Sentence sentence) {
    super(sentence.english());
    this.sentence = sentence;
  }

  /** Why, a sentence without a full stop. */
  public Sentence sentence() {
    return sentence;
  }
}
