package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.imageio.ImageIO;
import org.grovewright.store.Photos;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.TestServer.Answer;
import org.grovewright.web.TestServer.Browser;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Photos of the journal, and what somebody might send in their place. */
class JournalPhotoTest {
  private static final String ENTRY = "11111111-aaaa";

  @TempDir Path folder;
  TestServer server;
  private Browser rosa;
  private String site;
  private String photo;

  /** The address of an empty database. */
  StoreAddress empty() throws Exception {
    return new StoreAddress.Folder(folder);
  }

  @BeforeEach
  void start() throws Exception {
    server = TestServer.open(empty());
    rosa = server.browser("Rosa");
    site = "/api/sites/" + TestServer.demo(rosa);
    photo = site + "/journal/" + ENTRY + "/photo";
    write(rosa, ENTRY, "=HYPERLINK(\"http://evil.example\")");
  }

  @AfterEach
  void stop() {
    assertThat(server.bugs).isEmpty();
    server.close();
  }

  private void write(Browser browser, String entry, String note) {
    Map<String, Object> change =
        Map.of(
            "id",
            entry,
            "day",
            "2027-04-01",
            "kind",
            "note",
            "subjectKind",
            "plant",
            "subject",
            "A2",
            "note",
            note);
    assertThat(browser.post(site + "/journal/sync", Map.of("changes", List.of(change))).status())
        .isEqualTo(200);
  }

  private Browser member(String name, String role) {
    rosa.post("/api/accounts", Map.of("name", name, "password", TestServer.PASSWORD));
    rosa.post(site + "/members", Map.of("name", name, "role", role));
    return server.browser(name);
  }

  /** A true picture as the Java library writes it. */
  private static byte[] picture(String format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertThat(ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB), format, out))
        .isTrue();
    return out.toByteArray();
  }

  private static byte[] bytes(String latin1) {
    return latin1.getBytes(StandardCharsets.ISO_8859_1);
  }

  @Test
  void aPhotoIsSentShownAndTakenAway() throws IOException {
    byte[] picture = picture("jpg");
    Answer added = rosa.upload(photo, picture);
    assertThat(added.status()).as(added.text()).isEqualTo(201);
    assertThat(added.json().path("type").asText()).isEqualTo("image/jpeg");
    assertThat(added.json().path("bytes").asInt()).isEqualTo(picture.length);
    assertThat(rosa.get(site + "/journal").json().get(0).path("photo")).isEqualTo(added.json());
    Browser viktor = member("Viktor", "viewer");
    Answer seen = viktor.get(added.json().path("path").asText());
    assertThat(seen.status()).isEqualTo(200);
    assertThat(seen.bytes()).isEqualTo(picture);
    assertThat(seen.header("Content-Type")).contains("image/jpeg");
    assertThat(seen.header("X-Content-Type-Options")).contains("nosniff");
    assertThat(seen.header("Content-Security-Policy").orElse("")).contains("sandbox");
    assertThat(seen.header("Cache-Control")).contains("private, no-cache");
    String tag = seen.header("ETag").orElseThrow();
    assertThat(viktor.send("GET", photo, null, "If-None-Match", tag).status()).isEqualTo(304);
    assertThat(viktor.upload(photo, picture).status()).isEqualTo(403);
    assertThat(viktor.delete(photo).status()).isEqualTo(403);
    assertThat(rosa.delete(photo).status()).isEqualTo(204);
    assertThat(viktor.get(photo).status()).isEqualTo(404);
    assertThat(viktor.send("GET", photo, null, "If-None-Match", tag).status()).isEqualTo(404);
    assertThat(rosa.get(site + "/journal").json().get(0).has("photo")).isFalse();
  }

  @Test
  void pngAndWebpAreTakenToo() throws IOException {
    assertThat(rosa.upload(photo, picture("png")).json().path("type").asText())
        .isEqualTo("image/png");
    write(rosa, "22222222-aaaa", "x");
    assertThat(
            rosa.upload(
                    site + "/journal/22222222-aaaa/photo",
                    bytes("RIFF\u0024\0\0\0WEBPVP8 \u0018\0\0\0"))
                .json()
                .path("type")
                .asText())
        .isEqualTo("image/webp");
  }

  @Test
  void whatIsNoPictureIsRefusedWhateverItIsCalled() throws IOException {
    Map<String, byte[]> disguised = new HashMap<>();
    disguised.put("drawing", bytes("<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>"));
    disguised.put("drawing with a head", bytes("<?xml version='1.0'?><svg onload='alert(1)'/>"));
    disguised.put("page", bytes("<!doctype html><script>alert(1)</script>"));
    disguised.put(
        "page before a picture", join(bytes("<script>alert(1)</script>"), picture("jpg")));
    disguised.put("gif with a script", bytes("GIF89a/*<script>*/=1;alert(1)//"));
    disguised.put("half a head", bytes("\u00ff\u00d8"));
    disguised.put("head alone", bytes("\u00ff\u00d8\u00ff"));
    disguised.put("sound in a RIFF", bytes("RIFF\u0024\0\0\0WAVEfmt "));
    disguised.put("paper", bytes("%PDF-1.7 /JS (app.alert(1))"));
    disguised.put("archive", bytes("PK\u0003\u0004"));
    disguised.put("text as UTF-16", bytes("\u00ff\u00fe<\0s\0v\0g\0"));
    disguised.put("nothing", new byte[0]);
    disguised.forEach(
        (name, content) -> {
          Answer answer = rosa.upload(photo, content);
          assertThat(answer.status()).as(name).isEqualTo(422);
          assertThat(answer.json().path("field").asText()).isEqualTo("photo");
        });
    assertThat(rosa.get(photo).status()).isEqualTo(404);
  }

  private static byte[] join(byte[] first, byte[] second) {
    byte[] both = java.util.Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, both, first.length, second.length);
    return both;
  }

  @Test
  void aPictureWithAPageBehindItStaysAPicture() throws IOException {
    rosa.upload(photo, join(picture("jpg"), bytes("<html><script>alert(1)</script>")));
    Answer seen = rosa.get(photo + "?type=text/html&show=1");
    assertThat(seen.header("Content-Type")).contains("image/jpeg");
    assertThat(seen.header("X-Content-Type-Options")).contains("nosniff");
    assertThat(seen.header("Content-Security-Policy").orElse(""))
        .contains("default-src 'none'")
        .doesNotContain("allow-scripts");
  }

  @Test
  void whatIsTooLargeIsRefusedWithoutReadingItAll() throws IOException {
    byte[] large = java.util.Arrays.copyOf(picture("jpg"), Photos.LARGEST + 1);
    assertThat(rosa.upload(photo, large).status()).isEqualTo(413);
    assertThat(rosa.statusOfBegun(photo, large, 40_000_000)).isEqualTo(413);
    assertThat(rosa.upload(photo, java.util.Arrays.copyOf(large, Photos.LARGEST)).status())
        .isEqualTo(201);
  }

  @Test
  void itTakesTheSecretWordAndAnEntryOfThisSite() throws IOException {
    byte[] picture = picture("jpg");
    assertThat(rosa.upload(site + "/journal/99999999-aaaa/photo", picture).status()).isEqualTo(404);
    String other = "/api/sites/" + TestServer.demo(rosa);
    assertThat(rosa.upload(other + "/journal/" + ENTRY + "/photo", picture).status())
        .isEqualTo(404);
    rosa.upload(photo, picture);
    assertThat(rosa.get(other + "/journal/" + ENTRY + "/photo").status()).isEqualTo(404);
    assertThat(rosa.upload(photo, picture("png")).status()).as("another one").isEqualTo(409);
    rosa.csrf = "wrong";
    assertThat(rosa.upload(photo, picture).code()).isEqualTo("csrf");
    assertThat(rosa.delete(photo).code()).isEqualTo("csrf");
    Browser nobody = server.browser();
    assertThat(nobody.get(photo).status()).isEqualTo(401);
  }

  @Test
  void theJournalIsTakenAwayWithItsPhotos() throws IOException {
    byte[] picture = picture("png");
    rosa.upload(photo, picture);
    write(rosa, "22222222-aaaa", "plain words");
    Answer file = rosa.get(site + "/export/journal.zip");
    assertThat(file.header("Content-Type")).contains("application/zip");
    Map<String, byte[]> found = new HashMap<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file.bytes()))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        found.put(entry.getName(), zip.readAllBytes());
      }
    }
    String name = "photos/2027-04-01-a2-11111111-aaaa.png";
    assertThat(found).containsOnlyKeys("journal.csv", name);
    assertThat(found.get(name)).isEqualTo(picture);
    String table = new String(found.get("journal.csv"), StandardCharsets.UTF_8);
    assertThat(table.lines()).hasSize(3);
    assertThat(table)
        .contains("plain words")
        .as("no formula for the spreadsheet")
        .contains("\"'=HYPERLINK")
        .contains(name);
  }

  @Test
  void aPhotoComesBackWithTheDailyCopy() throws IOException {
    byte[] picture = picture("jpg");
    rosa.upload(photo, picture);
    assertThat(server.store.copyIfDue()).isTrue();
    rosa.delete(photo);
    String copy = rosa.get("/api/copies").json().get(0).path("name").asText();
    assertThat(rosa.post("/api/copies/" + copy + "/restore", Map.of()).status()).isEqualTo(200);
    assertThat(rosa.get(photo).bytes()).isEqualTo(picture);
  }
}
