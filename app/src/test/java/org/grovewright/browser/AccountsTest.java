package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.grovewright.store.Account;
import org.grovewright.store.HandClock;
import org.grovewright.store.JournalEntry;
import org.grovewright.store.Sessions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** A server that others reach: its owner, a helper and a viewer, each on the screen. */
@Tag("browser")
class AccountsTest {
  private static final String KEEPER = "Rosa";
  private final HandClock clock = new HandClock("2027-03-01T08:00:00Z");

  private static void signIn(BrowserSession browser, String name, String password) {
    browser.type("Name", name);
    browser.type("Password", password);
    browser.click("Sign in");
  }

  private static void enter(BrowserSession browser, String name) {
    signIn(browser, name, BrowserSession.PASSWORD);
    browser.waitUntil(d -> !d.getCurrentUrl().contains("/login"));
    browser.ready();
  }

  private static void leave(BrowserSession browser) {
    browser.click("Sign out");
    browser.waitUntil(d -> d.getCurrentUrl().endsWith("/login"));
    browser.ready();
  }

  private static void look(BrowserSession browser, String name) {
    browser.atBothWidths(
        () -> {
          browser.shot("accounts-" + name);
          browser.checkAccessible();
        });
  }

  /** That a field says itself what is wrong with it, also to who hears the page. */
  private static void seeBeside(BrowserSession browser, WebElement field, String words) {
    browser.waitUntil(
        d ->
            "true".equals(field.getDomAttribute("aria-invalid"))
                && Arrays.stream(field.getDomAttribute("aria-describedby").split(" "))
                    .anyMatch(id -> d.findElement(By.id(id)).getText().contains(words)));
  }

  private static String value(WebElement field) {
    return field.getDomProperty("value");
  }

  private static void addPerson(BrowserSession browser, String name, String password) {
    WebElement form = browser.find(".people-form");
    for (String type : List.of("input:not([type=password])", "input[type=password]")) {
      form.findElement(By.cssSelector(type)).clear();
    }
    form.findElement(By.cssSelector("input:not([type=password])")).sendKeys(name);
    form.findElement(By.cssSelector("input[type=password]")).sendKeys(password);
    browser.click("Add this person");
  }

  private static void share(BrowserSession browser, String name, String role) {
    browser.type("Name of the account", name);
    new Select(browser.field("May")).selectByVisibleText(role);
    browser.click("Share with this account");
  }

  private static void seeMember(BrowserSession browser, String name, String role) {
    browser.waitUntil(
        d ->
            d.findElements(By.cssSelector(".members li")).stream()
                .anyMatch(
                    li -> li.getText().replaceAll("\\s+", " ").startsWith(name + " " + role)));
  }

  @Test
  void theOwnerSignsInAddsPeopleAndEachSeesWhatTheRoleAllows() {
    try (BrowserSession browser = BrowserSession.openForMany(BrowserSession.DESKTOP, clock)) {
      String site = DemoSite.of(browser);

      // Whatever page is asked for, signing in comes first.
      browser.go(site + "/settings");
      assertThat(browser.driver().getCurrentUrl()).contains("/login");
      assertThat(browser.text()).doesNotContain("Wattlefall");
      browser.click("Sign in");
      browser.seeText("Write the name.");
      signIn(browser, KEEPER, "wrong horse battery");
      seeBeside(
          browser, browser.field("Password"), "This name and this password do not go together.");
      assertThat(value(browser.field("Name"))).isEqualTo(KEEPER);
      assertThat(value(browser.field("Password"))).isEmpty();
      look(browser, "wrong-password");
      browser.field("Password").sendKeys(BrowserSession.PASSWORD);
      browser.click("Sign in");
      browser.waitUntil(d -> d.getCurrentUrl().endsWith(site + "/settings"));

      // People: a password too short is refused and the name stays.
      browser.seeText("People who can sign in");
      addPerson(browser, "Helga", "short");
      seeBeside(
          browser,
          browser.find(".people-form input[type=password]"),
          "The password must have from 10");
      assertThat(value(browser.find(".people-form input:not([type=password])"))).isEqualTo("Helga");
      look(browser, "short-password");
      addPerson(browser, KEEPER, BrowserSession.PASSWORD);
      seeBeside(
          browser,
          browser.find(".people-form input:not([type=password])"),
          "There is already an account of that name.");
      assertThat(value(browser.find(".people-form input[type=password]"))).isNotEmpty();
      addPerson(browser, "Helga", BrowserSession.PASSWORD);
      browser.waitUntil(
          d -> value(browser.find(".people-form input:not([type=password])")).isEmpty());
      addPerson(browser, "Viktor", BrowserSession.PASSWORD);
      browser.find("[aria-label='Take away the account of Viktor']");
      share(browser, "Nobody", "Helper");
      browser.seeText("Nobody of this name has an account here");
      share(browser, "Helga", "Helper");
      seeMember(browser, "Helga", "Helper");
      share(browser, "Viktor", "Viewer");
      seeMember(browser, "Viktor", "Viewer");
      look(browser, "people");
      leave(browser);
      // Going back shows nothing of what was there.
      browser.driver().navigate().back();
      browser.waitUntil(d -> d.getCurrentUrl().contains("/login"));
      browser.ready();
      assertThat(browser.text()).doesNotContain("Helga");

      viewerLooksOnly(browser, site);
      browser.checkQuiet();
    }
  }

  private static void viewerLooksOnly(BrowserSession browser, String site) {
    browser.go("/login");
    enter(browser, "Viktor");
    browser.seeText("You may look here");
    look(browser, "viewer-places");
    browser.go(site + "/map");
    browser.seeText("You may look at this place, but not change it.");
    for (String tool : List.of("plant", "add", "undo")) {
      assertThat(browser.driver().findElements(By.cssSelector("[data-tool=" + tool + "]")))
          .isEmpty();
    }
    browser.waitUntil(d -> !browser.text().contains("being worked out"));
    browser.click("A3 Lemon");
    WebElement place = browser.field("Right");
    assertThat(place.isEnabled()).isFalse();
    assertThat(
            browser
                .driver()
                .findElements(By.cssSelector(".map-panel button[type=submit], .map-panel .danger")))
        .isEmpty();
    look(browser, "viewer-map");
    browser.go(site + "/plant/A1");
    browser.seeText("You may look at this journal, but not write in it.");
    browser.go(site + "/settings");
    browser.seeText("You are signed in as Viktor.");
    assertThat(browser.text()).doesNotContain("Sharing").doesNotContain("People who can sign in");
    look(browser, "viewer-settings");
    // Not the screen alone: the server refuses what the viewer's own session sends.
    Object status =
        browser.script(
            "const me = await (await fetch('/api/me')).json();"
                + " return (await fetch('/api' + arguments[0] + '/edits', {method: 'POST',"
                + " headers: {'X-CSRF': me.csrf, 'Content-Type': 'application/json'}, body:"
                + " JSON.stringify({onVersion: 1, label: 'x', operations: [{type: 'removePlant',"
                + " plant: 'A3'}]})})).status;",
            site.replace("/site/", "/sites/"));
    assertThat(status).isEqualTo(403L);
    assertThat(browser.store().sites().get(site.substring("/site/".length())).version())
        .isEqualTo(1);
  }

  @Test
  void aSessionThatEndsAsksToSignInOverThePageAndNothingTypedIsLost() {
    try (BrowserSession browser = BrowserSession.openForMany(BrowserSession.DESKTOP, clock)) {
      String site = DemoSite.of(browser);
      String id = site.substring("/site/".length());
      browser.go("/sites");
      enter(browser, KEEPER);
      browser.go(site + "/map");
      browser.waitUntil(d -> !browser.text().contains("being worked out"));
      browser.click("A3 Lemon");
      browser.type("Cultivar", "Sunny Brook");

      clock.pass(Sessions.IDLE.plus(Duration.ofHours(1)));
      browser.click("Save");
      browser.seeText("You were signed out");
      look(browser, "session-ended");
      // Not now: the change is not saved, the form still holds it.
      browser.click("Not now");
      browser.seeText("Not saved");
      assertThat(value(browser.field("Cultivar"))).isEqualTo("Sunny Brook");
      assertThat(browser.store().sites().get(id).version()).isEqualTo(1);

      browser.click("Save");
      browser.find("dialog.sign-in");
      browser.find("dialog input[type=password]").sendKeys("wrong horse battery");
      browser.click("Sign in");
      browser.seeText("This name and this password do not go together.");
      browser.find("dialog input[type=password]").sendKeys(BrowserSession.PASSWORD);
      browser.click("Sign in");
      browser.waitUntil(d -> browser.store().sites().get(id).version() == 2);
      assertThat(browser.store().sites().get(id).description()).contains("Sunny Brook");
      browser.waitUntil(d -> d.findElements(By.cssSelector("dialog")).isEmpty());

      // What is written in the journal meanwhile is sent after signing in.
      browser.go(site + "/plant/A1");
      new Select(browser.find(".journal-form select")).selectByValue("note");
      browser.type("In words", "two flowers");
      clock.pass(Sessions.IDLE.plus(Duration.ofHours(1)));
      browser.click("Write it down");
      browser.find("dialog.sign-in");
      browser.find("dialog input[type=password]").sendKeys(BrowserSession.PASSWORD);
      browser.click("Sign in");
      browser.waitUntil(d -> !browser.store().journal().list(id).isEmpty());
      browser.seeText("Written down.");
      assertThat(browser.store().journal().list(id).stream().map(JournalEntry::content))
          .singleElement()
          .satisfies(one -> assertThat(one.note()).isEqualTo("two flowers"));

      // Going to a page leads to signing in and from there to that page.
      clock.pass(Sessions.IDLE.plus(Duration.ofHours(1)));
      browser.click(browser.find(".questions a[href$='/buy']"));
      browser.waitUntil(d -> d.getCurrentUrl().contains("/login"));
      browser.ready();
      enter(browser, KEEPER);
      assertThat(browser.driver().getCurrentUrl()).endsWith(site + "/buy");

      // A new password ends the session, and only the new one lets in again.
      browser.go(site + "/settings");
      browser.click("Change the password");
      browser.type("Password until now", BrowserSession.PASSWORD);
      browser.type("New password", "short");
      browser.click("Change it and sign out everywhere");
      seeBeside(browser, browser.field("New password"), "The password must have from 10");
      assertThat(value(browser.field("Password until now"))).isEqualTo(BrowserSession.PASSWORD);
      browser.type("New password", "four more garden words");
      browser.click("Change it and sign out everywhere");
      browser.waitUntil(d -> d.getCurrentUrl().endsWith("/login"));
      browser.ready();
      assertThat(browser.store().accounts().check(KEEPER, BrowserSession.PASSWORD)).isEmpty();
      signIn(browser, KEEPER, "four more garden words");
      browser.seeText("Your places");
      leave(browser);
      assertThat(browser.store().accounts().find(Account.LOCAL)).isPresent();
      browser.checkQuiet();
    }
  }
}
