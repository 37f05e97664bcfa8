package org.grovewright.texts;

/** A failure whose cause is told to the owner in a plain sentence; its message is the English. */
public abstract class ToldException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient Sentence sentence;

  /** A failure with its sentence. */
  protected ToldException(Sentence sentence) {
    this(sentence, null);
  }

  /** A failure with its sentence and the failure below it, if there is one. */
  protected ToldException(Sentence sentence, Throwable cause) {
    super(sentence.english(), cause);
    this.sentence = sentence;
  }

  /** What to tell the owner. */
  public final Sentence sentence() {
    return sentence;
  }
}
