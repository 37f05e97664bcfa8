package org.grovewright.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.pool.HikariPool;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import javax.sql.DataSource;
import org.grovewright.texts.Sentence;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TransactionMode;
import org.sqlite.SQLiteDataSource;

/** An open database: hands out connections and says its failures in plain sentences. */
final class Database implements AutoCloseable {
  private static final int WAIT_MS = 10_000;

  private final Optional<StoreException> trouble;
  private final boolean sqlite;
  private final Faults faults;
  private final HikariDataSource pool;
  private final Jdbi jdbi;

  /** A database that cannot even be read. */
  private Database(StoreException trouble) {
    this.trouble = Optional.of(trouble);
    this.sqlite = true;
    this.faults = null;
    this.pool = null;
    this.jdbi = null;
  }

  private Database(
      DataSource source, int connections, Optional<StoreException> trouble, Faults faults) {
    this.trouble = trouble;
    this.sqlite = source instanceof SQLiteDataSource;
    this.faults = faults;
    HikariConfig config = new HikariConfig();
    config.setPoolName("grovewright-store");
    config.setDataSource(source);
    config.setMaximumPoolSize(connections);
    config.setMinimumIdle(1);
    config.setConnectionTimeout(WAIT_MS);
    config.setReadOnly(trouble.isPresent());
    try {
      this.pool = new HikariDataSource(config);
    } catch (HikariPool.PoolInitializationException e) {
      throw faults.explain(e);
    }
    this.jdbi = Jdbi.create(pool);
  }

  /**
   * An SQLite file.
   *
   * @param file the file, made when it is not there
   * @param further what tests set besides
   */
  static Database sqlite(Path file, Consumer<SQLiteConfig> further) {
    SQLiteConfig config = waiting();
    config.enforceForeignKeys(true);
    config.setJournalMode(JournalMode.WAL);
    // Full: a save that was confirmed is on the disk even when the power goes.
    config.setSynchronous(SynchronousMode.FULL);
    config.setTransactionMode(TransactionMode.IMMEDIATE);
    further.accept(config);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
    return new Database(source, 4, Optional.empty(), new Faults(file));
  }

  /**
   * An SQLite file to be read as far as that goes.
   *
   * @param file the file, which is not written to
   * @param allInOneFile whether every save is in it, and none in the log beside it
   * @param trouble why it is not written to
   */
  static Database sqliteForReading(Path file, boolean allInOneFile, StoreException trouble) {
    SQLiteConfig config = waiting();
    config.setReadOnly(true);
    SQLiteDataSource source = new SQLiteDataSource(config);
    // Immutable: without lock files beside it, which could not be written either; but that passes
    // over the log, which can be read where its lock file was left beside it.
    source.setUrl(
        "jdbc:sqlite:"
            + file.toUri().toString().replaceFirst("^file:/+", "file:/")
            + (allInOneFile ? "?immutable=1" : ""));
    try {
      return new Database(source, 4, Optional.of(trouble), new Faults(file));
    } catch (StoreException e) {
      return new Database(trouble);
    }
  }

  private static SQLiteConfig waiting() {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(WAIT_MS);
    return config;
  }

  /** A PostgreSQL database at a JDBC address. */
  static Database postgres(String url) {
    org.postgresql.ds.PGSimpleDataSource source = new org.postgresql.ds.PGSimpleDataSource();
    try {
      source.setUrl(url);
    } catch (IllegalArgumentException e) {
      throw new StoreException(
          StoreException.Reason.UNREACHABLE,
          Sentence.of(
              "The PostgreSQL address cannot be understood; it looks like"
                  + " jdbc:postgresql://host:5432/database?user=name."),
          e);
    }
    return new Database(source, 8, Optional.empty(), new Faults(null));
  }

  /** Connections for the migrations. */
  DataSource source() {
    return pool;
  }

  /** What the database calls a column of bytes. */
  String typeOfBytes() {
    return sqlite ? "blob" : "bytea";
  }

  /** Runs questions. */
  <T> T read(HandleCallback<T, RuntimeException> questions) {
    if (jdbi == null) {
      throw again(trouble.orElseThrow());
    }
    try {
      return jdbi.withHandle(questions);
    } catch (StoreException | VersionConflictException e) {
      throw e;
    } catch (RuntimeException e) {
      throw faults.explain(e);
    }
  }

  /** Runs changes, all of them or none. */
  <T> T write(HandleCallback<T, RuntimeException> changes) {
    if (trouble.isPresent()) {
      throw again(trouble.get());
    }
    try {
      return jdbi.inTransaction((Handle handle) -> changes.withHandle(handle));
    } catch (StoreException | VersionConflictException e) {
      throw e;
    } catch (RuntimeException e) {
      throw faults.explain(e);
    }
  }

  private static StoreException again(StoreException trouble) {
    return new StoreException(trouble.reason(), trouble.sentence(), trouble);
  }

  /** Whether it could be opened at all. */
  boolean readable() {
    return pool != null;
  }

  /** Why nothing can be saved, if so. */
  Optional<StoreException> trouble() {
    return trouble;
  }

  /** The plain sentence for a failure. */
  StoreException explain(RuntimeException failure) {
    return faults.explain(failure);
  }

  @Override
  public void close() {
    if (pool != null) {
      pool.close();
    }
  }
}
