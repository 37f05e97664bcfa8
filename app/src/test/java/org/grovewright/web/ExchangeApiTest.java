package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.grovewright.web.TestServer.Answer;
import org.grovewright.web.TestServer.Browser;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExchangeApiTest {
  @TempDir Path folder;
  private TestServer server;
  private Browser browser;
  private String site;

  @BeforeEach
  void start() {
    server = TestServer.local(folder);
    browser = server.browser();
    site = "/api/sites/" + TestServer.demo(browser);
  }

  @AfterEach
  void stop() {
    assertThat(server.bugs).isEmpty();
    server.close();
  }

  @Test
  void landAndPlantsGoOutAndComeBackToTheSamePlaces() {
    for (String format : List.of("geojson", "gpx")) {
      String file = browser.get(site + "/export/site." + format).text();
      Answer back = browser.post(site + "/import", Map.of("format", format, "text", file));
      assertThat(back.status()).as(back.text()).isEqualTo(200);
      assertThat(back.json().path("operations")).as(format).isEmpty();
      assertThat(back.json().path("leftOut")).as(format).isEmpty();
    }
  }

  @Test
  void anOutlineIsReadForAFirstPlan() {
    JsonNode read =
        browser
            .post(
                "/api/exchange/read",
                Map.of("format", "gpx", "text", browser.get(site + "/export/site.gpx").text()))
            .json();
    assertThat(read.path("outline")).hasSize(4);
    assertThat(read.path("latitude").asDouble()).isEqualTo(-30.4);
    assertThat(read.path("plants")).hasSize(42);
    assertThat(read.path("plants").get(0).path("species").asText()).isEqualTo("avocado");
  }

  @Test
  void brokenFilesAreAnsweredInWords() {
    for (String text : List.of("", "{", "<gpx", "[]", "<!DOCTYPE gpx [<!ENTITY x \"y\">]><gpx/>")) {
      for (String format : List.of("gpx", "geojson", "shp")) {
        Answer answer = browser.post("/api/exchange/read", Map.of("format", format, "text", text));
        assertThat(answer.status()).as(format + text).isEqualTo(422);
        assertThat(answer.json().path("message").asText()).isNotBlank();
      }
    }
  }

  @Test
  void mapAndReportAreOnPaperToo() throws IOException {
    Answer map = browser.get(site + "/export/map.pdf");
    assertThat(map.header("Content-Type")).contains("application/pdf");
    try (PDDocument document = Loader.loadPDF(map.bytes())) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
    }
    Answer report = browser.get(site + "/export/report.pdf");
    try (PDDocument document = Loader.loadPDF(report.bytes())) {
      String text = new PDFTextStripper().getText(document);
      assertThat(text).contains("Wattlefall Terrace").contains("What needs attention");
      assertThat(document.getNumberOfPages()).isBetween(5, 80);
    }
  }

  @Test
  void listsAndCalendarComeOut() {
    assertThat(browser.get(site + "/export/shopping.csv").text()).startsWith("item,name,");
    assertThat(browser.get(site + "/export/watering.csv").text()).startsWith("zone,plant,");
    assertThat(browser.get(site + "/export/map.svg").text()).contains("<svg");
    assertThat(browser.get(site + "/export/calendar.ics").text()).startsWith("BEGIN:VCALENDAR");
    assertThat(browser.get(site + "/export/passwd").status()).isEqualTo(404);
  }

  @Test
  void aSubscribedCalendarSpeaksTheLanguageItsAddressWasGivenIn() throws IOException {
    String english = browser.post(site + "/feed", Map.of()).json().path("path").asText();
    assertThat(server.raw("GET " + english + " HTTP/1.1", "Host: localhost"))
        .contains("Lay and join");
    browser.put("/api/me/settings", Map.of("language", "es"));
    String spanish = browser.post(site + "/feed", Map.of()).json().path("path").asText();
    assertThat(spanish).endsWith(".es.ics");
    browser.put("/api/me/settings", Map.of("language", "en"));
    // Whoever fetches it has no language: the address has.
    assertThat(server.raw("GET " + spanish + " HTTP/1.1", "Host: localhost", "Accept-Language: en"))
        .contains("HTTP/1.1 200", "BEGIN:VEVENT", "Tender y unir")
        .doesNotContain("Lay and join");
    assertThat(server.raw("GET " + english + " HTTP/1.1", "Host: localhost"))
        .as("a new address ends the one before")
        .contains("HTTP/1.1 404");
  }

  @Test
  void everyPageAndEveryFigureIsAnswered() {
    for (String page : List.of("buy", "today", "water", "plants", "summary", "plant/A2")) {
      Answer answer = browser.get(site + "/pages/" + page + "?date=2027-04-02");
      assertThat(answer.status()).as(page + answer.text()).isEqualTo(200);
    }
    assertThat(browser.get(site + "/pages/plant/none").status()).isEqualTo(404);
    assertThat(browser.get(site + "/pages/today?date=tomorrow").status()).isEqualTo(422);
    assertThat(browser.get(site + "/figures/buy.total.cost").json().path("formula").asText())
        .isEqualTo("sum(C)");
  }

  @Test
  void anOutlineThatIsNoneIsRefusedInWords() {
    Map<String, String> outlines =
        Map.of(
            "[[[0,1],[0.001,1],[0.001,1.001]],[[0,1],[0.0005,1],[0.0005,1.0005]]]",
            "The polygon has holes; give the outline only, and what lies inside as fixed.",
            "[[[\"a\",1],[0.001,1],[0.001,1.001]]]",
            "A corner of the polygon is not two numbers.",
            "[[[0,1],[0.001,1]]]",
            "The outline needs at least three corners.",
            "[[[0,1],[3,1],[3,2]]]",
            "The corners lie kilometres apart; a place is [longitude, latitude] in degrees.",
            "[[[0,91],[0.001,91],[0.001,91.001]]]",
            "A corner is not on the earth; a place is [longitude, latitude] in degrees.",
            "[]",
            "The polygon has no coordinates.");
    outlines.forEach(
        (coordinates, message) -> {
          String text =
              "{\"type\":\"Feature\",\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
                  + coordinates
                  + "}}";
          Answer answer =
              browser.post("/api/exchange/read", Map.of("format", "geojson", "text", text));
          assertThat(answer.status()).as(coordinates).isEqualTo(422);
          assertThat(answer.json().path("message").asText()).isEqualTo(message);
        });
  }

  /**
   * What other programs make of one outline: a polygon among several (RFC 7946, 3.1.7), a
   * collection (3.1.8), and the coordinates named as in the format's issue of 2008, which RFC 7946
   * took out.
   */
  @Test
  void anOutlineIsReadAsOtherProgramsWriteIt() {
    String ring = "[[[0,1],[0.001,1],[0.001,1.001],[0,1]]]";
    String polygon = "{\"type\":\"Polygon\",\"coordinates\":" + ring + "}";
    String many = "{\"type\":\"MultiPolygon\",\"coordinates\":[" + ring + "]}";
    String collection =
        "{\"type\":\"GeometryCollection\",\"geometries\":["
            + many
            + ",{\"type\":\"Point\",\"coordinates\":[0.0005,1.0002]}]}";
    JsonNode plain = read(polygon, "").json();
    assertThat(plain.path("outline")).hasSize(3);
    assertThat(read(many, "").json()).isEqualTo(plain);
    assertThat(read(polygon, "urn:ogc:def:crs:OGC:1.3:CRS84").json()).isEqualTo(plain);
    JsonNode both = read(collection, "").json();
    assertThat(both.path("outline")).isEqualTo(plain.path("outline"));
    assertThat(both.path("plants")).hasSize(1);

    assertThat(read(many.replace(ring, ring + "," + ring), "").json().path("message").asText())
        .isEqualTo("The outline is in 2 parts; draw the land as one polygon.");
    Answer other = read(polygon, "urn:ogc:def:crs:EPSG::32633");
    assertThat(other.status()).isEqualTo(422);
    assertThat(other.json().path("message").asText())
        .isEqualTo(
            "The places of the file are in the coordinates urn:ogc:def:crs:EPSG::32633; write it in"
                + " longitude and latitude (WGS 84).");
  }

  private Answer read(String geometry, String coordinates) {
    String named =
        coordinates.isEmpty()
            ? ""
            : ",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"" + coordinates + "\"}}";
    return browser.post(
        "/api/exchange/read",
        Map.of(
            "format",
            "geojson",
            "text",
            "{\"type\":\"Feature\",\"geometry\":" + geometry + named + "}"));
  }
}
