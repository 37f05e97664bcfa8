package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.grovewright.store.SiteSummary;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** The guided first plan, from an empty database to a map, by clicks and typing alone. */
@Tag("browser")
class FirstPlanPagesTest {
  @Test
  void tenMinutesOfClicksAndTypingGiveAPlanOnALaptop() {
    firstPlan(BrowserSession.DESKTOP);
  }

  @Test
  void tenMinutesOfClicksAndTypingGiveAPlanOnAPhone() {
    firstPlan(BrowserSession.PHONE);
  }

  private static void firstPlan(int width) {
    try (BrowserSession browser = BrowserSession.open(width)) {
      browser.go("/");
      assertThat(browser.driver().getCurrentUrl()).endsWith("/start");

      browser.click("Next");
      browser.seeText("Please give this.");
      browser.type("What do you call it?", "Larkfield");
      browser.type("Latitude", "38.5");
      browser.type("Longitude", "-121.5");
      radio(browser, "Mild wet winters, dry summers");
      look(browser, "start-1-place");
      next(browser, "How large is it?");

      browser.type("Width, left to right", "thirty");
      browser.click("Next");
      browser.seeText("Write a number, such as 12.5.");
      browser.type("Width, left to right", "32");
      browser.type("Length, bottom to top", "24,5");
      radio(browser, "The top");
      browser.type("How much higher is it?", "1");
      browser.type("Over what distance?", "20");
      look(browser, "start-2-land");
      browser.driver().navigate().refresh();
      browser.ready();
      assertThat(browser.field("Width, left to right").getDomProperty("value")).isEqualTo("32");
      next(browser, "Where does the water come from?");

      radio(browser, "A tap on the house");
      browser.type("The bucket holds", "10");
      browser.click("Next");
      browser.seeText("Please give this.");
      browser.type("It was full after", "28");
      browser.type("To the right", "1");
      browser.type("Up", "1");
      look(browser, "start-3-water");
      next(browser, "What is the soil like?");

      radio(browser, "Feel it");
      radio(browser, "Yes");
      radio(browser, "Shorter than 2.5 cm (1 in)");
      radio(browser, "Neither stands out");
      browser.seeText("This is loam.");
      look(browser, "start-4-soil");
      next(browser, "What do you want to grow?");

      plant(browser, 1, "Fig", "2");
      browser.click("Another kind");
      plant(browser, 2, "Lemon", "3");
      browser.click("Another kind");
      plant(browser, 3, "Apple on dwarf stock", "4");
      new Select(browser.field("Companion between the trees")).selectByVisibleText("Lavender");
      look(browser, "start-5-plants");
      next(browser, "Money and time");

      look(browser, "start-6-work");
      next(browser, "Is this right?");
      browser.seeText("What was assumed");
      browser.seeText("The pressure with all taps shut is 2.5 bar.");
      look(browser, "start-7-review");
      browser.click("Make the plan");
      browser.find(".map-figures");
      browser.seeText("Trees and main plants (9)");
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      look(browser, "start-8-map");
      browser.checkQuiet();

      SiteSummary site = browser.store().sites().list("local").get(0);
      assertThat(site.name()).isEqualTo("Larkfield");
      assertThat(browser.store().sites().get(site.id()).description())
          .contains("latitude: 38.5", "static_pressure: 2.5 bar   # assumed");
    }
  }

  private static void next(BrowserSession browser, String title) {
    browser.click("Next");
    browser.waitUntil(
        d -> d.findElements(By.tagName("h1")).stream().anyMatch(h -> h.getText().equals(title)));
    browser.ready();
  }

  private static void radio(BrowserSession browser, String words) {
    WebElement control = browser.field(words);
    browser.click(control);
    browser.waitUntil(d -> browser.field(words).isSelected());
  }

  private static void plant(BrowserSession browser, int number, String name, String count) {
    new Select(browser.field("Plant " + number)).selectByVisibleText(name);
    WebElement field = browser.find("#start-count-" + (number - 1));
    browser.click(field);
    field.sendKeys(count);
  }

  private static void look(BrowserSession browser, String name) {
    browser.shot(name);
    browser.checkAccessible();
    browser.theme("dark");
    browser.checkAccessible();
    browser.theme("system");
  }
}
