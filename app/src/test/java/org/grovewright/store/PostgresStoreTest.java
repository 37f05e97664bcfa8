package org.grovewright.store;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.grovewright.store.StoreException.Reason;
import org.junit.jupiter.api.Test;

class PostgresStoreTest extends StoreContract {
  @Override
  StoreAddress empty() throws Exception {
    return TestStores.emptyPostgres();
  }

  @Test
  void saysSoWhenTheServerCannotBeReached() {
    // Port 1 of the own machine: nothing listens there.
    StoreAddress nowhere =
        new StoreAddress.Postgres("jdbc:postgresql://127.0.0.1:1/none?user=x&connectTimeout=2");
    assertThatThrownBy(() -> Store.open(nowhere, clock))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("PostgreSQL database cannot be reached")
        .matches(e -> ((StoreException) e).reason() == Reason.UNREACHABLE);
  }
}
