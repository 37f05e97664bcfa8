package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import nl.altindag.ssl.SSLFactory;
import org.grovewright.store.Account;
import org.grovewright.store.HandClock;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HttpsTest {
  private static final char[] WORD = "for the test".toCharArray();
  @TempDir Path folder;

  /** A certificate of our own making, as PEM files. */
  private ServerSettings.Certificate certificate() throws Exception {
    Path keys = folder.resolve("keys.p12");
    Process made =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
                "-genkeypair",
                "-alias",
                "grove",
                "-keyalg",
                "EC",
                "-dname",
                "CN=localhost",
                "-ext",
                "SAN=DNS:localhost,IP:127.0.0.1",
                "-storetype",
                "PKCS12",
                "-keystore",
                keys.toString(),
                "-storepass",
                new String(WORD))
            .redirectErrorStream(true)
            .start();
    String said = new String(made.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(made.waitFor()).as(said).isZero();
    KeyStore store = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(keys)) {
      store.load(in, WORD);
    }
    return new ServerSettings.Certificate(
        pem("cert.pem", "CERTIFICATE", store.getCertificate("grove").getEncoded()),
        pem("key.pem", "PRIVATE KEY", store.getKey("grove", WORD).getEncoded()));
  }

  private Path pem(String name, String what, byte[] bytes) throws Exception {
    String text = Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(bytes);
    return Files.writeString(
        folder.resolve(name),
        "-----BEGIN " + what + "-----\n" + text + "\n-----END " + what + "-----\n");
  }

  @Test
  void aGivenCertificateEncryptsAndTheCookieNeverLeavesIt() throws Exception {
    try (Store store =
        Store.open(
            new StoreAddress.Folder(folder.resolve("data")),
            new HandClock("2027-03-01T08:00:00Z"))) {
      store.accounts().setPassword(Account.LOCAL, "Rosa", TestServer.PASSWORD);
      ServerSettings settings =
          new ServerSettings(
              "127.0.0.1", 0, Optional.of(certificate()), List.of("grove.example.org"));
      try (WebServer server =
          WebServer.start(settings, store, new CompletableFuture<>(), bug -> {})) {
        assertThat(server.address()).startsWith("https://grove.example.org:");
        HttpClient client =
            HttpClient.newBuilder()
                .sslContext(SSLFactory.builder().withUnsafeTrustMaterial().build().getSslContext())
                .build();
        String base = "https://127.0.0.1:" + server.port();
        HttpResponse<String> me =
            send(client, HttpRequest.newBuilder(URI.create(base + "/api/me")));
        assertThat(me.statusCode()).isEqualTo(200);
        assertThat(me.headers().firstValue("Strict-Transport-Security")).isPresent();
        String csrf = TestServer.JSON.readTree(me.body()).path("csrf").asText();
        HttpResponse<String> login =
            send(
                client,
                HttpRequest.newBuilder(URI.create(base + "/api/login"))
                    .header("X-CSRF", csrf)
                    .header("Origin", base)
                    .POST(
                        HttpRequest.BodyPublishers.ofString(
                            "{\"name\":\"Rosa\",\"password\":\"" + TestServer.PASSWORD + "\"}")));
        assertThat(login.statusCode()).as(login.body()).isEqualTo(200);
        assertThat(login.headers().firstValue("Set-Cookie").orElse(""))
            .contains("Secure")
            .contains("HttpOnly");
      }
    }
  }

  private static HttpResponse<String> send(HttpClient client, HttpRequest.Builder request)
      throws Exception {
    return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }
}
