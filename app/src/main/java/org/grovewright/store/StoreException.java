package org.grovewright.store;

import java.util.Optional;
import org.grovewright.texts.Sentence;
import org.grovewright.texts.ToldException;

/** The store cannot do what was asked. */
public final class StoreException extends ToldException {
  private static final long serialVersionUID = 1L;

  /** What kind of trouble it is. */
  public enum Reason {
    /** The disk has no room left. */
    FULL,
    /** The folder or the file may not be written to. */
    READ_ONLY,
    /** The folder or the database cannot be reached or made. */
    UNREACHABLE,
    /** The database was written by a newer version of the program. */
    NEWER,
    /** The file is damaged. */
    DAMAGED,
    /** Another program holds the database for too long. */
    BUSY,
    /** There is no such thing, or not any more. */
    MISSING,
    /** What was asked contradicts what is there. */
    REFUSED
  }

  private final Reason reason;
  private final String field;

  /** Trouble of a kind: the shape of a plain sentence, and what is filled into it. */
  public StoreException(Reason reason, String shape, Object... arguments) {
    this(reason, Sentence.of(shape, arguments), null);
  }

  /** Trouble of a kind with one thing that was given, such as {@code password}. */
  static StoreException with(String field, Reason reason, String shape, Object... arguments) {
    return new StoreException(reason, field, Sentence.of(shape, arguments), null);
  }

  /** Trouble of a kind, in a plain sentence, with the failure below it, if there is one. */
  public StoreException(Reason reason, Sentence sentence, Throwable cause) {
    this(reason, null, sentence, cause);
  }

  private StoreException(Reason reason, String field, Sentence sentence, Throwable cause) {
    super(sentence, cause);
    this.reason = reason;
    this.field = field;
  }

  /** The kind of trouble. */
  public Reason reason() {
    return reason;
  }

  /** The one thing given that it is about, if there is one. */
  public Optional<String> field() {
    return Optional.ofNullable(field);
  }
}
