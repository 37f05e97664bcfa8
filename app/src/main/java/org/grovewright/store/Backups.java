package org.grovewright.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.grovewright.store.StoreException.Reason;
import org.grovewright.texts.Sentence;

/** The daily copies of an SQLite file, each a complete database. */
public final class Backups {
  /** How many copies are kept. */
  public static final int KEPT = 14;

  private static final Pattern NAME = Pattern.compile("grovewright-(\\d{4}-\\d\\d-\\d\\d)\\.db");

  private final StoreAddress.Folder address;
  private final InstantSource clock;

  Backups(StoreAddress.Folder address, InstantSource clock) {
    this.address = address;
    this.clock = clock;
  }

  /**
   * One copy.
   *
   * @param name name of its file
   * @param day the day it was made, in universal time
   * @param bytes its size
   */
  public record Copy(String name, LocalDate day, long bytes) {}

  /** The copies there are, newest first. */
  public List<Copy> list() {
    Path folder = address.backups();
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    List<Copy> copies = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : (Iterable<Path>) files::iterator) {
        java.util.regex.Matcher matcher = NAME.matcher(file.getFileName().toString());
        if (matcher.matches()) {
          copies.add(
              new Copy(
                  file.getFileName().toString(),
                  LocalDate.parse(matcher.group(1)),
                  Files.size(file)));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    copies.sort(Comparator.comparing(Copy::day).reversed());
    return copies;
  }

  /**
   * Makes today's copy if there is none yet, and lets copies go that are older than the newest
   * {@value #KEPT}.
   *
   * @return whether a copy was made
   */
  boolean makeIfDue(Database database) {
    LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    if (list().stream().anyMatch(copy -> copy.day().equals(today))) {
      return false;
    }
    String name = "grovewright-" + DateTimeFormatter.ISO_LOCAL_DATE.format(today) + ".db";
    Path copy = address.backups().resolve(name);
    Path unfinished = address.backups().resolve(name + ".unfinished");
    try {
      Files.createDirectories(address.backups());
      Files.deleteIfExists(unfinished);
      database.read(
          handle ->
              handle
                  .createUpdate("vacuum into :file")
                  .bind("file", unfinished.toString())
                  .execute());
      try (FileChannel channel = FileChannel.open(unfinished, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      Files.move(unfinished, copy, StandardCopyOption.ATOMIC_MOVE);
      for (Copy old : list().stream().skip(KEPT).toList()) {
        Files.delete(address.backups().resolve(old.name()));
      }
      return true;
    } catch (IOException e) {
      throw new StoreException(
          Reason.UNREACHABLE,
          Sentence.of("Today's copy of the data could not be made in {0}.", address.backups()),
          e);
    }
  }

  /**
   * Puts a copy in the place of the database, which must be closed. The old file is kept under
   * another name.
   *
   * @return where the old file is now
   */
  Path putBack(String name) {
    Copy copy =
        list().stream()
            .filter(one -> one.name().equals(name))
            .findFirst()
            .orElseThrow(
                () -> new StoreException(Reason.MISSING, "There is no copy called {0}.", name));
    Path file = address.file();
    Path aside = aside(file);
    Path ready = file.resolveSibling(file.getFileName() + ".restored");
    try {
      Files.copy(
          address.backups().resolve(copy.name()), ready, StandardCopyOption.REPLACE_EXISTING);
      if (Files.exists(file)) {
        Files.move(file, aside, StandardCopyOption.ATOMIC_MOVE);
      }
      // The log of the old file must not be played into the restored one.
      for (String suffix : List.of("-wal", "-shm")) {
        Path extra = file.resolveSibling(file.getFileName() + suffix);
        if (Files.exists(extra)) {
          Files.move(extra, aside.resolveSibling(aside.getFileName() + suffix));
        }
      }
      Files.move(ready, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new StoreException(
          Reason.UNREACHABLE,
          Sentence.of("The copy {0} could not be put in place of {1}.", name, file),
          e);
    }
    return aside;
  }

  private Path aside(Path file) {
    String stamp =
        DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmmss", java.util.Locale.ROOT)
            .withZone(ZoneOffset.UTC)
            .format(clock.instant());
    Path aside = file.resolveSibling("grovewright-before-restore-" + stamp + ".db");
    for (int n = 2; Files.exists(aside); n++) {
      aside = file.resolveSibling("grovewright-before-restore-" + stamp + "-" + n + ".db");
    }
    return aside;
  }
}
