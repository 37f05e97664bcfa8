package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.TestServer.Answer;
import org.grovewright.web.TestServer.Browser;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is brought in from files and saved, and the calendar's address that is kept. */
class SavedExchangeTest {
  @TempDir Path folder;
  private TestServer server;
  private Browser browser;
  private String site;

  /** The address of an empty database. */
  StoreAddress empty() throws Exception {
    return new StoreAddress.Folder(folder);
  }

  @BeforeEach
  void start() throws Exception {
    server = TestServer.local(empty());
    browser = server.browser();
    site = "/api/sites/" + TestServer.demo(browser);
  }

  @AfterEach
  void stop() {
    assertThat(server.bugs).isEmpty();
    server.close();
  }

  @Test
  void aDescriptionGoesOutAndComesBackWithoutLoss() {
    browser.post(site + "/edits", TestServer.move(1, "A2", 15, 12));
    String text = browser.get(site + "/export/description.yaml").text();
    assertThat(text).contains("# the sketch's up direction points 12 degrees east");
    Answer again = browser.post("/api/sites", Map.of("description", text));
    String copy = "/api/sites/" + again.json().path("id").asText();
    assertThat(browser.get(copy + "/export/description.yaml").text()).isEqualTo(text);
    assertThat(browser.get(copy + "/export/plan.json").text())
        .isEqualTo(browser.get(site + "/export/plan.json").text());
  }

  @Test
  void whatMovedInAFileIsMovedAndWhatIsNewIsPlanted() {
    String file = browser.get(site + "/export/site.geojson").text();
    browser.post(site + "/edits", TestServer.move(1, "A2", 15, 12));
    String with =
        file.replaceFirst(
            "\"features\" : \\[ ",
            "\"features\" : [ {\"type\":\"Feature\",\"properties\":{\"name\":\"Lemon 3\"},"
                + "\"geometry\":{\"type\":\"Point\",\"coordinates\":[152.60030,-30.39990]}},"
                + "{\"type\":\"Feature\",\"properties\":{\"name\":\"Triffid\"},"
                + "\"geometry\":{\"type\":\"Point\",\"coordinates\":[152.60030,-30.39991]}}, ");
    assertThat(with).isNotEqualTo(file);
    JsonNode back =
        browser.post(site + "/import", Map.of("format", "geojson", "text", with)).json();
    assertThat(back.path("operations"))
        .anySatisfy(
            one -> {
              assertThat(one.path("type").asText()).isEqualTo("movePlant");
              assertThat(one.path("plant").asText()).isEqualTo("A2");
              assertThat(one.path("x").asDouble())
                  .isCloseTo(14, org.assertj.core.api.Assertions.within(1e-5));
            });
    assertThat(back.path("operations"))
        .anySatisfy(
            one -> {
              assertThat(one.path("type").asText()).isEqualTo("addPlant");
              assertThat(one.path("species").asText()).isEqualTo("lemon");
            });
    assertThat(back.path("leftOut").toString()).contains("Triffid is of no species");
    Answer saved =
        browser.post(
            site + "/edits",
            Map.of(
                "onVersion",
                2,
                "label",
                "Brought in a file",
                "operations",
                back.path("operations")));
    assertThat(saved.status()).as(saved.text()).isEqualTo(200);
  }

  @Test
  void aCalendarCanBeSubscribedToByItsSecretAddressAlone() throws IOException {
    String path = browser.post(site + "/feed", Map.of()).json().path("path").asText();
    String answer = server.raw("GET " + path + " HTTP/1.1", "Host: localhost");
    assertThat(answer).contains("HTTP/1.1 200").contains("text/calendar").contains("BEGIN:VEVENT");
    assertThat(browser.delete(site + "/feed").status()).isEqualTo(204);
    assertThat(server.raw("GET " + path + " HTTP/1.1", "Host: localhost")).contains("HTTP/1.1 404");
    assertThat(browser.get("/calendar/x.ics").status()).isEqualTo(404);
  }
}
