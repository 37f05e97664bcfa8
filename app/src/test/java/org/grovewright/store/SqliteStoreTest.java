package org.grovewright.store;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;

class SqliteStoreTest extends StoreContract {
  @TempDir Path folder;
  private int made;

  @Override
  StoreAddress empty() {
    return new StoreAddress.Folder(folder.resolve("new folder " + ++made));
  }
}
