package org.grovewright.store;

import java.nio.file.Path;
import java.sql.SQLException;
import org.grovewright.store.StoreException.Reason;
import org.grovewright.texts.Sentence;
import org.sqlite.SQLiteException;

/** Turns failures of a database into plain sentences. */
final class Faults {
  // Primary result codes of SQLite; the low byte of an extended code is its primary one.
  private static final int READONLY = 8;
  private static final int BUSY = 5;
  private static final int LOCKED = 6;
  private static final int IOERR = 10;
  private static final int CORRUPT = 11;
  private static final int FULL = 13;
  private static final int CANTOPEN = 14;
  private static final int NOTADB = 26;

  private final Path file;

  /** Failures of an SQLite file, or of PostgreSQL if there is no file. */
  Faults(Path file) {
    this.file = file;
  }

  StoreException explain(RuntimeException failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof StoreException known) {
        return known;
      }
      if (cause instanceof SQLiteException sqlite) {
        return sqlite(sqlite, failure);
      }
      if (file == null && cause instanceof SQLException sql) {
        return postgres(sql, failure);
      }
    }
    throw failure;
  }

  private StoreException sqlite(SQLiteException cause, RuntimeException failure) {
    return switch (cause.getResultCode().code & 0xff) {
      case FULL -> full(failure);
      case READONLY -> readOnly(file.getParent(), failure);
      case CORRUPT, NOTADB -> damaged(file, failure);
      case BUSY, LOCKED ->
          new StoreException(
              Reason.BUSY,
              Sentence.of(
                  "Another program is using {0}. Nothing was changed; try again in a moment.",
                  file),
              failure);
      case CANTOPEN ->
          new StoreException(
              Reason.UNREACHABLE,
              Sentence.of(
                  "The file {0} cannot be opened. Check that its folder is there and is yours.",
                  file),
              failure);
      case IOERR ->
          new StoreException(
              Reason.UNREACHABLE,
              Sentence.of(
                  "The disk refused to read or write {0}. Nothing was changed. Check that the disk"
                      + " is well, has room and may be written to; it may have to be put in anew.",
                  file),
              failure);
      default -> throw failure;
    };
  }

  private static StoreException postgres(SQLException cause, RuntimeException failure) {
    String state = cause.getSQLState() == null ? "" : cause.getSQLState();
    if (state.equals("53100")) {
      return full(failure);
    }
    // A zero among the signs of a text.
    if (state.equals("22021")) {
      return new StoreException(
          Reason.REFUSED,
          Sentence.of(
              "The text holds a sign that cannot be kept; it may have come with copying from another"
                  + " program. Type the text anew."),
          failure);
    }
    if (state.equals("25006")) {
      return new StoreException(
          Reason.READ_ONLY,
          Sentence.of("The PostgreSQL database only lets us read. Nothing was changed."),
          failure);
    }
    if (state.startsWith("08") || state.startsWith("28") || state.startsWith("3D")) {
      return new StoreException(
          Reason.UNREACHABLE,
          Sentence.of(
              "The PostgreSQL database cannot be reached: check its address, user and password,"
                  + " and that it runs."),
          failure);
    }
    if (state.startsWith("40") || state.startsWith("55P") || state.startsWith("57")) {
      return new StoreException(
          Reason.BUSY,
          Sentence.of("The database is busy. Nothing was changed; try again in a moment."),
          failure);
    }
    throw failure;
  }

  private static StoreException full(RuntimeException failure) {
    return new StoreException(
        Reason.FULL,
        Sentence.of(
            "The disk is full, so this was not saved. What was saved before is safe. Make room and"
                + " save again."),
        failure);
  }

  static StoreException fullAtStart(Path folder, RuntimeException failure) {
    return new StoreException(
        Reason.FULL,
        Sentence.of(
            "The disk with the folder {0} is full, so nothing can be saved there. What was saved"
                + " before is safe and can be read. Make room, then start Grovewright anew.",
            folder),
        failure);
  }

  static StoreException readOnly(Path folder, RuntimeException failure) {
    return new StoreException(
        Reason.READ_ONLY,
        Sentence.of(
            "The folder {0} may only be read, so nothing can be saved there. Allow writing in it,"
                + " or choose another folder with --data.",
            folder),
        failure);
  }

  static StoreException newestUnread(Path folder, RuntimeException failure) {
    return new StoreException(
        Reason.READ_ONLY,
        Sentence.of(
            "The folder {0} may only be read, and its newest saves can be read only where they can"
                + " first be taken into the file. Allow writing in the folder, or copy the whole"
                + " folder and name the copy with --data.",
            folder),
        failure);
  }

  static StoreException damaged(Path file, RuntimeException failure) {
    return new StoreException(
        Reason.DAMAGED,
        Sentence.of(
            "The file {0} is damaged, so nothing more is written to it. You can go back to one of"
                + " the daily copies; the damaged file is then kept beside it.",
            file),
        failure);
  }
}
