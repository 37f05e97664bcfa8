package org.grovewright.web;

import org.grovewright.store.StoreAddress;
import org.grovewright.store.TestStores;

/** Attacks on accounts and roles, with PostgreSQL below them. */
class AccountAttackOnPostgresTest extends AccountAttackTest {
  @Override
  StoreAddress empty() throws Exception {
    return TestStores.emptyPostgres();
  }

  @Override
  StoreAddress fresh() throws Exception {
    return TestStores.emptyPostgres();
  }
}
