package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.grovewright.web.TestServer.Answer;
import org.grovewright.web.TestServer.Browser;
import org.grovewright.web.api.Limits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What somebody else's page may try, as far as the request alone decides. */
class AttackTest extends SharedSite {
  @Test
  void aChangeWithoutTheSecretWordOfOurPageIsRefused() {
    for (String word : List.of("", "wrong")) {
      rosa.csrf = word;
      Answer answer = rosa.post(site + "/edits", TestServer.move(1, "A2", 15, 12));
      assertThat(answer.status()).isEqualTo(403);
      assertThat(answer.code()).isEqualTo("csrf");
    }
    rosa.csrf = server.browser("Helga").csrf;
    assertThat(rosa.post(site + "/undo", Map.of("onVersion", 1)).code()).isEqualTo("csrf");
  }

  @ParameterizedTest
  @ValueSource(strings = {"https://evil.example", "null", "http://127.0.0.1:1", "file://"})
  void aPageFromElsewhereIsRefusedEvenWithEverythingElse(String origin) {
    Answer answer =
        rosa.send(
            "POST",
            site + "/edits",
            TestServer.json(TestServer.move(1, "A2", 15, 12)),
            "Origin",
            origin);
    assertThat(answer.status()).isEqualTo(403);
    assertThat(answer.code()).isEqualTo("cross-site");
    assertThat(rosa.send("GET", site + "/scene", null, "Sec-Fetch-Site", "cross-site").status())
        .isEqualTo(403);
    assertThat(rosa.send("GET", site + "/scene", null, "Sec-Fetch-Site", "same-site").status())
        .isEqualTo(403);
  }

  @Test
  void ourOwnPageIsLetIn() {
    assertThat(
            rosa.send(
                    "POST",
                    site + "/edits",
                    TestServer.json(TestServer.move(1, "A2", 15, 12)),
                    "Origin",
                    "http://127.0.0.1:" + server.port(),
                    "Sec-Fetch-Site",
                    "same-origin")
                .status())
        .isEqualTo(200);
  }

  /** A page whose name is made to lead to this machine. */
  @Test
  void aHostThatIsNotOursIsRefused() throws IOException {
    for (String host :
        List.of("evil.example", "evil.example:" + server.port(), "", "localhost.evil.example")) {
      assertThat(server.raw("GET /api/me HTTP/1.1", "Host: " + host))
          .as(host)
          .doesNotContain("HTTP/1.1 200")
          .doesNotContain("csrf\":\"");
    }
    assertThat(server.raw("GET /api/me HTTP/1.1", "Host: grove.example.org"))
        .contains("HTTP/1.1 200");
    try (TestServer local = TestServer.local(folder.resolve("local"))) {
      assertThat(local.raw("GET /api/me HTTP/1.1", "Host: evil.example:" + local.port()))
          .contains("HTTP/1.1 403")
          .contains("\"host\"");
      // Numbers lead nowhere else, but on this machine alone there is no need for others.
      assertThat(local.raw("GET /api/me HTTP/1.1", "Host: 192.168.1.5")).contains("HTTP/1.1 403");
      assertThat(local.raw("GET /api/me HTTP/1.1", "Host: localhost")).contains("HTTP/1.1 200");
    }
  }

  @Test
  void thisMachineAloneNeedsNoSigningInButTheSecretWordAllTheSame() {
    try (TestServer local = TestServer.local(folder.resolve("local"))) {
      Browser browser = local.browser();
      assertThat(browser.get("/api/me").json().path("loggedIn").asBoolean()).isTrue();
      browser.csrf = "";
      assertThat(browser.post("/api/sites", Map.of("example", "demo")).code()).isEqualTo("csrf");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/static/../Guard.class",
        "/static/../../../../META-INF/MANIFEST.MF",
        "/static/%2e%2e/Guard.class",
        "/static/..%2fGuard.class",
        "/static/%2e%2e%2f%2e%2e%2fstore/Store.class",
        "/static//etc/passwd",
        "/static/..\\Guard.class",
        "/static/a%00.js",
        "/webjars/ol/..%2f..%2f..%2fmaven",
        "/webjars/ol/ol.js.map",
        "/api/copies/..%2f..%2fgrovewright.db/restore",
      })
  void pathsLeadNowhereElse(String path) throws IOException {
    assertThat(server.raw("GET " + path + " HTTP/1.1", "Host: localhost"))
        .containsPattern("^HTTP/1.1 (400|404|401|405)")
        .doesNotContain("Manifest-Version")
        .doesNotContain("root:");
  }

  @Test
  void aRestoreTakesOnlyTheNameOfACopy() {
    Answer answer = rosa.post("/api/copies/..%2Fgrovewright.db/restore", Map.of());
    assertThat(answer.status()).isIn(400, 404);
    assertThat(Files.exists(folder.resolve("grovewright.db"))).isTrue();
  }

  @Test
  void whatIsTooLargeIsRefused() {
    Answer answer =
        rosa.post("/api/sites", Map.of("description", "x".repeat((int) WebServer.LARGEST_REQUEST)));
    assertThat(answer.status()).isEqualTo(413);
    assertThat(answer.code()).isEqualTo("too-large");
  }

  @Test
  void manyNamesFromOneAddressAreStoppedToo() {
    Browser thief = server.browser();
    int status = 0;
    for (int i = 0; i <= Limits.TRIES_PER_ADDRESS && status != 429; i++) {
      status = thief.login("name " + i, "some password").status();
    }
    assertThat(status).isEqualTo(429);
  }

  @Test
  void theCookieIsOutOfReach() {
    Browser browser = server.browser();
    Answer answer = browser.login("Rosa", TestServer.PASSWORD);
    String cookie = answer.header("Set-Cookie").orElseThrow();
    assertThat(cookie).contains("HttpOnly").contains("SameSite=Strict").contains("Path=/");
    assertThat(cookie).doesNotContain("Domain");
    assertThat(answer.text()).doesNotContain(cookie.split("[=;]")[1]);
    Answer behindProxy =
        browser.send(
            "POST",
            "/api/login",
            TestServer.json(Map.of("name", "Rosa", "password", TestServer.PASSWORD)),
            "X-Forwarded-Proto",
            "https");
    assertThat(behindProxy.header("Set-Cookie").orElse("")).contains("Secure");
  }

  @Test
  void everyAnswerIsFencedIn() {
    for (String path : List.of("/", "/static/none.js", "/api/me", site, "/api/none")) {
      Answer answer = rosa.get(path);
      assertThat(answer.header("Content-Security-Policy").orElse(""))
          .as(path)
          .contains("default-src 'none'")
          .contains("script-src 'self'")
          .contains("frame-ancestors 'none'")
          .doesNotContain("unsafe");
      assertThat(answer.header("X-Content-Type-Options")).contains("nosniff");
      assertThat(answer.header("X-Frame-Options")).contains("DENY");
      assertThat(answer.header("Access-Control-Allow-Origin")).isEmpty();
    }
    assertThat(rosa.get(site).header("Cache-Control")).contains("no-store");
  }

  @Test
  void yamlBombsAreRefused() {
    StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
    for (int i = 1; i < 10; i++) {
      bomb.append("a" + i + ": &a" + i + " [")
          .append(("*a" + (i - 1) + ", ").repeat(9))
          .append("x]\n");
    }
    Answer laughs = rosa.post("/api/sites", Map.of("description", bomb.toString()));
    assertThat(laughs.status()).isEqualTo(422);
    assertThat(laughs.json().path("message").asText()).contains("alias");
    Answer replaced =
        rosa.post(
            site + "/edits",
            Map.of(
                "onVersion",
                1,
                "label",
                "x",
                "operations",
                List.of(Map.of("type", "replace", "text", bomb.toString()))));
    assertThat(replaced.status()).isEqualTo(422);
    Answer deep = rosa.post("/api/check", Map.of("description", "a: " + "[".repeat(10_000)));
    assertThat(deep.json().path("ok").asBoolean()).isFalse();
    Answer tagged =
        rosa.post(
            "/api/check", Map.of("description", "site: !!java.net.URL [http://evil.example]"));
    assertThat(tagged.json().path("ok").asBoolean()).isFalse();
    assertThat(rosa.get(site).json().path("version").asLong()).isEqualTo(1);
  }

  @Test
  void descriptionsCannotReadFilesOfTheMachine() throws IOException {
    Path secret = folder.resolve("secret.geojson");
    Files.writeString(
        secret,
        "{\"type\":\"Polygon\",\"coordinates\":[[[0,1],[0.001,1],[0.001,1.001],[0,1]]]}",
        StandardCharsets.UTF_8);
    Answer answer =
        rosa.post(
            site + "/edits",
            Map.of(
                "onVersion",
                1,
                "label",
                "x",
                "operations",
                List.of(
                    Map.of("type", "remove", "path", "/site/boundary"),
                    Map.of(
                        "type",
                        "set",
                        "path",
                        "/site/boundary_geojson",
                        "value",
                        secret.toString()))));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.text()).contains("cannot be read here");
  }

  /** Signs that a text may hold, but XML and the letters of a PDF do not have. */
  @ParameterizedTest
  @ValueSource(strings = {"\\a", "\\x1b", "\\uFFFE", "\\0", "\\u202E", "\\U0001F333"})
  void strangeSignsInNamesSpoilNoExport(String sign) throws Exception {
    Object text =
        rosa.get(site + "/description")
            .json()
            .path("text")
            .asText()
            .replaceFirst("name: .*", "name: \"A" + sign.replace("\\", "\\\\") + "B\"");
    Answer made = rosa.post("/api/sites", Map.of("description", text));
    if (made.status() == 422) {
      assertThat(made.json().path("message").asText()).contains("cannot be printed");
      return;
    }
    assertThat(made.status()).as(made.text()).isEqualTo(201);
    String export = "/api/sites/" + made.json().path("id").asText() + "/export/";
    for (String file :
        List.of(
            "map.svg",
            "map.pdf",
            "report.html",
            "report.pdf",
            "site.gpx",
            "site.geojson",
            "calendar.ics",
            "shopping.csv")) {
      Answer answer = rosa.get(export + file);
      assertThat(answer.status()).as(file + answer.text()).isEqualTo(200);
      if (file.endsWith("svg") || file.endsWith("gpx")) {
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(answer.bytes()));
      }
    }
  }
}
