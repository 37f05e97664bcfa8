package org.grovewright.store;

import java.nio.file.Path;

/** Where the database is. */
public sealed interface StoreAddress {
  /**
   * One SQLite file in a folder, which is made when it is not there.
   *
   * @param path the folder
   */
  record Folder(Path path) implements StoreAddress {
    /** The database file. */
    public Path file() {
      return path.resolve("grovewright.db");
    }

    /** Where the daily copies are. */
    public Path backups() {
      return path.resolve("backups");
    }
  }

  /**
   * A PostgreSQL database.
   *
   * @param url its JDBC address, which starts with {@code jdbc:postgresql:}
   */
  record Postgres(String url) implements StoreAddress {
    /** Without the address: it may hold a password. */
    @Override
    public String toString() {
      return "PostgreSQL";
    }
  }

  /**
   * The address an owner wrote.
   *
   * @param text a folder, or a JDBC address of PostgreSQL
   * @throws StoreException if it is the JDBC address of something else
   */
  static StoreAddress parse(String text) {
    if (text.startsWith("jdbc:postgresql:")) {
      return new Postgres(text);
    }
    if (text.startsWith("jdbc:")) {
      throw new StoreException(
          StoreException.Reason.REFUSED,
          "The data address must be a folder, or start with jdbc:postgresql: for PostgreSQL.");
    }
    return new Folder(Path.of(text));
  }
}
