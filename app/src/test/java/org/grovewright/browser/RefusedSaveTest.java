package org.grovewright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** A save that the program could not make stands on every page, until one is made again. */
@Tag("browser")
class RefusedSaveTest {
  @Test
  void whyNothingIsSavedStandsOnEveryPageUntilSomethingIs() throws SQLException {
    try (BrowserSession browser = BrowserSession.open(BrowserSession.DESKTOP)) {
      String site = DemoSite.of(browser);
      Path[] data = new Path[1];
      browser.startAnew(folder -> data[0] = folder);
      browser.go(site + "/settings");
      // As another program would that holds the file, say one that copies it.
      try (Connection other =
              DriverManager.getConnection("jdbc:sqlite:" + data[0].resolve("grovewright.db"));
          Statement statement = other.createStatement()) {
        statement.execute("begin immediate");
        browser.click(browser.field("Dark"));
        // The server waits some seconds for the other before it refuses.
        browser.waitUntil(d -> standing(browser).contains("Another program is using"));
        browser.atBothWidths(
            () -> {
              browser.shot("save-refused");
              browser.checkAccessible();
            });
        browser.click(browser.find("nav a[href$='/buy']"));
        browser.seeText("Everything together costs about");
        assertThat(standing(browser)).contains("Another program is using");
        statement.execute("rollback");
      }
      browser.click("Settings");
      browser.click(browser.field("Light"));
      browser.waitUntil(d -> standing(browser).isEmpty());
    }
  }

  private static String standing(BrowserSession browser) {
    return browser.driver().findElements(By.cssSelector(".trouble")).stream()
        .map(one -> one.getText())
        .findFirst()
        .orElse("");
  }
}
