package org.grovewright.web;

import org.grovewright.store.StoreAddress;
import org.grovewright.store.TestStores;

/** What is bought, with PostgreSQL below it. */
class TickApiOnPostgresTest extends TickApiTest {
  @Override
  StoreAddress empty() throws Exception {
    return TestStores.emptyPostgres();
  }
}
