package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.grovewright.store.SiteSummary;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** The guided first plan, from an empty database to a map, without a mouse or a finger. */
@Tag("browser")
class KeyboardFirstPlanTest {
  private static final String FOCUSED =
      "const e = document.activeElement; const n = e.getAttribute('aria-label') ?? (e.labels &&"
          + " e.labels.length ? e.labels[0].textContent : e.textContent); return n.trim();";

  private static void press(BrowserSession browser, CharSequence... keys) {
    for (CharSequence one : keys) {
      new Actions(browser.driver()).sendKeys(one).perform();
    }
  }

  /**
   * Presses the tabulator until the control of this name has the keyboard, and sees that it shows.
   */
  private static void tabTo(BrowserSession browser, String name) {
    StringBuilder passed = new StringBuilder();
    for (int i = 0; i < 80; i++) {
      String focused = (String) browser.script(FOCUSED);
      if (focused != null && focused.startsWith(name) && focused.length() < name.length() + 200) {
        assertThat(
                browser.script(
                    "const e = document.activeElement; const r = e.getBoundingClientRect();"
                        + " return e.matches(':focus-visible') && r.bottom > 0 && r.top <"
                        + " innerHeight;"))
            .as(name + " shows that it has the keyboard")
            .isEqualTo(true);
        return;
      }
      passed.append(" / ").append(focused == null ? "" : focused.lines().findFirst().orElse(""));
      press(browser, Keys.TAB);
    }
    throw new AssertionError("The keyboard does not reach '" + name + "', only" + passed);
  }

  /** Goes to a group of choices by its first one, then with the arrows to the one wanted. */
  private static void choose(BrowserSession browser, String first, String wanted) {
    tabTo(browser, first);
    press(browser, Keys.SPACE);
    for (int i = 0; i < 12; i++) {
      String now = (String) browser.script(FOCUSED);
      if (now.startsWith(wanted)) {
        assertThat(browser.script("return document.activeElement.checked;")).isEqualTo(true);
        return;
      }
      press(browser, Keys.ARROW_DOWN);
    }
    throw new AssertionError("The arrows do not reach '" + wanted + "'.");
  }

  private static void fill(BrowserSession browser, String label, String text) {
    tabTo(browser, label);
    press(browser, text);
  }

  private static void next(BrowserSession browser, String title) {
    tabTo(browser, "Next");
    press(browser, Keys.ENTER);
    browser.waitUntil(
        d -> title.equals(browser.script("return document.querySelector('h1')?.textContent;")));
    browser.ready();
    assertThat(
            browser.script(
                "return document.querySelector('main').contains(document.activeElement);"))
        .as("the keyboard is on the new page")
        .isEqualTo(true);
  }

  @Test
  void theFirstPlanIsMadeByKeysAlone() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      browser.go("/");
      // An empty name is refused, and the keyboard is put where it is to be mended.
      tabTo(browser, "Next");
      press(browser, Keys.ENTER);
      browser.seeText("Please give this.");
      assertThat((String) browser.script(FOCUSED)).startsWith("What do you call it?");
      press(browser, "Larkfield");
      fill(browser, "Latitude", "38.5");
      fill(browser, "Longitude", "-121.5");
      choose(browser, "Mild wet winters, dry summers", "Mild wet winters, dry summers");
      browser.shot("keyboard-1-place");
      next(browser, "How large is it?");

      fill(browser, "Width, left to right", "32");
      fill(browser, "Length, bottom to top", "24.5");
      choose(browser, "None, it is level", "The top");
      fill(browser, "How much higher is it?", "1");
      fill(browser, "Over what distance?", "20");
      browser.shot("keyboard-2-land");
      next(browser, "Where does the water come from?");

      choose(browser, "A tap on the house", "A tap on the house");
      fill(browser, "To the right", "1");
      fill(browser, "Up", "1");
      fill(browser, "The bucket holds", "10");
      fill(browser, "It was full after", "28");
      browser.shot("keyboard-3-water");
      next(browser, "What is the soil like?");

      choose(browser, "Feel it", "Feel it");
      choose(browser, "Yes", "Yes");
      choose(browser, "There is none", "Shorter than 2.5 cm (1 in)");
      choose(browser, "Gritty above all", "Neither stands out");
      browser.seeText("This is loam.");
      browser.shot("keyboard-4-soil");
      next(browser, "What do you want to grow?");

      fill(browser, "Plant 1", "Fig");
      fill(browser, "How many", "2");
      tabTo(browser, "Another kind");
      press(browser, Keys.ENTER);
      assertThat((String) browser.script(FOCUSED)).startsWith("Plant 2");
      press(browser, "Lemon");
      fill(browser, "How many", "3");
      browser.shot("keyboard-5-plants");
      next(browser, "Money and time");
      next(browser, "Is this right?");
      browser.seeText("What was assumed");
      tabTo(browser, "Make the plan");
      press(browser, Keys.ENTER);
      browser.find(".map-figures");
      browser.seeText("Trees and main plants (5)");
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      browser.shot("keyboard-6-map");
      browser.checkQuiet();

      SiteSummary site = browser.store().sites().list("local").get(0);
      assertThat(site.name()).isEqualTo("Larkfield");
      assertThat(browser.store().sites().get(site.id()).description())
          .contains("latitude: 38.5", "species: fig", "species: lemon");
    }
  }
}
