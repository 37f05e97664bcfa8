package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.grovewright.store.JournalEntry;
import org.grovewright.store.Role;
import org.grovewright.store.Ticks;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** An owner, a helper and a viewer, each with a phone before all pages of one place. */
@Tag("browser")
class RolesTest {
  private static final String[] CHANGING = {"undo", "redo", "plant", "add"};

  private static String id(String site) {
    return site.substring("/site/".length());
  }

  private static List<JournalEntry> entries(BrowserSession browser, String site) {
    return browser.store().journal().list(id(site));
  }

  private static void write(BrowserSession browser, String words) {
    new Select(browser.find(".journal-form select")).selectByValue("note");
    browser.type("In words", words);
    browser.click("Write it down");
    browser.seeText("Written down.");
  }

  private static int tools(BrowserSession browser) {
    int there = 0;
    for (String tool : CHANGING) {
      there += browser.driver().findElements(By.cssSelector("[data-tool=" + tool + "]")).size();
    }
    return there;
  }

  private static List<WebElement> boxes(BrowserSession browser) {
    browser.find(".item > input");
    return browser.driver().findElements(By.cssSelector(".item > input"));
  }

  private static void map(BrowserSession browser, String site) {
    browser.go(site + "/map");
    browser.waitUntil(d -> !browser.text().contains("being worked out"));
  }

  /** The status that the server answers a request of the page's own session with. */
  private static Object status(BrowserSession browser, String method, String path, String body) {
    return browser.script(
        "const me = await (await fetch('/api/me')).json();"
            + " return (await fetch(arguments[0], {method: arguments[1], headers: {'X-CSRF':"
            + " me.csrf, 'Content-Type': 'application/json'}, body: arguments[2]})).status;",
        path,
        method,
        body);
  }

  private static void refused(BrowserSession browser, String site) {
    assertThat(
            status(
                browser,
                "POST",
                "/api/sites/" + id(site) + "/edits",
                "{\"onVersion\":1,\"label\":\"x\",\"operations\":[{\"type\":\"removePlant\",\"plant\":\"A3\"}]}"))
        .isEqualTo(403L);
    assertThat(browser.store().sites().get(id(site)).version()).isEqualTo(1);
  }

  @Test
  void eachRoleIsOfferedWhatItMayDoAndReadsTheRest() {
    try (BrowserSession rosa = BrowserSession.openForMany(BrowserSession.PHONE)) {
      String site = DemoSite.of(rosa);
      for (String name : List.of("Helga", "Viktor")) {
        var account = rosa.store().accounts().add(name, BrowserSession.PASSWORD);
        rosa.store()
            .sites()
            .share(id(site), account.id(), name.equals("Helga") ? Role.HELPER : Role.VIEWER);
      }
      rosa.signIn("Rosa");
      map(rosa, site);
      assertThat(tools(rosa)).isPositive();
      rosa.go(site + "/plant/A1");
      write(rosa, "planted a little high");
      try (BrowserSession helga = rosa.another(BrowserSession.PHONE)) {
        helps(helga, site);
      }
      try (BrowserSession viktor = rosa.another(BrowserSession.PHONE)) {
        looks(viktor, site);
      }
      rosa.go(site + "/plant/A1");
      rosa.seeText("first flowers");
      rosa.checkQuiet();
    }
  }

  private static void helps(BrowserSession helga, String site) {
    helga.signIn("Helga");
    map(helga, site);
    helga.seeText("You may look at this place, but not change it.");
    assertThat(tools(helga)).isZero();
    helga.shot("role-helper-map");
    helga.checkAccessible();
    helga.go(site + "/plant/A1");
    helga.seeText("planted a little high");
    write(helga, "first flowers");
    assertThat(entries(helga, site).stream().map(JournalEntry::author))
        .containsExactlyInAnyOrder("Rosa", "Helga");
    helga.shot("role-helper-plant");
    helga.go(site + "/buy");
    helga.click(boxes(helga).get(0));
    helga.waitUntil(d -> helga.store().ticks().list(id(site)).size() == 1);
    helga.go(site + "/settings");
    helga.seeText("You are signed in as Helga.");
    assertThat(helga.text()).doesNotContain("People who can sign in").doesNotContain("Sharing");
    assertThat(helga.text()).doesNotContain("Take an edit back");
    refused(helga, site);
    helga.checkQuiet();
  }

  private static void looks(BrowserSession viktor, String site) {
    viktor.signIn("Viktor");
    map(viktor, site);
    viktor.seeText("You may look at this place, but not change it.");
    assertThat(tools(viktor)).isZero();
    for (String page : List.of("/plant/A1", "/today")) {
      viktor.go(site + page);
      viktor.seeText("planted a little high");
      viktor.seeText("first flowers");
      viktor.seeText("You may look at this journal, but not write in it.");
      assertThat(
              viktor
                  .driver()
                  .findElements(By.cssSelector(".journal-form, .entry-tools, .photo-field")))
          .isEmpty();
      viktor.shot("role-viewer" + page.replace('/', '-'));
      viktor.checkAccessible();
    }
    viktor.go(site + "/buy");
    viktor.waitUntil(d -> boxes(viktor).get(0).isSelected());
    assertThat(boxes(viktor)).noneMatch(WebElement::isEnabled);
    assertThat(viktor.store().ticks().list(id(site))).singleElement().matches(Ticks.Tick::ticked);
    for (String page : List.of("/water", "/plants", "/settings", "/labels")) {
      viktor.go(site + page);
      assertThat(viktor.driver().findElements(By.cssSelector("[role=alert] p"))).isEmpty();
      viktor.shot("role-viewer" + page.replace('/', '-'));
      viktor.checkAccessible();
    }
    assertThat(
            status(
                viktor,
                "POST",
                "/api/sites/" + id(site) + "/journal/sync",
                "{\"since\":0,\"changes\":[]}"))
        .isEqualTo(403L);
    refused(viktor, site);
    viktor.checkQuiet();
  }
}
