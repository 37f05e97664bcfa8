package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.Set;
import org.grovewright.store.HandClock;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.TestServer.Answer;
import org.grovewright.web.TestServer.Browser;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the page is told when the database is not well. */
class BadStatesTest {
  private final HandClock clock = new HandClock("2027-03-01T08:00:00Z");
  @TempDir Path folder;

  private StoreAddress.Folder address() {
    return new StoreAddress.Folder(folder.resolve("data"));
  }

  private Store open() {
    return Store.open(address(), clock);
  }

  @Test
  void aDamagedFileIsOpenedForReadingAndACopyPutInItsPlace() throws IOException {
    String site;
    try (TestServer server = TestServer.on(open(), clock)) {
      Browser browser = server.browser();
      site = "/api/sites/" + TestServer.demo(browser);
      browser.post(site + "/edits", TestServer.move(1, "A2", 15, 12));
      assertThat(server.store.copyIfDue()).isTrue();
    }
    damage();
    try (TestServer server = TestServer.on(open(), clock)) {
      Browser browser = server.browser();
      assertThat(browser.get("/").status()).isEqualTo(200);
      assertThat(browser.get("/api/me").json().path("trouble").path("code").asText())
          .isEqualTo("damaged");
      assertThat(browser.get("/api/health").json().path("ok").asBoolean()).isFalse();
      Answer refused = browser.post("/api/sites", Map.of("example", "demo"));
      assertThat(refused.status()).isEqualTo(503);
      assertThat(refused.code()).isEqualTo("damaged");
      assertThat(refused.json().path("message").asText()).contains("daily copies");
      String copy = browser.get("/api/copies").json().get(0).path("name").asText();
      assertThat(copy).isEqualTo("grovewright-2027-03-01.db");
      Answer restored = browser.post("/api/copies/" + copy + "/restore", Map.of());
      assertThat(restored.json().path("ok").asBoolean()).isTrue();
      assertThat(folder.resolve("data").resolve(restored.json().path("keptAs").asText())).exists();
      assertThat(browser.get(site).json().path("version").asLong()).isEqualTo(2);
      assertThat(browser.post(site + "/undo", Map.of("onVersion", 2)).status()).isEqualTo(200);
      assertThat(server.bugs).isEmpty();
    }
  }

  /** Bytes within the tables are made nonsense, the head stays. */
  private void damage() throws IOException {
    Path file = address().file();
    try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
      byte[] nonsense = new byte[4096];
      java.util.Arrays.fill(nonsense, (byte) 0x5a);
      for (long at = 4096; at + 4096 <= raw.length(); at += 8192) {
        raw.seek(at);
        raw.write(nonsense);
      }
    }
  }

  @Test
  void aFolderThatMayOnlyBeReadIsShownAndNotSavedTo() throws IOException {
    String site;
    try (TestServer server = TestServer.on(open(), clock)) {
      site = "/api/sites/" + TestServer.demo(server.browser());
    }
    Path data = address().path();
    Set<?> before = Files.getPosixFilePermissions(data);
    Files.setPosixFilePermissions(data, PosixFilePermissions.fromString("r-xr-xr-x"));
    Files.setPosixFilePermissions(address().file(), PosixFilePermissions.fromString("r--r--r--"));
    try {
      Assumptions.assumeFalse(Files.isWritable(data), "skipped: this user may write everywhere");
      try (TestServer server = TestServer.on(open(), clock)) {
        Browser browser = server.browser();
        assertThat(browser.get(site + "/scene?wait=true").status()).isEqualTo(200);
        assertThat(browser.get(site).json().path("readOnly").asBoolean()).isTrue();
        Answer refused = browser.post(site + "/edits", TestServer.move(1, "A2", 15, 12));
        assertThat(refused.status()).isEqualTo(503);
        assertThat(refused.code()).isEqualTo("read-only");
        assertThat(browser.get("/api/me").json().path("trouble").path("code").asText())
            .isEqualTo("read-only");
      }
    } finally {
      Files.setPosixFilePermissions(data, PosixFilePermissions.fromString("rwxr-xr-x"));
      assertThat(before).isNotEmpty();
    }
  }

  @Test
  void anEditSurvivesANewStart() {
    String site;
    try (TestServer server = TestServer.on(open(), clock)) {
      Browser browser = server.browser();
      site = "/api/sites/" + TestServer.demo(browser);
      browser.post(site + "/edits", TestServer.move(1, "A2", 15, 12));
    }
    try (TestServer server = TestServer.on(open(), clock)) {
      Browser browser = server.browser();
      assertThat(browser.get(site).json().path("canUndo").asBoolean()).isTrue();
      Answer undone = browser.post(site + "/undo", Map.of("onVersion", 2));
      assertThat(undone.json().path("state").path("version").asLong()).isEqualTo(3);
    }
  }
}
