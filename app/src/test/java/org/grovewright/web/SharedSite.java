package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.TestServer.Browser;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A site that Rosa owns, Helga helps with, Viktor may look at and Stan has no part in. */
abstract class SharedSite {
  @TempDir Path folder;
  TestServer server;
  Browser rosa;
  String site;

  /** The address of an empty database. */
  StoreAddress empty() throws Exception {
    return new StoreAddress.Folder(folder);
  }

  @BeforeEach
  void start() throws Exception {
    server = TestServer.open(empty());
    rosa = server.browser("Rosa");
    site = "/api/sites/" + TestServer.demo(rosa);
    for (String name : List.of("Helga", "Viktor", "Stan")) {
      assertThat(
              rosa.post("/api/accounts", Map.of("name", name, "password", TestServer.PASSWORD))
                  .status())
          .isEqualTo(201);
    }
    assertThat(rosa.post(site + "/members", Map.of("name", "Helga", "role", "helper")).status())
        .isEqualTo(200);
    assertThat(rosa.post(site + "/members", Map.of("name", "Viktor", "role", "viewer")).status())
        .isEqualTo(200);
  }

  @AfterEach
  void stop() {
    assertThat(server.bugs).isEmpty();
    server.close();
  }
}
