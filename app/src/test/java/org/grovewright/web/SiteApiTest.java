package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.TestServer.Answer;
import org.grovewright.web.TestServer.Browser;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SiteApiTest {
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

  private static JsonNode plant(JsonNode scene, String id) {
    for (JsonNode plant : scene.path("plants")) {
      if (plant.path("id").asText().equals(id)) {
        return plant;
      }
    }
    throw new AssertionError("no plant " + id);
  }

  @Test
  void theSceneShowsTheWholePlan() {
    JsonNode scene = browser.get(site + "/scene?wait=true").json();
    assertThat(scene.path("pending").asBoolean()).isFalse();
    assertThat(scene.path("outline")).hasSize(4);
    assertThat(scene.path("fixtures")).hasSize(5);
    assertThat(scene.path("rows")).hasSize(2);
    assertThat(scene.path("pipes")).isNotEmpty();
    assertThat(scene.path("emitters")).isNotEmpty();
    JsonNode plant = plant(scene, "A2");
    assertThat(plant.path("species").asText()).isEqualTo("mandarin");
    assertThat(plant.path("x").asDouble()).isEqualTo(14);
    assertThat(plant.path("movable").asBoolean()).isTrue();
    assertThat(plant.path("crownDiameterByYear")).hasSize(11);
    assertThat(plant.path("needLitresPerWeekPeak").asDouble()).isPositive();
    assertThat(plant.path("zone").asText()).isEqualTo("zone-1");
  }

  @Test
  void editsAreSavedUndoneAndMadeAgain() {
    Answer moved = browser.post(site + "/edits", TestServer.move(1, "A2", 15, 12));
    assertThat(moved.status()).isEqualTo(200);
    assertThat(moved.json().path("state").path("version").asLong()).isEqualTo(2);
    assertThat(plant(moved.json().path("scene"), "A2").path("x").asDouble()).isEqualTo(15);
    Answer undone = browser.post(site + "/undo", Map.of("onVersion", 2));
    assertThat(plant(undone.json().path("scene"), "A2").path("x").asDouble()).isEqualTo(14);
    assertThat(undone.json().path("state").path("canRedo").asBoolean()).isTrue();
    Answer redone = browser.post(site + "/redo", Map.of("onVersion", 3));
    assertThat(plant(redone.json().path("scene"), "A2").path("x").asDouble()).isEqualTo(15);
    assertThat(browser.get(site + "/log").json().get(0).path("label").asText())
        .isEqualTo("Made again: Moved A2");
  }

  @Test
  void aStaleTabGetsTheNewestStateAndSavesNothing() {
    browser.post(site + "/edits", TestServer.move(1, "A2", 15, 12));
    Answer late = browser.post(site + "/edits", TestServer.move(1, "A3", 20, 12));
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.code()).isEqualTo("stale");
    assertThat(late.json().path("state").path("version").asLong()).isEqualTo(2);
    assertThat(browser.get(site).json().path("version").asLong()).isEqualTo(2);
    assertThat(browser.post(site + "/undo", Map.of("onVersion", 1)).code()).isEqualTo("stale");
  }

  @Test
  void anEditSentTwiceIsSavedOnce() {
    Map<String, Object> edit = new java.util.HashMap<>(TestServer.move(1, "A2", 15, 12));
    edit.put("clientId", "7d5e6a40-0001");
    assertThat(browser.post(site + "/edits", edit).status()).isEqualTo(200);
    Answer again = browser.post(site + "/edits", edit);
    assertThat(again.status()).isEqualTo(200);
    assertThat(again.json().path("state").path("version").asLong()).isEqualTo(2);
  }

  @Test
  void whatMakesTheDescriptionInvalidIsNotSavedAndNamesTheField() {
    Answer answer =
        browser.post(
            site + "/edits",
            Map.of(
                "onVersion",
                1,
                "label",
                "x",
                "operations",
                List.of(Map.of("type", "set", "path", "/supply/static_pressure", "value", "2 m"))));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.json().path("field").asText()).isEqualTo("supply.static_pressure");
    assertThat(answer.json().path("message").asText()).contains("pressure");
    assertThat(browser.get(site).json().path("version").asLong()).isEqualTo(1);
  }

  @Test
  void theMapDrawsBuildingsRowsHeightsAndTheOutline() {
    Answer answer =
        browser.post(
            site + "/edits",
            Map.of(
                "onVersion",
                1,
                "label",
                "Drew",
                "operations",
                List.of(
                    Map.of(
                        "type",
                        "set",
                        "path",
                        "/site/fixed/-",
                        "value",
                        Map.of(
                            "id",
                            "shed",
                            "kind",
                            "building",
                            "area",
                            List.of(
                                List.of("30 m", "1 m"),
                                List.of("33 m", "1 m"),
                                List.of("33 m", "3 m")),
                            "height",
                            "2.4 m")),
                    Map.of("type", "remove", "path", "/site/fixed/2"),
                    Map.of(
                        "type",
                        "set",
                        "path",
                        "/site/heights/-",
                        "value",
                        Map.of("at", List.of("26 m", "20 m"), "height", "2.9 m")),
                    Map.of(
                        "type",
                        "addPlant",
                        "species",
                        "lemon",
                        "x",
                        30,
                        "y",
                        6,
                        "fields",
                        Map.of("planted", "2027-03-20", "container", "15 L")),
                    Map.of(
                        "type",
                        "set",
                        "path",
                        "/site/boundary",
                        "value",
                        List.of(
                            List.of("0 m", "0 m"),
                            List.of("54 m", "0 m"),
                            List.of("54 m", "28 m"),
                            List.of("0 m", "28 m"))))));
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    JsonNode scene = answer.json().path("scene");
    assertThat(scene.path("fixtures")).hasSize(5);
    assertThat(scene.path("fixtures").get(4).path("id").asText()).isEqualTo("shed");
    assertThat(scene.path("heights")).hasSize(6);
    assertThat(scene.path("outline").get(1).get(0).asDouble()).isEqualTo(54);
    assertThat(plant(scene, "lemon-1").path("x").asDouble()).isEqualTo(30);
  }

  @Test
  void tryingShowsConflictsShadeAndWaterAndSavesNothing() {
    List<?> operations = List.of(Map.of("type", "movePlant", "plant", "A2", "x", 8.5, "y", 12));
    Answer answer = browser.post(site + "/try", Map.of("operations", operations));
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    JsonNode conflict = answer.json().path("conflicts").get(0);
    assertThat(List.of(conflict.path("a").asText(), conflict.path("b").asText()))
        .containsExactlyInAnyOrder("A1", "A2");
    assertThat(conflict.path("distance").asDouble()).isEqualTo(1.5);
    assertThat(answer.json().path("plants").get(0).path("x").asDouble()).isEqualTo(8.5);
    assertThat(answer.json().path("water").path("litresPerWeekPeak").asDouble()).isPositive();
    assertThat(answer.json().path("water").path("text").asText()).endsWith(" L");
    assertThat(browser.get(site).json().path("version").asLong()).isEqualTo(1);
  }

  /** The quick way of moving a plant must give what the saved edit gives. */
  @Test
  void tryingAgreesWithSaving() {
    List<?> operations = List.of(Map.of("type", "movePlant", "plant", "B2", "x", 8.1, "y", 19));
    JsonNode tried = browser.post(site + "/try", Map.of("operations", operations)).json();
    Answer saved =
        browser.post(
            site + "/edits", Map.of("onVersion", 1, "label", "x", "operations", operations));
    assertThat(tried.path("conflicts")).isNotEmpty();
    assertThat(tried.path("conflicts")).isEqualTo(saved.json().path("scene").path("conflicts"));
    JsonNode cost = browser.post(site + "/try/cost", Map.of("operations", operations)).json();
    assertThat(cost.path("change").asDouble()).isZero();
    assertThat(cost.path("totalText").asText()).startsWith("AUD");
  }

  @Test
  void aNewPlantIsTriedWithItsWater() {
    double before =
        browser
            .post(
                site + "/try",
                Map.of(
                    "operations",
                    List.of(Map.of("type", "movePlant", "plant", "A2", "x", 14, "y", 12))))
            .json()
            .path("water")
            .path("litresPerWeekPeak")
            .asDouble();
    Answer answer =
        browser.post(
            site + "/try",
            Map.of(
                "operations",
                List.of(
                    Map.of(
                        "type",
                        "addPlant",
                        "species",
                        "lemon",
                        "x",
                        30,
                        "y",
                        6,
                        "fields",
                        Map.of("planted", "2027-03-20", "container", "15 L")))));
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    assertThat(answer.json().path("water").path("litresPerWeekPeak").asDouble())
        .isGreaterThan(before);
  }

  @Test
  void aDescriptionIsCheckedByFieldAndLine() {
    Answer answer =
        browser.post("/api/check", Map.of("description", "site: {name: X}\nunits: feet\n"));
    assertThat(answer.json().path("ok").asBoolean()).isFalse();
    assertThat(answer.json().path("problems"))
        .anySatisfy(
            problem -> {
              assertThat(problem.path("field").asText()).isEqualTo("units");
              assertThat(problem.path("line").asInt()).isEqualTo(2);
            });
  }

  @Test
  void theJournalIsSyncedWithConflictsShown() {
    Map<String, Object> entry =
        Map.of(
            "id",
            "11111111-aaaa",
            "day",
            "2027-04-01",
            "kind",
            "watered",
            "subjectKind",
            "plant",
            "subject",
            "A2",
            "amount",
            "12 L",
            "note",
            "dry");
    JsonNode first =
        browser.post(site + "/journal/sync", Map.of("since", 0, "changes", List.of(entry))).json();
    assertThat(first.path("entries").get(0).path("amount").path("value").asDouble())
        .isEqualTo(0.012);
    assertThat(first.path("entries").get(0).path("amount").path("text").asText())
        .isEqualTo("12.0 L");
    Map<String, Object> here = new java.util.HashMap<>(entry);
    here.put("note", "wet");
    here.put("baseRevision", 1);
    browser.post(site + "/journal/sync", Map.of("since", 0, "changes", List.of(here)));
    Map<String, Object> there = new java.util.HashMap<>(entry);
    there.put("note", "flooded");
    there.put("baseRevision", 1);
    JsonNode third =
        browser.post(site + "/journal/sync", Map.of("since", 0, "changes", List.of(there))).json();
    assertThat(third.path("conflicts").get(0).path("note").asText()).isEqualTo("wet");
    Answer wrong =
        browser.post(
            site + "/journal/sync",
            Map.of(
                "changes",
                List.of(Map.of("id", "22222222-aaaa", "day", "2027-04-01", "kind", "rain"))));
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.json().path("field").asText()).isEqualTo("changes[0].amount");
  }

  @Test
  void aDeletedSiteIsInTheBinAndCanBeBroughtBack() {
    assertThat(browser.delete(site).status()).isEqualTo(204);
    assertThat(browser.get("/api/sites").json()).isEmpty();
    assertThat(browser.get(site).status()).isEqualTo(404);
    assertThat(browser.get("/api/sites?bin=true").json()).hasSize(1);
    assertThat(browser.post(site + "/restore", Map.of()).status()).isEqualTo(200);
    assertThat(browser.get("/api/sites").json()).hasSize(1);
  }

  @Test
  void settingsAreKeptAndChecked() {
    assertThat(browser.put("/api/me/settings", Map.of("units", "us", "language", "es")).status())
        .isEqualTo(200);
    assertThat(browser.get("/api/me").json().path("settings").path("units").asText())
        .isEqualTo("us");
    assertThat(browser.put("/api/me/settings", Map.of("units", "furlongs")).status())
        .isEqualTo(422);
    JsonNode scene = browser.get(site + "/scene?wait=true").json();
    assertThat(scene.path("emitters").get(0).path("flowText").asText()).endsWith("gal/h");
  }
}
