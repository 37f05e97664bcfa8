package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.grovewright.store.StoreAddress;
import org.grovewright.store.TestStores;
import org.junit.jupiter.api.Test;

/** Photos of the journal, with PostgreSQL below them. */
class JournalPhotoOnPostgresTest extends JournalPhotoTest {
  @Override
  StoreAddress empty() throws Exception {
    return TestStores.emptyPostgres();
  }

  /** PostgreSQL has its own ways to keep copies. */
  @Override
  @Test
  void aPhotoComesBackWithTheDailyCopy() {
    assertThat(server.store.copies()).isEmpty();
    assertThat(server.store.copyIfDue()).isFalse();
  }
}
