package org.grovewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;

/** Databases for the tests. */
public final class TestStores {
  private TestStores() {}

  /** The address of an empty schema in the PostgreSQL that scripts/with-postgres started. */
  public static StoreAddress.Postgres emptyPostgres() throws SQLException {
    String address = System.getenv("GROVEWRIGHT_TEST_PG");
    if ("true".equals(System.getenv("CI"))) {
      assertThat(address)
          .as("CI must test on PostgreSQL; run the tests with scripts/with-postgres")
          .isNotBlank();
    }
    assumeTrue(
        address != null && !address.isBlank(),
        "skipped: no PostgreSQL; run the tests with scripts/with-postgres");
    String schema = "t" + UUID.randomUUID().toString().replace("-", "");
    try (Connection connection = DriverManager.getConnection(address);
        Statement statement = connection.createStatement()) {
      statement.execute("create schema " + schema);
    }
    return new StoreAddress.Postgres(address + "&currentSchema=" + schema);
  }
}
