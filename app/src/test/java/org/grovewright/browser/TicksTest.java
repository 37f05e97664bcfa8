package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.grovewright.store.Role;
import org.grovewright.store.Ticks;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/** The shopping list in the hands of several people, with and without the server. */
@Tag("browser")
class TicksTest {
  private static WebElement box(BrowserSession browser, int number) {
    return browser.waitUntil(
        d -> {
          List<WebElement> boxes = d.findElements(By.cssSelector(".item > input"));
          return boxes.size() > number ? boxes.get(number) : null;
        });
  }

  private static String item(BrowserSession browser, int number) {
    return box(browser, number).findElement(By.xpath("..")).getDomAttribute("data-item");
  }

  private static void tick(BrowserSession browser, int number) {
    browser.click(box(browser, number));
  }

  private static void see(BrowserSession browser, int number, boolean ticked) {
    browser.waitUntil(d -> box(browser, number).isSelected() == ticked);
  }

  private static List<Ticks.Tick> ticks(BrowserSession browser, String site) {
    return browser.store().ticks().list(site.substring("/site/".length()));
  }

  @Test
  void whatIsTickedOnOneDeviceIsSeenOnTheOther() {
    try (BrowserSession laptop = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = DemoSite.of(laptop);
      laptop.go(site + "/buy");
      try (BrowserSession phone = laptop.another(BrowserSession.PHONE)) {
        phone.go(site + "/buy");
        tick(laptop, 1);
        see(phone, 1, true);
        phone.seeText("Ticked by Owner");
        assertThat(ticks(laptop, site))
            .singleElement()
            .satisfies(
                one -> {
                  assertThat(one.item()).isEqualTo(item(laptop, 1));
                  assertThat(one.ticked()).isTrue();
                });
        phone.shot("ticks-shared");
        phone.checkAccessible();
        tick(phone, 1);
        see(laptop, 1, false);
        phone.checkQuiet();
      }
      laptop.checkQuiet();
    }
  }

  @Test
  void ticksWithoutTheServerAreSentWhenItIsBackAndContradictionsAreShown() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.PHONE)) {
      String site = DemoSite.of(browser);
      String id = site.substring("/site/".length());
      browser.go(site + "/buy");
      browser.waitForKeeping();
      browser.go(site + "/buy");
      String mine = item(browser, 0);
      String theirs = item(browser, 2);
      tick(browser, 2);
      browser.waitUntil(d -> ticks(browser, site).size() == 1);

      browser.cutOff();
      tick(browser, 0);
      tick(browser, 2);
      browser.seeText("2 ticks wait to be sent");
      // A phone that was switched off meanwhile has forgotten nothing.
      browser.go(site + "/buy");
      see(browser, 0, true);
      see(browser, 2, false);
      browser.seeText("2 ticks wait to be sent");
      browser.shot("ticks-offline");
      browser.checkAccessible();

      // Meanwhile somebody else put the third item back and then bought it after all.
      Instant seen = ticks(browser, site).get(0).at();
      Instant later = Instant.now();
      List<Ticks.Change> changes =
          List.of(
              new Ticks.Change(theirs, false, seen.plusMillis(1), Optional.of(seen)),
              new Ticks.Change(theirs, true, later, Optional.of(seen.plusMillis(1))));
      browser.store().ticks().merge(id, changes, browser.store().accounts().local().author());

      browser.bringBack();
      browser.waitUntil(d -> ticks(browser, site).size() == 2);
      browser.seeText("later than this device did");
      see(browser, 0, true);
      see(browser, 2, true);
      browser.waitUntil(d -> !browser.text().contains("to be sent"));
      assertThat(ticks(browser, site))
          .allMatch(Ticks.Tick::ticked)
          .extracting(Ticks.Tick::item)
          .containsExactlyInAnyOrder(mine, theirs);
      browser.shot("ticks-conflict");
      browser.checkAccessible();
      browser.click(browser.find(".tick-conflict button"));
      browser.waitUntil(d -> d.findElements(By.cssSelector(".tick-conflict")).isEmpty());
      browser.checkQuiet();
    }
  }

  @Test
  void ticksKeptByTheBrowserAloneBeforeAreTakenOver() {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = DemoSite.of(browser);
      String id = site.substring("/site/".length());
      browser.go(site + "/buy");
      String old = item(browser, 3);
      browser.script(
          "localStorage.setItem('bought:' + arguments[0], JSON.stringify([arguments[1]]));",
          id,
          old);
      browser.go(site + "/buy");
      see(browser, 3, true);
      browser.waitUntil(d -> ticks(browser, site).size() == 1);
      assertThat(ticks(browser, site).get(0).item()).isEqualTo(old);
      assertThat(browser.script("return localStorage.getItem('bought:' + arguments[0]);", id))
          .isNull();
      browser.checkQuiet();
    }
  }

  @Test
  void aViewerSeesTheTicksButCannotChangeThem() {
    try (BrowserSession owner = BrowserSession.openForMany(BrowserSession.DESKTOP)) {
      String site = DemoSite.of(owner);
      var mara = owner.store().accounts().add("Mara", BrowserSession.PASSWORD);
      owner.store().sites().share(site.substring("/site/".length()), mara.id(), Role.VIEWER);
      owner.signIn("Rosa");
      owner.go(site + "/buy");
      tick(owner, 1);
      owner.waitUntil(d -> ticks(owner, site).size() == 1);
      try (BrowserSession viewer = owner.another(BrowserSession.PHONE)) {
        viewer.signIn("Mara");
        viewer.go(site + "/buy");
        see(viewer, 1, true);
        viewer.seeText("Ticked by Rosa");
        assertThat(viewer.driver().findElements(By.cssSelector(".item > input")))
            .isNotEmpty()
            .noneMatch(WebElement::isEnabled);
        viewer.seeText("You may look at the ticks, but not change them.");
        viewer.checkAccessible();
        viewer.checkQuiet();
      }
      owner.checkQuiet();
    }
  }
}
