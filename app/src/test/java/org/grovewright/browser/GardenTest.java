package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.store.Author;
import org.grovewright.store.Journal;
import org.grovewright.store.JournalEntry;
import org.grovewright.store.JournalEntry.Content;
import org.grovewright.store.JournalEntry.SubjectKind;
import org.grovewright.store.JournalKind;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** On a phone in the garden, with and without the server. */
@Tag("browser")
class GardenTest {
  private static void choose(BrowserSession browser, String kind) {
    new Select(browser.find(".journal-form select")).selectByValue(kind);
  }

  private static List<JournalEntry> entries(BrowserSession browser, String site) {
    return browser.store().journal().list(site.substring("/site/".length()));
  }

  @Test
  void pagesAndJournalWorkWithTheServerCutOffAndNothingIsLost() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = DemoSite.of(browser);
      browser.go(site + "/today");
      browser.waitForKeeping();
      // Seen once with the server: from now on kept.
      browser.go(site + "/today");
      browser.go(site + "/plants");
      browser.waitUntil(
          d ->
              Boolean.TRUE.equals(
                  browser.script(
                      "return Object.keys(sessionStorage).some(k =>"
                          + " k.startsWith('kept:') && Number(k.split(':').pop()) > 10);")));

      browser.cutOff();
      // Never opened, and kept all the same.
      browser.go(site + "/plant/A1");
      browser.seeText("cannot be reached");
      browser.seeText("A1: Avocado");
      choose(browser, "measured-spread");
      browser.type("How much", "1.35");
      browser.type("In words", "measured across the row");
      browser.click("Write it down");
      browser.seeText("Kept on this device");
      browser.seeText("1 entry waits to be sent");
      browser.shot("offline-plant");
      browser.go(site + "/today");
      choose(browser, "rain");
      browser.type("How much", "12.5");
      browser.click("Write it down");
      browser.seeText("2 entries wait to be sent");
      browser.shot("offline-today");
      assertThat(entries(browser, site)).isEmpty();

      browser.bringBack();
      browser.go(site + "/today");
      browser.waitUntil(d -> entries(browser, site).size() == 2);
      browser.waitUntil(d -> !browser.text().contains("to be sent"));
      assertThat(entries(browser, site))
          .anySatisfy(
              entry -> {
                assertThat(entry.content().kind()).isEqualTo(JournalKind.MEASURED_SPREAD);
                assertThat(entry.content().subject()).isEqualTo("A1");
                assertThat(entry.content().amount()).contains(new Quantity(1.35, Kind.LENGTH));
                assertThat(entry.content().note()).isEqualTo("measured across the row");
              })
          .anySatisfy(
              entry -> {
                assertThat(entry.content().kind()).isEqualTo(JournalKind.RAIN);
                assertThat(entry.content().amount().orElseThrow().value())
                    .isCloseTo(0.0125, org.assertj.core.api.Assertions.within(1e-12));
              });
      browser.checkQuiet();
    }
  }

  @Test
  void whatIsMeasuredInTheJournalMakesThePlanWhenTheOwnerSaysSo() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = DemoSite.of(browser, text -> text.replace("planted: 2027-", "planted: 2025-"));
      String id = site.substring("/site/".length());
      browser.go(site + "/plant/A1");
      choose(browser, "measured-height");
      browser.type("How much", "1.9");
      browser.click("Write it down");
      browser.waitUntil(d -> entries(browser, site).size() == 1);
      choose(browser, "measured-spread");
      browser.type("How much", "2.2");
      browser.click("Write it down");
      browser.waitUntil(d -> entries(browser, site).size() == 2);
      assertThat(description(browser, id)).doesNotContain("measured_spread: 2.2");
      browser.click("Make the plan with it");
      browser.seeText("The plan is now made with what you measured.");
      LocalDate day = entries(browser, site).get(0).content().day();
      assertThat(description(browser, id))
          .contains("measured_spread: 2.2 m", "measured_height: 1.9 m", "measured_on: " + day);
      browser.checkQuiet();
    }
  }

  @Test
  void whyThePlanCannotTakeAMeasureIsSeenBesideIt() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = DemoSite.of(browser);
      refused(browser, site, "B2", "is before the plant is set on 2027-03-27");
      refused(browser, site, "A1-2.comfrey-1", "is one of 10 companions that row A describes");
    }
  }

  private static void refused(BrowserSession browser, String site, String plant, String why) {
    browser.go(site + "/plant/" + plant);
    choose(browser, "measured-spread");
    browser.type("How much", "0.6");
    browser.click("Write it down");
    browser.seeText("Written down.");
    browser.click("Make the plan with it");
    browser.waitUntil(
        d ->
            d.findElements(By.cssSelector(".entry .note.bad")).stream()
                .anyMatch(note -> note.getText().contains(why)));
    browser.shot("journal-refused-" + plant);
    browser.checkAccessible();
    assertThat(description(browser, site.substring("/site/".length())))
        .doesNotContain("measured_spread: 0.6");
  }

  private static String description(BrowserSession browser, String site) {
    return browser.store().sites().get(site).description();
  }

  @Test
  void aChangeOnTwoDevicesIsShownAndBothStayUntilTheOwnerChooses() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = DemoSite.of(browser);
      String id = site.substring("/site/".length());
      browser.go(site + "/plant/A1");
      browser.waitForKeeping();
      browser.go(site + "/plant/A1");
      choose(browser, "note");
      browser.type("In words", "two flowers");
      browser.click("Write it down");
      browser.waitUntil(d -> entries(browser, site).size() == 1);
      browser.seeText("Written down.");

      browser.cutOff();
      browser.click("Change");
      browser.type("In words", "three flowers");
      browser.click("Save the change");
      browser.seeText("1 entry waits to be sent");

      // Meanwhile somebody changes the same entry elsewhere.
      JournalEntry there = entries(browser, site).get(0);
      Content other =
          new Content(
              there.content().id(),
              LocalDate.parse(there.content().day().toString()),
              JournalKind.NOTE,
              SubjectKind.PLANT,
              "A1",
              Optional.empty(),
              "four flowers");
      Author author = browser.store().accounts().local().author();
      browser
          .store()
          .journal()
          .sync(id, List.of(new Journal.Change(other, there.revision(), false)), 0, author);

      browser.bringBack();
      browser.go(site + "/plant/A1");
      browser.seeText("was changed on two devices");
      assertThat(browser.text()).contains("three flowers").contains("four flowers");
      browser.shot("conflict");
      browser.checkAccessible();
      browser.click("Keep both");
      browser.waitUntil(d -> entries(browser, site).size() == 2);
      assertThat(entries(browser, site).stream().map(e -> e.content().note()).toList())
          .containsExactlyInAnyOrder("three flowers", "four flowers");
      browser.waitUntil(d -> d.findElements(By.cssSelector(".conflict")).isEmpty());
      browser.checkQuiet();
    }
  }

  @Test
  void anUnfinishedFormKeepsWhatWasTypedAndSaysWhatIsMissing() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = DemoSite.of(browser);
      browser.go(site + "/plant/A1");
      choose(browser, "measured-height");
      browser.type("In words", "by the ladder");
      browser.type("How much", "tall");
      browser.click("Write it down");
      browser.seeText("This is no number");
      WebElement note = browser.field("In words");
      assertThat(note.getDomProperty("value")).isEqualTo("by the ladder");
      assertThat(browser.field("How much").getDomAttribute("aria-invalid")).isEqualTo("true");
      assertThat(entries(browser, site)).isEmpty();
    }
  }
}
