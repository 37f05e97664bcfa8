package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.grovewright.store.HandClock;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.TestServer.Answer;
import org.grovewright.web.TestServer.Browser;
import org.grovewright.web.api.Limits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the server refuses, it refuses in the language of the one who asked. */
class SpanishRefusalsTest {
  @TempDir Path folder;

  private static String message(Answer answer) {
    return answer.json().path("message").asText();
  }

  private static Browser spanish(TestServer server) {
    Browser browser = server.browser();
    Answer chosen = browser.put("/api/me/settings", Map.of("language", "es"));
    assertThat(chosen.status()).as(chosen.text()).isEqualTo(200);
    return browser;
  }

  private static Map<String, Object> edit(long onVersion, Map<String, Object> operation) {
    return Map.of("onVersion", onVersion, "operations", List.of(operation));
  }

  @Test
  void whoeverChoseSpanishIsRefusedInSpanishAndTheFieldIsNamed() {
    try (TestServer server = TestServer.local(folder)) {
      Browser browser = spanish(server);
      String site = "/api/sites/" + TestServer.demo(browser);

      Answer noPlant =
          browser.post(site + "/edits", edit(1, Map.of("type", "removePlant", "plant", "Z9")));
      assertThat(noPlant.status()).isEqualTo(422);
      assertThat(message(noPlant)).isEqualTo("No hay ninguna planta «Z9».");

      Answer noRole = browser.post(site + "/members", Map.of("name", "x", "role", "king"));
      assertThat(noRole.json().path("field").asText()).isEqualTo("role");
      assertThat(message(noRole)).startsWith("«role» debe ser");

      Answer nobody = browser.post(site + "/members", Map.of("name", "Ned", "role", "helper"));
      assertThat(nobody.json().path("field").asText()).isEqualTo("name");
      assertThat(message(nobody))
          .isEqualTo("Nadie con ese nombre tiene una cuenta aquí; añádala primero.");

      Answer amount =
          browser.post(
              site + "/journal/sync",
              Map.of(
                  "changes",
                  List.of(
                      Map.of(
                          "id",
                          "entry-0001",
                          "day",
                          "2027-03-01",
                          "kind",
                          "rain",
                          "amount",
                          "12 kg"))));
      assertThat(amount.json().path("field").asText()).isEqualTo("changes[0].amount");
      assertThat(message(amount))
          .isEqualTo("«12 kg» es un peso; dé una cantidad de lluvia, por ejemplo 20 mm o 0.8 in.");

      Answer file =
          browser.post("/api/exchange/read", Map.of("format", "geojson", "text", "{\"a\":\n}"));
      assertThat(file.json().path("field").asText()).isEqualTo("text");
      assertThat(message(file)).isEqualTo("El archivo deja de ser JSON en su línea 2.");

      assertThat(message(browser.post(site + "/undo", Map.of("onVersion", 1))))
          .isEqualTo("No hay ningún cambio anterior que deshacer.");
      Answer stale = browser.post(site + "/edits", TestServer.move(7, "A2", 15, 12));
      assertThat(stale.status()).isEqualTo(409);
      assertThat(message(stale)).startsWith("Alguien guardó «").contains("versión más nueva");
      assertThat(message(browser.get("/api/sites/none"))).isEqualTo("Ese terreno no existe.");
      assertThat(message(browser.get("/api/nothing/here")))
          .isEqualTo("En esta dirección no hay nada.");
      assertThat(message(browser.send("POST", "/api/sites", "{")))
          .isEqualTo("La petición no es JSON correcto.");
      assertThat(message(browser.send("POST", "/api/sites", "{}", "X-CSRF", "old")))
          .isEqualTo(
              "Esta página es de antes de que el programa se reiniciara; cárguela de nuevo.");
      assertThat(message(browser.post("/api/accounts", Map.of("name", "Ana", "password", "short"))))
          .startsWith("La contraseña debe tener de 10 a ");
      assertThat(server.bugs).isEmpty();
    }
  }

  @Test
  void whoIsNotSignedInIsRefusedInTheLanguageThatTheBrowserAsksFor() {
    try (TestServer server = TestServer.open(folder)) {
      Browser browser = server.browser();
      String body = TestServer.json(Map.of("name", "Rosa", "password", "wrong horse battery"));
      assertThat(
              message(browser.send("POST", "/api/login", body, "Accept-Language", "es-MX, en;q=1")))
          .isEqualTo("Este nombre y esta contraseña no van juntos.");
      assertThat(message(browser.send("POST", "/api/login", body)))
          .isEqualTo("This name and this password do not go together.");
      assertThat(message(browser.send("GET", "/api/sites", null, "Accept-Language", "es")))
          .isEqualTo("Inicie sesión para seguir; no se ha cambiado nada.");
      Answer last = null;
      for (int i = 0; i < Limits.TRIES_PER_NAME; i++) {
        last = browser.send("POST", "/api/login", body, "Accept-Language", "es");
      }
      assertThat(last.status()).isEqualTo(429);
      assertThat(message(last)).startsWith("Se ha probado la contraseña demasiadas veces.");
    }
  }

  /** The language of the account stands in the very database that cannot be read. */
  @Test
  void aDamagedDatabaseSaysSoInTheLanguageOfTheBrowser() throws IOException {
    StoreAddress.Folder address = new StoreAddress.Folder(folder);
    HandClock clock = new HandClock("2027-03-01T08:00:00Z");
    try (TestServer server = TestServer.on(Store.open(address, clock), clock)) {
      TestServer.demo(spanish(server));
    }
    try (RandomAccessFile raw = new RandomAccessFile(address.file().toFile(), "rw")) {
      byte[] nonsense = new byte[4096];
      Arrays.fill(nonsense, (byte) 0x5a);
      for (long at = 4096; at + 4096 <= raw.length(); at += 4096) {
        raw.seek(at);
        raw.write(nonsense);
      }
    }
    try (TestServer server = TestServer.on(Store.open(address, clock), clock)) {
      Browser browser = server.browser();
      String body = TestServer.json(Map.of("example", "demo"));
      Answer refused = browser.send("POST", "/api/sites", body, "Accept-Language", "es");
      assertThat(refused.status()).isEqualTo(503);
      assertThat(message(refused)).contains("está dañado", "copias diarias");
      Answer me = browser.send("GET", "/api/me", null, "Accept-Language", "es");
      assertThat(me.json().path("trouble").path("message").asText()).contains("está dañado");
    }
  }

  @Test
  void mistakesOfADescriptionAreToldInSpanishByTheirFields() {
    try (TestServer server = TestServer.local(folder)) {
      Browser browser = spanish(server);
      String site = "/api/sites/" + TestServer.demo(browser);
      Map<String, Object> height =
          Map.of("type", "set", "path", "/site/fixed/0/height", "value", "3 gal");
      for (Answer refused :
          List.of(
              browser.post(site + "/edits", edit(1, height)),
              browser.post(site + "/try", Map.of("operations", List.of(height))))) {
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.json().path("field").asText()).isEqualTo("site.fixed[0].height");
        String told =
            "«3 gal» es un volumen; dé una longitud, por ejemplo 18 m, 30 cm, 60 ft o 6 in";
        assertThat(message(refused)).isEqualTo(told);
        assertThat(refused.json().path("problems").get(0).path("message").asText()).isEqualTo(told);
      }
      Answer outside =
          browser.post(
              site + "/edits",
              edit(1, Map.of("type", "addPlant", "species", "fig", "x", 4000, "y", 1)));
      assertThat(outside.json().path("problems").toString())
          .contains("está fuera del terreno", "el día en que se plantó")
          .doesNotContain("outside");
      Answer checked = browser.post("/api/check", Map.of("description", "site:\n\tname: x\n"));
      assertThat(checked.json().path("problems").get(0).path("message").asText())
          .isEqualTo(
              "hay un tabulador donde hacen falta espacios; haga la sangría solo con espacios");
      Answer first =
          browser.post(
              "/api/start",
              Map.of(
                  "name",
                  "Huerta",
                  "width",
                  "30",
                  "length",
                  "20",
                  "supply",
                  "house-tap",
                  "bucketVolume",
                  "500",
                  "bucketSeconds",
                  "1",
                  "plants",
                  List.of(Map.of("species", "fig", "count", "2"))));
      assertThat(first.json().path("problems").toString())
          .contains("\"field\":\"bucketSeconds\"", "Es muy poco tiempo para ese volumen");
      assertThat(server.bugs).isEmpty();
    }
  }

  @Test
  void thePickersNamePlantsAndGoodsInTheLanguageToo() {
    try (TestServer server = TestServer.local(folder)) {
      Browser browser = spanish(server);
      assertThat(browser.get("/api/catalogue/species").text())
          .contains("\"name\":\"Aguacate\"")
          .doesNotContain("\"name\":\"Avocado\"");
      assertThat(browser.get("/api/catalogue/textures").text()).contains("\"name\":\"Franco\"");
      assertThat(browser.get("/api/catalogue/pipes").text()).contains("Tubo de goteo");
      browser.put("/api/me/settings", Map.of("language", "en"));
      assertThat(browser.get("/api/catalogue/species").text()).contains("\"name\":\"Avocado\"");
    }
  }
}
