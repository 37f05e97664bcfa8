package org.grovewright.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.grovewright.store.StoreException.Reason;
import org.grovewright.texts.Sentence;
import org.sqlite.SQLiteConfig;

/**
 * The open store. A database that is damaged or may only be read is opened for reading, and {@link
 * #trouble()} says why; saving then fails with that trouble.
 */
public final class Store implements AutoCloseable {
  /** Bytes that the database wants beside its file before anything can be saved. */
  private static final long ROOM_TO_OPEN = 256 * 1024;

  private final StoreAddress address;
  private final InstantSource clock;
  private final Consumer<SQLiteConfig> sqliteSettings;
  private final Optional<Backups> backups;
  private volatile Opened opened;

  private record Opened(
      Database database,
      Sites sites,
      Journal journal,
      Photos photos,
      Ticks ticks,
      Accounts accounts,
      Sessions sessions,
      Feeds feeds) {}

  private Store(StoreAddress address, InstantSource clock, Consumer<SQLiteConfig> sqliteSettings) {
    this.address = address;
    this.clock = clock;
    this.sqliteSettings = sqliteSettings;
    this.backups =
        address instanceof StoreAddress.Folder folder
            ? Optional.of(new Backups(folder, clock))
            : Optional.empty();
    this.opened = open();
  }

  /**
   * Opens the store, makes it if it is not there and brings its tables up to date.
   *
   * @param address where it is
   * @param clock tells the time
   * @throws StoreException if it cannot be reached, or was written by a newer version
   */
  public static Store open(StoreAddress address, InstantSource clock) {
    return open(address, clock, settings -> {});
  }

  /** Opens the store with settings of SQLite that a test wants. */
  static Store open(
      StoreAddress address, InstantSource clock, Consumer<SQLiteConfig> sqliteSettings) {
    return new Store(address, clock, sqliteSettings);
  }

  private Opened open() {
    if (address instanceof StoreAddress.Postgres postgres) {
      Database database = Database.postgres(postgres.url());
      return closingOnFailure(
          database,
          () -> {
            Schema.update(database, Schema.found(database, false));
            return parts(database);
          });
    }
    StoreAddress.Folder folder = (StoreAddress.Folder) address;
    boolean there = Files.exists(folder.file());
    if (!writable(folder)) {
      StoreException trouble = Faults.readOnly(folder.path(), null);
      if (!there) {
        throw trouble;
      }
      return openForReading(folder, trouble);
    }
    try {
      Database database = Database.sqlite(folder.file(), sqliteSettings);
      return closingOnFailure(
          database,
          () -> {
            int found = Schema.found(database, true);
            if (there) {
              checkWhole(database, folder);
            }
            if (found > 0 && found < Schema.VERSION) {
              backups.orElseThrow().makeIfDue(database);
            }
            Schema.update(database, found);
            return parts(database);
          });
    } catch (StoreException e) {
      if (there && e.reason() == Reason.DAMAGED) {
        return openForReading(folder, e);
      }
      if (there && noRoom(folder) && allInOneFile(folder)) {
        return openForReading(folder, Faults.fullAtStart(folder.path(), e));
      }
      throw e;
    }
  }

  /** A full disk refuses the files beside the database in more than one way. */
  private static boolean noRoom(StoreAddress.Folder folder) {
    try {
      return Files.getFileStore(folder.path()).getUsableSpace() < ROOM_TO_OPEN;
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Whether no save still waits in the log beside the file, as some do after the program was
   * killed.
   */
  private static boolean allInOneFile(StoreAddress.Folder folder) {
    Path log = folder.path().resolve(folder.file().getFileName() + "-wal");
    try {
      return !Files.exists(log) || Files.size(log) == 0;
    } catch (IOException e) {
      return false;
    }
  }

  private interface Opening {
    Opened open();
  }

  private static Opened closingOnFailure(Database database, Opening opening) {
    try {
      return opening.open();
    } catch (RuntimeException e) {
      database.close();
      throw e;
    }
  }

  private Opened openForReading(StoreAddress.Folder folder, StoreException trouble) {
    boolean allInOneFile = allInOneFile(folder);
    Database database = Database.sqliteForReading(folder.file(), allInOneFile, trouble);
    if (trouble.reason() == Reason.READ_ONLY && !database.readable() && !allInOneFile) {
      throw Faults.newestUnread(folder.path(), trouble);
    }
    if (trouble.reason() != Reason.DAMAGED) {
      return closingOnFailure(
          database,
          () -> {
            int found = Schema.found(database, true);
            if (found != Schema.VERSION) {
              throw trouble;
            }
            return parts(database);
          });
    }
    return parts(database);
  }

  private static boolean writable(StoreAddress.Folder folder) {
    try {
      Files.createDirectories(folder.path());
    } catch (IOException e) {
      throw new StoreException(
          Reason.UNREACHABLE,
          Sentence.of(
              "The folder {0} for the data cannot be made. Choose another one with --data.",
              folder.path()),
          e);
    }
    Path file = folder.file();
    return Files.isWritable(folder.path()) && (!Files.exists(file) || Files.isWritable(file));
  }

  private static void checkWhole(Database database, StoreAddress.Folder folder) {
    List<String> found =
        database.read(
            handle -> handle.createQuery("pragma quick_check(1)").mapTo(String.class).list());
    if (!found.equals(List.of("ok"))) {
      throw Faults.damaged(folder.file(), null);
    }
  }

  private Opened parts(Database database) {
    return new Opened(
        database,
        new Sites(database, clock),
        new Journal(database, clock),
        new Photos(database, clock, Photos.MOST_OF_A_SITE),
        new Ticks(database, clock),
        new Accounts(database, clock),
        new Sessions(database, clock),
        new Feeds(database, clock));
  }

  /** The clock that tells when things are saved. */
  public InstantSource clock() {
    return clock;
  }

  /** Why nothing can be saved, if so. */
  public Optional<StoreException> trouble() {
    return opened.database().trouble();
  }

  /** The sites. */
  public Sites sites() {
    return opened.sites();
  }

  /** What was done and seen. */
  public Journal journal() {
    return opened.journal();
  }

  /** The photos of the journal. */
  public Photos photos() {
    return opened.photos();
  }

  /** What is bought already. */
  public Ticks ticks() {
    return opened.ticks();
  }

  /** The accounts and their settings. */
  public Accounts accounts() {
    return opened.accounts();
  }

  /** Who is signed in. */
  public Sessions sessions() {
    return opened.sessions();
  }

  /** The calendar addresses. */
  public Feeds feeds() {
    return opened.feeds();
  }

  /** The daily copies there are, newest first; PostgreSQL has its own ways and none here. */
  public List<Backups.Copy> copies() {
    return backups.map(Backups::list).orElse(List.of());
  }

  /**
   * Makes today's copy if there is none yet.
   *
   * @return whether one was made
   * @throws StoreException if it could not be made
   */
  public boolean copyIfDue() {
    Opened now = opened;
    return now.database().trouble().isEmpty()
        && backups.isPresent()
        && backups.get().makeIfDue(now.database());
  }

  /**
   * Goes back to a daily copy. The present file is kept beside it under another name.
   *
   * @param name name of the copy
   * @return where the present file was put
   */
  public synchronized Path restore(String name) {
    Backups copies =
        backups.orElseThrow(
            () ->
                new StoreException(
                    Reason.REFUSED,
                    "Copies of PostgreSQL are kept and restored by its own tools."));
    opened.database().close();
    try {
      return copies.putBack(name);
    } finally {
      opened = open();
    }
  }

  @Override
  public void close() {
    opened.database().close();
  }
}
