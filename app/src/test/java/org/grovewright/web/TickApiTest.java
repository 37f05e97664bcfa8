package org.grovewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.store.StoreAddress;
import org.grovewright.web.TestServer.Answer;
import org.grovewright.web.TestServer.Browser;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TickApiTest {
  @TempDir Path folder;
  private TestServer server;
  private Browser laptop;
  private String ticks;

  /** The address of an empty database. */
  StoreAddress empty() throws Exception {
    return new StoreAddress.Folder(folder);
  }

  @BeforeEach
  void start() throws Exception {
    server = TestServer.local(empty());
    laptop = server.browser();
    ticks = "/api/sites/" + TestServer.demo(laptop) + "/ticks";
  }

  @AfterEach
  void stop() {
    assertThat(server.bugs).isEmpty();
    server.close();
  }

  private static Map<String, Object> tick(String item, Object ticked, Object at, String seen) {
    Map<String, Object> tick = new LinkedHashMap<>();
    tick.put("item", item);
    tick.put("ticked", ticked);
    tick.put("at", at);
    tick.put("seen", seen);
    return tick;
  }

  private static Answer say(Browser device, String path, Map<String, Object> tick) {
    return device.put(path, Map.of("ticks", List.of(tick)));
  }

  @Test
  void whatOneDeviceTicksTheOtherSees() {
    assertThat(laptop.get(ticks).json().path("ticks")).isEmpty();
    say(laptop, ticks, tick("pipe.pe-16", true, "2027-03-01T07:00:00Z", null));
    Browser phone = server.browser();
    JsonNode seen = phone.get(ticks).json().path("ticks").get(0);
    assertThat(seen.path("item").asText()).isEqualTo("pipe.pe-16");
    assertThat(seen.path("ticked").asBoolean()).isTrue();
    assertThat(seen.path("author").asText()).isEqualTo("Owner");
    Answer back =
        say(
            phone,
            ticks,
            tick("pipe.pe-16", false, "2027-03-01T07:01:00.5Z", seen.path("at").asText()));
    assertThat(back.json().path("conflicts")).isEmpty();
    assertThat(laptop.get(ticks).json().path("ticks").get(0).path("ticked").asBoolean()).isFalse();
  }

  @Test
  void whatContradictsUnseenIsShown() {
    say(laptop, ticks, tick("pipe.pe-16", true, "2027-03-01T07:00:00Z", null));
    JsonNode late =
        say(laptop, ticks, tick("pipe.pe-16", false, "2027-03-01T06:00:00Z", null)).json();
    JsonNode conflict = late.path("conflicts").get(0);
    assertThat(conflict.path("item").asText()).isEqualTo("pipe.pe-16");
    assertThat(conflict.path("kept").asBoolean(true)).isFalse();
    assertThat(conflict.path("other").path("ticked").asBoolean()).isTrue();
    assertThat(late.path("ticks").get(0).path("ticked").asBoolean()).isTrue();
  }

  @Test
  void badTicksAreRefusedByFieldAndNoneIsSaved() {
    String now = "2027-03-01T07:00:00Z";
    Map<String, Map<String, Object>> bad =
        Map.of(
            "item", tick("<script>", true, now, null),
            "ticked", tick("x", "yes", now, null),
            "at", tick("x", true, "yesterday", null),
            "seen", tick("x", true, now, "1900-01-01T00:00:00Z"));
    bad.forEach(
        (field, tick) -> {
          Answer answer =
              laptop.put(ticks, Map.of("ticks", List.of(tick("good", true, now, null), tick)));
          assertThat(answer.status()).as(field).isEqualTo(422);
          assertThat(answer.json().path("field").asText()).isEqualTo("ticks[1]." + field);
        });
    assertThat(laptop.put(ticks, Map.of("ticks", "x")).status()).isEqualTo(422);
    assertThat(laptop.get(ticks).json().path("ticks")).isEmpty();
  }
}
