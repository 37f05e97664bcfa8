package org.grovewright.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.store.Account;
import org.grovewright.store.HandClock;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;

/** A server with a store of its own, and browsers to call it with. */
final class TestServer implements AutoCloseable {
  static final ObjectMapper JSON = new ObjectMapper();
  static final String PASSWORD = "correct horse battery";
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();

  final HandClock clock;
  final Store store;
  final List<Throwable> bugs = new CopyOnWriteArrayList<>();
  private final WebServer server;

  private TestServer(HandClock clock, Store store, List<String> hostNames) {
    this.clock = clock;
    this.store = store;
    if (!hostNames.isEmpty()) {
      store.accounts().setPassword(Account.LOCAL, "Rosa", PASSWORD);
    }
    this.server =
        WebServer.start(
            new ServerSettings("127.0.0.1", 0, Optional.empty(), hostNames),
            store,
            CompletableFuture.completedFuture(CATALOGUE),
            bugs::add);
  }

  /** A server that serves its own machine alone. */
  static TestServer local(Path folder) {
    return local(new StoreAddress.Folder(folder));
  }

  /** A server of its own machine on a store that is open. */
  static TestServer on(Store store, HandClock clock) {
    return new TestServer(clock, store, List.of());
  }

  /** A server that others reach; the owner of the program signs in as Rosa. */
  static TestServer open(Path folder) {
    return open(new StoreAddress.Folder(folder));
  }

  /** A server that others reach, on a database of its own. */
  static TestServer open(StoreAddress address) {
    return open(address, List.of("grove.example.org"));
  }

  /** A server that serves its own machine alone, on a database of its own. */
  static TestServer local(StoreAddress address) {
    return open(address, List.of());
  }

  private static TestServer open(StoreAddress address, List<String> hostNames) {
    HandClock clock = new HandClock("2027-03-01T08:00:00Z");
    return new TestServer(clock, Store.open(address, clock), hostNames);
  }

  WebServer server() {
    return server;
  }

  int port() {
    return server.port();
  }

  /** An answer. */
  record Answer(int status, Map<String, List<String>> headers, byte[] bytes) {
    String text() {
      return new String(bytes, StandardCharsets.UTF_8);
    }

    JsonNode json() {
      try {
        return JSON.readTree(bytes);
      } catch (IOException e) {
        throw new IllegalStateException("no JSON: " + text(), e);
      }
    }

    String code() {
      return json().path("code").asText();
    }

    Optional<String> header(String name) {
      return headers.entrySet().stream()
          .filter(entry -> entry.getKey().equalsIgnoreCase(name))
          .map(entry -> entry.getValue().get(0))
          .findFirst();
    }
  }

  /** A browser. */
  final class Browser {
    private final HttpClient client = HttpClient.newHttpClient();
    String cookie = "";
    String csrf = "";

    Answer send(String method, String path, String body, String... headers) {
      HttpRequest.Builder request =
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port() + path))
              .method(
                  method,
                  body == null
                      ? HttpRequest.BodyPublishers.noBody()
                      : HttpRequest.BodyPublishers.ofString(body));
      Map<String, String> all = new LinkedHashMap<>();
      if (!cookie.isEmpty()) {
        all.put("Cookie", cookie);
      }
      if (!csrf.isEmpty() && !method.equals("GET")) {
        all.put("X-CSRF", csrf);
      }
      for (int i = 0; i < headers.length; i += 2) {
        all.put(headers[i], headers[i + 1]);
      }
      all.forEach(
          (name, value) -> {
            if (!value.isEmpty()) {
              request.header(name, value);
            }
          });
      return answer(request.build());
    }

    private Answer answer(HttpRequest request) {
      try {
        HttpResponse<byte[]> response =
            client.send(request, HttpResponse.BodyHandlers.ofByteArray());
        return new Answer(response.statusCode(), response.headers().map(), response.body());
      } catch (IOException e) {
        throw new IllegalStateException(e);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IllegalStateException(e);
      }
    }

    /** Sends bytes as they are. */
    Answer upload(String path, byte[] content) {
      HttpRequest.Builder request =
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port() + path))
              .header("X-CSRF", csrf)
              .header("Content-Type", "image/jpeg")
              .POST(HttpRequest.BodyPublishers.ofByteArray(content));
      if (!cookie.isEmpty()) {
        request.header("Cookie", cookie);
      }
      return answer(request.build());
    }

    /**
     * The status that an upload gets of which only the first part is ever sent. A whole one may
     * find the connection closed while it is still being sent, before the answer is read.
     *
     * @param part what is sent of it
     * @param bytes size that the upload says it has
     */
    int statusOfBegun(String path, byte[] part, long bytes) throws IOException {
      String head =
          "POST %s HTTP/1.1\r\nHost: 127.0.0.1:%d\r\nX-CSRF: %s\r\nCookie: %s\r\nContent-Type: image/jpeg\r\nContent-Length: %d\r\n\r\n"
              .formatted(path, port(), csrf, cookie, bytes);
      try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port())) {
        socket.setSoTimeout(10_000);
        socket.getOutputStream().write(head.getBytes(StandardCharsets.ISO_8859_1));
        socket.getOutputStream().write(part);
        socket.getOutputStream().flush();
        String line =
            new BufferedReader(
                    new InputStreamReader(socket.getInputStream(), StandardCharsets.ISO_8859_1))
                .readLine();
        return Integer.parseInt(line.split(" ", 3)[1]);
      }
    }

    Answer get(String path) {
      return send("GET", path, null);
    }

    Answer post(String path, Object body) {
      return send("POST", path, json(body));
    }

    Answer put(String path, Object body) {
      return send("PUT", path, json(body));
    }

    Answer delete(String path) {
      return send("DELETE", path, null);
    }

    /** Signs in and keeps cookie and word. */
    Answer login(String name, String password) {
      csrf = get("/api/me").json().path("csrf").asText();
      Answer answer = post("/api/login", Map.of("name", name, "password", password));
      if (answer.status() == 200) {
        cookie = answer.header("Set-Cookie").orElseThrow().split(";", 2)[0];
        csrf = answer.json().path("csrf").asText();
      }
      return answer;
    }
  }

  /** A browser that has read who it is. */
  Browser browser() {
    Browser browser = new Browser();
    browser.csrf = browser.get("/api/me").json().path("csrf").asText();
    return browser;
  }

  /** A browser that is signed in. */
  Browser browser(String name) {
    Browser browser = new Browser();
    Answer answer = browser.login(name, PASSWORD);
    if (answer.status() != 200) {
      throw new IllegalStateException(answer.text());
    }
    return browser;
  }

  static String json(Object body) {
    try {
      return JSON.writeValueAsString(body);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Makes the example site and gives its id. */
  static String demo(Browser browser) {
    Answer answer = browser.post("/api/sites", Map.of("example", "demo"));
    if (answer.status() != 201) {
      throw new IllegalStateException(answer.text());
    }
    return answer.json().path("id").asText();
  }

  static Map<String, Object> move(long onVersion, String plant, double x, double y) {
    return Map.of(
        "onVersion",
        onVersion,
        "label",
        "Moved " + plant,
        "operations",
        List.of(Map.of("type", "movePlant", "plant", plant, "x", x, "y", y)));
  }

  /** What comes back for the very words sent, for requests that a client library would not make. */
  String raw(String... lines) throws IOException {
    List<String> all = new ArrayList<>(List.of(lines));
    all.add("Connection: close");
    try (Socket socket = new Socket("127.0.0.1", port());
        OutputStream out = socket.getOutputStream();
        InputStream in = socket.getInputStream()) {
      out.write((String.join("\r\n", all) + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
      out.flush();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Override
  public void close() {
    server.close();
    store.close();
  }
}
