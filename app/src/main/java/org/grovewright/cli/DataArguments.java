package org.grovewright.cli;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Optional;
import org.grovewright.store.DataFolder;
import org.grovewright.store.Store;
import org.grovewright.store.StoreException;
import picocli.CommandLine.Option;

/** Where the groves are kept. */
final class DataArguments {
  @Option(
      names = "--data",
      paramLabel = "FOLDER",
      description = "Folder of your groves (default: your data folder, or GROVEWRIGHT_DATA).")
  private String folder;

  @Option(
      names = "--database",
      paramLabel = "JDBC-URL",
      description = "PostgreSQL database instead of a folder: jdbc:postgresql://...")
  private String database;

  /**
   * Opens the store.
   *
   * @throws BadInputException if it cannot be opened
   */
  Store open() {
    if (folder != null && database != null) {
      throw new BadInputException(
          "Give either --data or --database: groves are kept in one place.");
    }
    if (database != null && !database.startsWith("jdbc:postgresql:")) {
      throw new BadInputException("--database must start with jdbc:postgresql:.");
    }
    try {
      return Store.open(
          DataFolder.find(
              Optional.ofNullable(database != null ? database : folder),
              System.getenv(),
              System.getProperty("os.name"),
              Path.of(System.getProperty("user.home"))),
          InstantSource.system());
    } catch (StoreException e) {
      throw new BadInputException(e.sentence());
    }
  }
}
