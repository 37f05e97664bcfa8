package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Rectangle;

/** Names that an owner gives may be long and have no place to break; no page grows wider for it. */
@Tag("browser")
class LongNamesTest {
  private static final String LONG = "Obstgartenhinterdemalten".repeat(4);

  /** As long as the name of a thing may be. */
  private static final String LONGEST = LONG.substring(0, 40);

  private static final String ROW = LONG.substring(0, 36);

  @Test
  void noPageGrowsWiderThanTheWindowForALongName() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site =
          DemoSite.of(
              browser,
              LONG,
              text ->
                  text.replace("Wattlefall Terrace (invented)", LONG)
                      .replace("id: house", "id: " + LONGEST)
                      .replace("id: A\n", "id: " + ROW + "\n")
                      .replace("Terrace Green (invented)", LONG));
      for (String page :
          List.of(
              "/sites",
              site + "/map",
              site + "/buy",
              site + "/today",
              site + "/water",
              site + "/plants",
              site + "/plant/" + ROW + "-1",
              site + "/settings",
              site + "/labels")) {
        browser.go(page);
        browser.atBothWidths(
            () -> {
              browser.shot("long-names-" + page.substring(page.lastIndexOf('/') + 1));
              assertThat(sticksOut(browser)).as("what is too wide at " + page).isEmpty();
            });
      }
    }
  }

  @Test
  void aLabelShowsThePlantHoweverLongItsCultivar() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = DemoSite.of(browser, text -> text.replace("Terrace Green (invented)", LONG));
      browser.go(site + "/labels");
      Rectangle card = browser.find(".label-card").getRect();
      Rectangle name = browser.find(".label-card .label-id").getRect();
      assertThat(name.y).isGreaterThanOrEqualTo(card.y);
      List<String> texts =
          browser.find(".label-card").findElements(By.cssSelector(".label-text > div")).stream()
              .filter(line -> bottom(line.getRect()) <= bottom(card))
              .map(line -> line.getText())
              .toList();
      assertThat(texts).contains("A1").anyMatch(text -> text.contains("Persea"));
    }
  }

  private static int bottom(Rectangle box) {
    return box.y + box.height;
  }

  /** What stands beyond the window's right edge without a frame of its own to move it in. */
  @SuppressWarnings("unchecked")
  private static List<String> sticksOut(BrowserSession browser) {
    return (List<String>)
        browser.script(
            "const wide = e => e.getBoundingClientRect().right > window.innerWidth + 1;"
                + "const moved = e => { for (let p = e; p && p !== document.body; p ="
                + " p.parentElement) { if (getComputedStyle(p).overflowX !== 'visible') return"
                + " true; } return false; };"
                + "return [...document.querySelectorAll('main *, header *')].filter(e => wide(e) &&"
                + " !moved(e)).map(e => e.outerHTML.slice(0, 120)).concat("
                + "document.documentElement.scrollWidth > window.innerWidth + 1 ? ['the page'] :"
                + " []);");
  }
}
