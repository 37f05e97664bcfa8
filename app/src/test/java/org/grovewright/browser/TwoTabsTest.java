package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.grovewright.store.SiteState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WindowType;

/** The same place open in two tabs of one browser. */
@Tag("browser")
class TwoTabsTest {
  private static void openForm(BrowserSession browser, SiteState site) {
    MapTest.openMap(browser, site);
    browser.waitUntil(d -> !browser.text().contains("being worked out"));
    browser.click("A3 Lemon");
  }

  private static String typed(BrowserSession browser, String label) {
    return browser.field(label).getDomProperty("value");
  }

  @Test
  void theLaterTabIsToldOfTheConflictAndKeepsWhatWasTyped() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      SiteState site = MapTest.demo(browser);
      openForm(browser, site);
      String first = browser.driver().getWindowHandle();
      browser.driver().switchTo().newWindow(WindowType.TAB);
      openForm(browser, site);
      String second = browser.driver().getWindowHandle();
      browser.type("Cultivar", "Late Harvest");

      // The first tab saves meanwhile.
      browser.driver().switchTo().window(first);
      browser.type("Planted on", "03102026");
      browser.click("Save");
      MapTest.waitForVersion(browser, site, 2);

      // The second is refused and says so; its form holds what was typed.
      browser.driver().switchTo().window(second);
      browser.click("Save");
      browser.seeText("so yours was not saved");
      assertThat(typed(browser, "Cultivar")).isEqualTo("Late Harvest");
      assertThat(browser.store().sites().get(site.id()).version()).isEqualTo(2);
      browser.atBothWidths(
          () -> {
            browser.shot("two-tabs-conflict");
            browser.checkAccessible();
          });

      // The newest is shown, and what was typed stays in the form.
      browser.click("Show the newest");
      browser.waitUntil(d -> d.findElements(By.cssSelector(".map-banner .note")).isEmpty());
      assertThat(typed(browser, "Cultivar")).isEqualTo("Late Harvest");
      browser.click("Save");
      MapTest.waitForVersion(browser, site, 3);
      assertThat(MapTest.description(browser, site))
          .contains("Late Harvest")
          .contains("2026-03-10");

      // Now the other tab is the stale one; there the tree is deleted meanwhile.
      browser.click("Delete");
      MapTest.waitForVersion(browser, site, 4);
      browser.driver().switchTo().window(first);
      browser.type("Cultivar", "Early Harvest");
      browser.click("Save");
      browser.seeText("so yours was not saved");
      browser.click("Show the newest and make my change again");
      browser.seeText("Not saved");
      assertThat(typed(browser, "Cultivar")).isEqualTo("Early Harvest");
      browser.shot("two-tabs-gone");
      assertThat(browser.store().sites().get(site.id()).version()).isEqualTo(4);
      browser.checkQuiet();
    }
  }
}
