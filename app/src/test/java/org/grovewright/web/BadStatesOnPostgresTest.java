package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.grovewright.store.Account;
import org.grovewright.store.HandClock;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;
import org.grovewright.store.TestStores;
import org.grovewright.web.TestServer.Answer;
import org.grovewright.web.TestServer.Browser;
import org.junit.jupiter.api.Test;

/** What the page is told when PostgreSQL is not well. */
class BadStatesOnPostgresTest {
  private final HandClock clock = new HandClock("2027-03-01T08:00:00Z");

  @Test
  void aDatabaseThatOnlyLetsReadIsShownAndNotSavedTo() throws Exception {
    StoreAddress.Postgres address = TestStores.emptyPostgres();
    String site;
    try (TestServer server = TestServer.on(Store.open(address, clock), clock)) {
      site = "/api/sites/" + TestServer.demo(server.browser());
    }
    StoreAddress reading = onlyReading(address);
    try (TestServer server = TestServer.on(Store.open(reading, clock), clock)) {
      Browser browser = server.browser();
      assertThat(browser.get(site + "/scene?wait=true").status()).isEqualTo(200);
      Answer refused = browser.post(site + "/edits", TestServer.move(1, "A2", 15, 12));
      assertThat(refused.status()).as(refused.text()).isEqualTo(503);
      assertThat(refused.code()).isEqualTo("read-only");
      assertThat(refused.json().path("message").asText())
          .isEqualTo("The PostgreSQL database only lets us read. Nothing was changed.");
      assertThat(browser.get(site).json().path("version").asLong()).isEqualTo(1);
      assertThat(server.bugs).isEmpty();
    }
  }

  private static StoreAddress onlyReading(StoreAddress.Postgres address) {
    return new StoreAddress.Postgres(
        address.url() + "&options=-c%20default_transaction_read_only%3Don");
  }

  /** That somebody was seen cannot be written down then, which must not keep him from reading. */
  @Test
  void whoIsSignedInGoesOnWhereNothingCanBeSaved() throws Exception {
    StoreAddress.Postgres address = TestStores.emptyPostgres();
    String token;
    try (Store store = Store.open(address, clock)) {
      token = store.sessions().start(Account.LOCAL).token();
    }
    clock.pass(Duration.ofHours(5));
    try (Store store = Store.open(onlyReading(address), clock)) {
      assertThat(store.sessions().find(token)).isPresent();
    }
  }

  @Test
  void aDatabaseThatGoesAwayIsSaidAndFoundAgain() throws Exception {
    StoreAddress.Postgres address = TestStores.emptyPostgres();
    try (Way way = Way.to(address);
        TestServer server = TestServer.on(Store.open(way.address(), clock), clock)) {
      Browser browser = server.browser();
      String site = "/api/sites/" + TestServer.demo(browser);
      way.shut();
      assertThat(browser.get("/").status()).as("the frame needs no database").isEqualTo(200);
      Answer refused = browser.post(site + "/edits", TestServer.move(1, "A2", 15, 12));
      assertThat(refused.status()).as(refused.text()).isEqualTo(503);
      assertThat(refused.code()).isEqualTo("unreachable");
      assertThat(refused.json().path("message").asText())
          .startsWith("The PostgreSQL database cannot be reached");
      way.open();
      for (int tries = 0; tries < 100 && browser.get(site).status() != 200; tries++) {
        // Connections that died are found out one by one.
        Thread.sleep(100);
      }
      assertThat(browser.get(site).json().path("version").asLong()).isEqualTo(1);
      assertThat(browser.post(site + "/edits", TestServer.move(1, "A2", 15, 12)).status())
          .isEqualTo(200);
      assertThat(server.bugs).isEmpty();
    }
  }

  /** A way to the database's server that can be shut. */
  private static final class Way implements AutoCloseable {
    private final String url;
    private final String host;
    private final int port;
    private final ServerSocket door;
    private final List<Socket> ends = new CopyOnWriteArrayList<>();
    private volatile boolean open = true;

    private Way(StoreAddress.Postgres address) throws IOException {
      url = address.url();
      java.net.URI uri = java.net.URI.create(url.substring("jdbc:".length()));
      host = uri.getHost();
      port = uri.getPort();
      door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
      Thread porter = new Thread(this::serve, "way to PostgreSQL");
      porter.setDaemon(true);
      porter.start();
    }

    static Way to(StoreAddress.Postgres address) throws IOException {
      return new Way(address);
    }

    StoreAddress address() {
      return new StoreAddress.Postgres(
          url.replace(host + ":" + port, "127.0.0.1:" + door.getLocalPort()));
    }

    private void serve() {
      while (!door.isClosed()) {
        try {
          Socket from = door.accept();
          ends.add(from);
          if (!open) {
            from.close();
            continue;
          }
          Socket to = new Socket(host, port);
          ends.add(to);
          carry(from, to);
          carry(to, from);
        } catch (IOException e) {
          // The door was closed, or a caller went away.
        }
      }
    }

    private void carry(Socket from, Socket to) {
      Thread carrier =
          new Thread(
              () -> {
                try (InputStream in = from.getInputStream();
                    OutputStream out = to.getOutputStream()) {
                  in.transferTo(out);
                } catch (IOException e) {
                  // Shut.
                }
              });
      carrier.setDaemon(true);
      carrier.start();
    }

    void shut() throws IOException {
      open = false;
      for (Socket end : ends) {
        end.close();
      }
      ends.clear();
    }

    void open() {
      open = true;
    }

    @Override
    public void close() throws IOException {
      shut();
      door.close();
    }
  }
}
