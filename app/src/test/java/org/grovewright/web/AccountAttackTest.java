package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.javalin.http.HandlerType;
import io.javalin.router.Endpoint;
import io.javalin.security.Roles;
import io.javalin.security.RouteRole;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What somebody without the right to may try, as far as accounts, roles and the database are asked.
 */
class AccountAttackTest extends SharedSite {
  /** The address of another empty database. */
  StoreAddress fresh() throws Exception {
    return new StoreAddress.Folder(folder.resolve("fresh"));
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
  void aHelperWritesTheJournalAndTicksButLeavesThePlanAndAViewerReadsThemAll() {
    Browser helga = server.browser("Helga");
    assertThat(helga.post(site + "/edits", TestServer.move(1, "A2", 15, 12)).status())
        .isEqualTo(403);
    assertThat(helga.get(site).json().path("readOnly").asBoolean()).isTrue();
    assertThat(helga.get(site).json().path("journalReadOnly").asBoolean()).isFalse();
    Map<String, Object> note =
        Map.of(
            "id", "11111111-aaaa",
            "day", "2027-04-01",
            "kind", "note",
            "subjectKind", "plant",
            "subject", "A2",
            "note", "first flowers");
    assertThat(helga.post(site + "/journal/sync", Map.of("changes", List.of(note))).status())
        .isEqualTo(200);
    Map<String, Object> tick =
        Map.of("item", "pipe.pe-16", "ticked", true, "at", "2027-03-01T07:00:00Z");
    assertThat(helga.put(site + "/ticks", Map.of("ticks", List.of(tick))).status()).isEqualTo(200);
    Browser viktor = server.browser("Viktor");
    assertThat(viktor.get(site + "/scene").status()).isEqualTo(200);
    assertThat(viktor.get(site).json().path("journalReadOnly").asBoolean()).isTrue();
    Answer news = viktor.get(site + "/journal/sync?since=0");
    assertThat(news.json().path("entries")).hasSize(1);
    assertThat(news.json().path("entries").get(0).path("author").asText()).isEqualTo("Helga");
    long upTo = news.json().path("upTo").asLong();
    assertThat(viktor.get(site + "/journal/sync?since=" + upTo).json().path("entries")).isEmpty();
    assertThat(viktor.get(site + "/journal/sync?since=-1").status()).isEqualTo(422);
    assertThat(viktor.post(site + "/journal/sync", Map.of("changes", List.of(note))).status())
        .isEqualTo(403);
    assertThat(viktor.get(site + "/ticks").json().path("ticks")).hasSize(1);
    assertThat(rosa.get(site).json().path("version").asLong()).isEqualTo(1);
  }

  @Test
  void itRefusesToServeOthersBeforeThereIsAPassword() throws Exception {
    try (Store store = Store.open(fresh(), new HandClock("2027-03-01T08:00:00Z"))) {
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

  /** Signs that one database keeps and another does not, and that no keyboard types. */
  @ParameterizedTest
  @ValueSource(strings = {"\\u0000", "\\ud800", "\\udc00x"})
  void signsThatNoTextHasAreRefusedByField(String sign) {
    String bad = "\"A" + sign + "\"";
    String note =
        "{\"id\":\"11111111-aaaa\",\"day\":\"2027-04-01\",\"kind\":\"note\",\"subjectKind\":"
            + "\"plant\",\"subject\":\"A2\",\"note\":";
    String move = "{\"type\":\"movePlant\",\"plant\":\"A2\",\"x\":15,\"y\":12}";
    Map<String, List<String>> requests = new LinkedHashMap<>();
    requests.put(
        "name", List.of("POST", "/api/accounts", "{\"password\":\"long enough\",\"name\":" + bad));
    requests.put("theme", List.of("PUT", "/api/me/settings", "{\"theme\":" + bad));
    requests.put(
        "changes[0].note",
        List.of("POST", site + "/journal/sync", "{\"changes\":[" + note + bad + "}]"));
    requests.put(
        "ticks[0].item", List.of("PUT", site + "/ticks", "{\"ticks\":[{\"item\":" + bad + "}]"));
    requests.put(
        "label",
        List.of(
            "POST",
            site + "/edits",
            "{\"onVersion\":1,\"operations\":[" + move + "],\"label\":" + bad));
    requests.put(
        "clientId",
        List.of(
            "POST",
            site + "/edits",
            "{\"onVersion\":1,\"operations\":[" + move + "],\"clientId\":" + bad));
    requests.put(
        "operations[0].value",
        List.of(
            "POST",
            site + "/edits",
            "{\"onVersion\":1,\"operations\":[{\"type\":\"set\",\"path\":\"/site/name\",\"value\":"
                + bad
                + "}]"));
    requests.put("description", List.of("POST", "/api/sites", "{\"description\":" + bad));
    requests.forEach(
        (field, request) -> {
          Answer answer = rosa.send(request.get(0), request.get(1), request.get(2) + "}");
          assertThat(answer.status()).as(field + answer.text()).isEqualTo(422);
          assertThat(answer.json().path("field").asText()).isEqualTo(field);
        });
    assertThat(
            server
                .browser()
                .send("POST", "/api/login", "{\"name\":\"Rosa\",\"password\":" + bad + "}")
                .status())
        .isEqualTo(422);
    assertThat(rosa.get(site).json().path("version").asLong()).isEqualTo(1);
  }

  /** Else the next request on the connection is lost (RFC 9112, section 9.6). */
  @Test
  void saysThatTheConnectionIsClosedAfterAnAddressThatCannotBeRead() {
    assertThat(rosa.get("/calendar/%00.ics").header("Connection")).contains("close");
    assertThat(rosa.get("/api/me").header("Connection")).isEmpty();
  }

  @Test
  void signsThatNoTextHasAreNoBugWhereverTheyStand() {
    String zero = "site:\n  name: \"A\\0\"\n";
    for (Answer answer :
        List.of(
            rosa.get("/api/sites/x%00y"),
            rosa.get("/api/sites/%ed%a0%80"),
            rosa.get(site + "/journal/%00/photo"),
            rosa.get(site + "/pages/plant/%00"),
            rosa.get("/calendar/%00.ics"),
            rosa.post("/api/sites", Map.of("example", "demo", "name", "A\u0001")),
            rosa.post("/api/sites", Map.of("description", zero)),
            rosa.post(
                site + "/edits",
                Map.of(
                    "onVersion",
                    1,
                    "operations",
                    List.of(
                        Map.of(
                            "type",
                            "replace",
                            "text",
                            rosa.get(site + "/description")
                                .json()
                                .path("text")
                                .asText()
                                .replaceFirst("name: .*", "name: \"A\\\\0\""))))))) {
      assertThat(answer.status()).as(answer.text()).isLessThan(500);
    }
    assertThat(rosa.get("/api/sites").status()).isEqualTo(200);
  }
}
