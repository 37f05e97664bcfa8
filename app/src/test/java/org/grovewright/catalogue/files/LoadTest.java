package org.grovewright.catalogue.files;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LoadTest {
  @Test
  void loadsEveryTable() {
    CatalogueFiles files = CatalogueFiles.load();
    for (String table : Tables.all().keySet()) {
      assertThat(files.rows(table)).as(table).isNotEmpty();
    }
  }
}
