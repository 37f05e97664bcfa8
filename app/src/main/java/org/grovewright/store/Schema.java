package org.grovewright.store;

import java.util.List;
import java.util.Map;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.grovewright.store.StoreException.Reason;

/** The tables and their versions. */
final class Schema {
  /** The version this program works with: the number of the newest migration. */
  static final int VERSION = 2;

  private static final String LOCATION = "classpath:org/grovewright/store/migrations";

  private Schema() {}

  /**
   * The version of the tables found, 0 if there are none.
   *
   * @param sqlite whether it is SQLite and not PostgreSQL
   */
  static int found(Database database, boolean sqlite) {
    String there =
        sqlite
            ? "select count(*) from sqlite_master where name = 'flyway_schema_history'"
            : "select count(*) from information_schema.tables where table_schema = current_schema()"
                + " and table_name = 'flyway_schema_history'";
    return database.read(
        handle -> {
          if (handle.createQuery(there).mapTo(Integer.class).one() == 0) {
            return 0;
          }
          List<String> versions =
              handle
                  .createQuery(
                      "select version from flyway_schema_history"
                          + " where success and version is not null")
                  .mapTo(String.class)
                  .list();
          return versions.stream().mapToInt(Schema::major).max().orElse(0);
        });
  }

  private static int major(String version) {
    return Integer.parseInt(version.split("\\.", 2)[0]);
  }

  /**
   * Brings the tables up to this program's version.
   *
   * @throws StoreException if they are of a newer one
   */
  static void update(Database database, int found) {
    if (found > VERSION) {
      throw new StoreException(
          Reason.NEWER,
          "The data was saved by a newer version of Grovewright (its tables are of version {0},"
              + " this program knows {1}). Update the program; the data was left as it is.",
          found,
          VERSION);
    }
    if (found == VERSION) {
      // Asking Flyway would find the same, but loading it costs a third of the start.
      return;
    }
    try {
      flyway(database).migrate();
    } catch (FlywayException e) {
      throw database.explain(e);
    }
  }

  /** The migration tool set up for this database. */
  static Flyway flyway(Database database) {
    return Flyway.configure(Schema.class.getClassLoader())
        .placeholders(Map.of("bytes", database.typeOfBytes()))
        .dataSource(database.source())
        .locations(LOCATION)
        .failOnMissingLocations(true)
        .loggers("slf4j")
        .load();
  }
}
