package org.grovewright.web;

import org.grovewright.store.StoreAddress;
import org.grovewright.store.TestStores;

/** Sites, edits, scenes and pages with PostgreSQL below them. */
class SiteApiOnPostgresTest extends SiteApiTest {
  @Override
  StoreAddress empty() throws Exception {
    return TestStores.emptyPostgres();
  }
}
