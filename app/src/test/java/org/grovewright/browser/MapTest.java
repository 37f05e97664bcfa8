package org.grovewright.browser;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.grovewright.store.Author;
import org.grovewright.store.SiteState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("browser")
class MapTest {
  static SiteState demo(BrowserSession browser) {
    try (InputStream in =
        MapTest.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return browser
          .store()
          .sites()
          .create("Wattlefall Terrace", text, new Author("local", "Test"));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static void openMap(BrowserSession browser, SiteState site) {
    browser.go("/site/" + site.id() + "/map");
    browser.find("[data-figure=water]");
  }

  @Test
  void theMapIsDrawnAndAccessibleAtBothWidthsInBothThemes() {
    for (int width : new int[] {BrowserSession.DESKTOP, BrowserSession.PHONE}) {
      try (BrowserSession browser = BrowserSession.open(width)) {
        openMap(browser, demo(browser));
        for (String theme : List.of("light", "dark")) {
          browser.theme(theme);
          browser.shot("map-" + theme);
          browser.checkAccessible();
        }
        browser.checkQuiet();
      }
    }
  }
}
