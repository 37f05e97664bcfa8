package org.grovewright.store;

/** The store cannot do what was asked; the message is a plain sentence for the owner. */
public final class StoreException extends RuntimeException {
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

  /** Trouble of a kind, in a plain sentence. */
  public StoreException(Reason reason, String message) {
    super(message);
    this.reason = reason;
  }

  /** Trouble of a kind, in a plain sentence, with the failure below it. */
  public StoreException(Reason reason, String message, Throwable cause) {
    super(message, cause);
    this.reason = reason;
  }

  /** The kind of trouble. */
  public Reason reason() {
    return reason;
  }
}
