package org.grovewright.web;

import org.grovewright.store.StoreAddress;
import org.grovewright.store.TestStores;

/** What is brought in from files, with PostgreSQL below it. */
class SavedExchangeOnPostgresTest extends SavedExchangeTest {
  @Override
  StoreAddress empty() throws Exception {
    return TestStores.emptyPostgres();
  }
}
