package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.javalin.http.HandlerType;
import io.javalin.router.Endpoint;
import io.javalin.security.Roles;
import io.javalin.security.RouteRole;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import org.grovewright.store.HandClock;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.TestServer.Answer;
import org.grovewright.web.TestServer.Browser;
import org.grovewright.web.api.Access;
import org.grovewright.web.api.Limits;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What somebody else's page, or somebody without the right to, may try. */
class AttackTest {
  @TempDir Path folder;
  private TestServer server;
  private Browser rosa;
  private String site;

  @BeforeEach
  void start() {
    server = TestServer.open(folder);
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

  private record Route(String method, String path, Access access) {}

  /** Every route there is, with the site's id filled in. */
  private List<Route> routes() {
    List<Route> routes = new ArrayList<>();
    for (Endpoint endpoint : server.server().endpoints()) {
      if (!Set.of(HandlerType.GET, HandlerType.POST, HandlerType.PUT, HandlerType.DELETE)
              .contains(endpoint.method)
          || !endpoint.path.startsWith("/api/")) {
        continue;
      }
      Set<RouteRole> roles = endpoint.metadata(Roles.class).getRoles();
      assertThat(roles).as("who may use " + endpoint.path).hasSize(1);
      String path =
          endpoint.path.replace("/api/sites/{id}", site).replaceAll("\\{[a-z]+\\}", "thing");
      routes.add(new Route(endpoint.method.name(), path, (Access) roles.iterator().next()));
    }
    assertThat(routes).hasSizeGreaterThan(30);
    return routes;
  }

  private static Answer call(Browser browser, Route route) {
    return browser.send(route.method(), route.path(), route.method().equals("GET") ? null : "{}");
  }

  @Test
  void withoutSigningInOnlyWhatAnybodyMaySeeIsAnswered() {
    Browser nobody = server.browser();
    for (Route route : routes()) {
      if (route.access() != Access.ANYBODY) {
        assertThat(call(nobody, route).status()).as(route.toString()).isEqualTo(401);
      }
    }
    assertThat(nobody.get("/api/me").json().path("needsLogin").asBoolean()).isTrue();
    assertThat(routes().stream().filter(r -> r.access() == Access.ANYBODY).map(Route::path))
        .containsExactlyInAnyOrder("/api/me", "/api/login", "/api/health", "/api/texts/thing");
  }

  @Test
  void aRoleTooLowIsRefusedOnEveryRoute() {
    Map<String, Set<Access>> refused =
        Map.of(
            "Viktor", Set.of(Access.HELPER, Access.OWNER, Access.KEEPER),
            "Helga", Set.of(Access.OWNER, Access.KEEPER),
            "Stan", Set.of(Access.KEEPER));
    refused.forEach(
        (name, accesses) -> {
          Browser browser = server.browser(name);
          for (Route route : routes()) {
            if (accesses.contains(route.access())) {
              Answer answer = call(browser, route);
              assertThat(answer.status()).as(name + " " + route).isEqualTo(403);
              assertThat(answer.code()).isEqualTo("forbidden");
            }
          }
        });
    assertThat(rosa.get(site).json().path("version").asLong()).isEqualTo(1);
  }

  @Test
  void whoHasNoPartInASiteDoesNotEvenLearnOfIt() {
    Browser stan = server.browser("Stan");
    for (Route route : routes()) {
      if (route.path().startsWith(site)) {
        assertThat(call(stan, route).status()).as(route.toString()).isEqualTo(404);
      }
    }
    assertThat(stan.get("/api/sites").json()).isEmpty();
  }

  @Test
  void aHelperMayChangeThePlanAndAViewerMayLook() {
    assertThat(
            server
                .browser("Helga")
                .post(site + "/edits", TestServer.move(1, "A2", 15, 12))
                .status())
        .isEqualTo(200);
    Browser viktor = server.browser("Viktor");
    assertThat(viktor.get(site + "/scene").status()).isEqualTo(200);
    assertThat(viktor.get(site).json().path("readOnly").asBoolean()).isTrue();
  }

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

  @Test
  void itRefusesToServeOthersBeforeThereIsAPassword() {
    try (Store store =
        Store.open(
            new StoreAddress.Folder(folder.resolve("fresh")),
            new HandClock("2027-03-01T08:00:00Z"))) {
      for (ServerSettings settings :
          List.of(
              new ServerSettings("0.0.0.0", 0, Optional.empty(), List.of()),
              new ServerSettings("127.0.0.1", 0, Optional.empty(), List.of("grove.example.org")))) {
        assertThatThrownBy(
                () -> WebServer.start(settings, store, new CompletableFuture<>(), bug -> {}))
            .isInstanceOf(CannotServeException.class)
            .hasMessageContaining("grovewright password");
      }
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
  void passwordsCannotBeTriedWithoutEnd() {
    Browser thief = server.browser();
    for (int i = 0; i < Limits.TRIES_PER_NAME - 1; i++) {
      assertThat(thief.login("Rosa", "guess number " + i).code()).isEqualTo("wrong-password");
    }
    List<Integer> statuses = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      statuses.add(thief.login("Rosa", "another guess " + i).status());
    }
    assertThat(statuses).contains(429);
    assertThat(thief.login("Rosa", TestServer.PASSWORD).status()).isEqualTo(429);
    assertThat(thief.login(" ROSA ", TestServer.PASSWORD).status()).isEqualTo(429);
    server.clock.pass(Duration.ofMinutes(16));
    assertThat(thief.login("Rosa", TestServer.PASSWORD).status()).isEqualTo(200);
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
  void aWrongNameAndAWrongPasswordAreAnsweredAlike() {
    Browser thief = server.browser();
    assertThat(thief.login("Rosa", "wrong password").text())
        .isEqualTo(thief.login("Nobody", "wrong password").text());
  }

  @Test
  void changesCannotBeMadeWithoutEnd() {
    int status = 0;
    for (int i = 0; i <= Limits.CHANGES_PER_MINUTE && status != 429; i++) {
      status = rosa.put("/api/me/settings", Map.of("theme", "dark")).status();
    }
    assertThat(status).isEqualTo(429);
    server.clock.pass(Duration.ofMinutes(1));
    assertThat(rosa.put("/api/me/settings", Map.of("theme", "dark")).status()).isEqualTo(200);
  }

  @Test
  void sessionsEnd() {
    assertThat(rosa.get(site).status()).isEqualTo(200);
    server.clock.pass(Duration.ofDays(8));
    assertThat(rosa.get(site).status()).isEqualTo(401);
    assertThat(rosa.get("/api/me").json().path("loggedIn").asBoolean()).isFalse();
    Browser helga = server.browser("Helga");
    String old = helga.cookie;
    assertThat(helga.post("/api/logout", Map.of()).status()).isEqualTo(204);
    helga.cookie = old;
    assertThat(helga.get(site).status()).isEqualTo(401);
    helga.cookie = "grovewright_session=made-up";
    assertThat(helga.get(site).status()).isEqualTo(401);
  }

  @Test
  void whoChangesItsPasswordIsSignedOutEverywhere() {
    Browser helga = server.browser("Helga");
    Browser elsewhere = server.browser("Helga");
    assertThat(
            helga
                .put("/api/me/password", Map.of("old", "not this one", "password", "another pass"))
                .status())
        .isEqualTo(422);
    assertThat(
            helga
                .put(
                    "/api/me/password",
                    Map.of("old", TestServer.PASSWORD, "password", "another pass phrase"))
                .status())
        .isEqualTo(204);
    assertThat(elsewhere.get(site).status()).isEqualTo(401);
    assertThat(elsewhere.login("Helga", TestServer.PASSWORD).status()).isEqualTo(401);
    assertThat(elsewhere.login("Helga", "another pass phrase").status()).isEqualTo(200);
  }

  @Test
  void anAccountThatIsTakenAwayIsOutAtOnce() {
    Browser viktor = server.browser("Viktor");
    String id = viktor.get("/api/me").json().path("account").path("id").asText();
    assertThat(viktor.get(site).status()).isEqualTo(200);
    Browser owner = server.browser("Rosa");
    assertThat(owner.delete("/api/accounts/" + id).status()).isEqualTo(204);
    assertThat(viktor.get(site).status()).isEqualTo(401);
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
  void scriptsInNamesComeOutAsText() {
    String script = "<script>alert(1)</script><img src=x onerror=alert(1)>";
    Answer saved =
        rosa.post(
            site + "/edits",
            Map.of(
                "onVersion",
                1,
                "label",
                script,
                "operations",
                List.of(
                    Map.of("type", "set", "path", "/site/name", "value", script),
                    Map.of("type", "set", "path", "/rows/0/plants/0/cultivar", "value", script))));
    assertThat(saved.status()).as(saved.text()).isEqualTo(200);
    assertThat(saved.header("Content-Type").orElse("")).startsWith("application/json");
    Answer report = rosa.get(site + "/export/report.html?show=1");
    assertThat(report.text()).doesNotContain("<script>alert").doesNotContain("<img src=x");
    assertThat(report.header("Content-Security-Policy").orElse(""))
        .contains("sandbox")
        .doesNotContain("allow-same-origin");
    Answer map = rosa.get(site + "/export/map.svg");
    assertThat(map.text()).doesNotContain("<script>alert").doesNotContain("<img src=x");
    assertThat(map.header("Content-Disposition").orElse("")).startsWith("attachment");
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

  @Test
  void brokenRequestsAreAnsweredInWords() {
    for (String body :
        List.of("", "[]", "{", "\"x\"", "{\"onVersion\": 1e400}", "[".repeat(5000))) {
      Answer answer = rosa.send("POST", site + "/edits", body);
      assertThat(answer.status()).as(body).isIn(400, 422);
      assertThat(answer.json().path("message").asText()).isNotBlank();
    }
    for (String operation :
        List.of(
            "{\"type\":\"burn\"}",
            "{\"type\":\"set\",\"path\":\"nowhere\",\"value\":1}",
            "{\"type\":\"movePlant\",\"plant\":\"A1\",\"x\":\"1\",\"y\":2}",
            "{\"type\":\"movePlant\",\"plant\":\"nobody\",\"x\":1,\"y\":2}",
            "{\"type\":\"remove\",\"path\":\"/rows/99\"}",
            "{\"type\":\"set\",\"path\":\"\",\"value\":\"x\"}")) {
      Answer answer =
          rosa.send(
              "POST", site + "/edits", "{\"onVersion\":1,\"operations\":[" + operation + "]}");
      assertThat(answer.status()).as(operation + answer.text()).isEqualTo(422);
    }
  }
}
